//! A browser session: a driver, its browser, and commands beyond what all drivers share.

use crate::case::Outcome;
use crate::driver::{Driver, free_port};
use crate::engine::{Engine, Scheme};
use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};
use url::{ParseError, Url};

/// A running browser.
pub struct Browser {
    pub engine: Engine,
    pub client: Client,
    pub driver: Driver,
    /// A folder of its own: nothing of this machine's settings comes in, nothing stays.
    pub home: PathBuf,
}

impl Browser {
    /// Starts one. Its folder is named after engine, scheme and `purpose`.
    pub async fn start(engine: Engine, scheme: Scheme, purpose: &str) -> Outcome<Self> {
        let folder = format!("{}-{scheme:?}{purpose}", engine.name()).to_lowercase();
        let home = scratch().join(folder);
        if home.exists() {
            fs::remove_dir_all(&home)?;
        }
        fs::create_dir_all(home.join("saved"))?;
        let port = free_port()?;
        let line = engine.driver(port, free_port)?;
        let driver = Driver::start(&line, port, &engine.environment(scheme), &home)?;
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(engine.capabilities(scheme, &home)?)
            .connect(&format!("http://127.0.0.1:{port}"))
            .await?;
        let browser = Self { engine, client, driver, home };
        if engine == Engine::Chromium {
            let value = if scheme == Scheme::Dark { "dark" } else { "light" };
            let features = json!([{ "name": "prefers-color-scheme", "value": value }]);
            browser.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await?;
        }
        Ok(browser)
    }

    /// Its engine, and its name and version as it says them itself.
    pub fn called(&self) -> String {
        let told = self.client.capabilities();
        let said = |name| told.and_then(|told| told.get(name)).and_then(Value::as_str);
        let name = said("browserName").unwrap_or("unnamed");
        format!("{} ({name} {})", self.engine.name(), said("browserVersion").unwrap_or("unknown"))
    }

    /// Ends the session first, since a browser may have left its driver's process group.
    pub async fn stop(self) {
        // The driver goes next whatever the browser answers.
        drop(self.client.close().await);
    }

    /// A command of Chromium's own tools.
    pub async fn devtools(&self, command: &str, parameters: Value) -> Outcome<Value> {
        let body = json!({ "cmd": command, "params": parameters });
        Ok(self.client.issue_cmd(Extra { path: "goog/cdp/execute", body }).await?)
    }

    /// A command of one driver only.
    pub async fn extra(&self, path: &'static str, body: Value) -> Outcome<Value> {
        Ok(self.client.issue_cmd(Extra { path, body }).await?)
    }
}

/// Where the tests may write.
pub fn scratch() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("target/browser")
}

#[derive(Debug)]
struct Extra {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Extra {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!("session/{}/{}", session.unwrap_or_default(), self.path))
    }
    fn method_and_body(&self, _: &Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}

//! The three engines: which driver each needs, and how its browser is told to start.

use crate::case::Outcome;
use serde_json::{Map, Value, json};
use std::path::{Path, PathBuf};

/// The reader's languages; without them each browser would follow the machine.
const LANGUAGES: &str = "en-GB,en";

/// A browser engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    Chromium,
    Firefox,
    /// Stands for Safari in layout and script; not for touch, keyboard or opening from a file list.
    WebKit,
}

/// The colours a person has chosen for the whole machine.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scheme {
    Light,
    Dark,
}

impl Engine {
    pub const ALL: [Self; 3] = [Self::Chromium, Self::Firefox, Self::WebKit];
    /// Those whose drivers can type into a page as narrow as a phone; WebKit's types into no frame.
    pub const TYPE_ON_A_PHONE: &[Self] = &[Self::Chromium, Self::Firefox];

    pub const fn name(self) -> &'static str {
        match self {
            Self::Chromium => "chromium",
            Self::Firefox => "firefox",
            Self::WebKit => "webkit",
        }
    }

    /// The narrowest window it makes, in CSS pixels; below that the page is tried in a frame.
    pub const fn narrowest(self) -> u32 {
        match self {
            Self::Chromium => 320,
            Self::Firefox | Self::WebKit => 520,
        }
    }

    /// The driver's command line. `ports` gives a free one each time.
    pub fn driver(
        self,
        port: u16,
        mut ports: impl FnMut() -> Outcome<u16>,
    ) -> Outcome<Vec<String>> {
        let tools = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/tools/bin/geckodriver");
        let line: Vec<String> = match self {
            Self::Chromium => vec!["chromedriver".into(), format!("--port={port}")],
            Self::Firefox => vec![
                tools.display().to_string(),
                format!("--port={port}"),
                // Its own default is one fixed port, which two runs at once would fight over.
                format!("--websocket-port={}", ports()?),
            ],
            Self::WebKit => "xvfb-run -a WebKitWebDriver"
                .split(' ')
                .map(String::from)
                .chain([format!("--port={port}")])
                .collect(),
        };
        Ok(line)
    }

    /// What the driver's environment needs beside a home of its own.
    pub fn environment(self, scheme: Scheme) -> Vec<(&'static str, &'static str)> {
        match (self, scheme) {
            (Self::WebKit, scheme) => vec![
                // Its sandbox cannot be set up by root, which containers often run as.
                ("WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS", "1"),
                // It takes no list of languages: where the other two read as in Britain, it reads
                // as in the United States.
                ("LC_ALL", "en_US.UTF-8"),
                ("GTK_THEME", if scheme == Scheme::Dark { "Adwaita:dark" } else { "Adwaita" }),
            ],
            _ => Vec::new(),
        }
    }

    /// How the driver starts the browser. Files are saved under `home`.
    pub fn capabilities(self, scheme: Scheme, home: &Path) -> Outcome<Map<String, Value>> {
        let saved = home.join("saved");
        let options = match self {
            Self::Chromium => json!({
                "goog:loggingPrefs": { "browser": "ALL", "performance": "ALL" },
                "goog:chromeOptions": {
                    "binary": "/usr/bin/chromium",
                    "args": [
                        "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic",
                        "--no-first-run", "--disable-background-networking",
                        "--disable-component-update", "--disable-sync", "--force-color-profile=srgb",
                        // As on a phone, where they take no room; the other two do so in a frame.
                        "--hide-scrollbars",
                    ],
                    "prefs": {
                        "download.default_directory": saved,
                        "intl.accept_languages": LANGUAGES,
                    },
                },
            }),
            Self::Firefox => json!({
                "moz:firefoxOptions": {
                    "binary": "/usr/bin/firefox-esr",
                    "args": ["-headless"],
                    "prefs": {
                        "intl.accept_languages": LANGUAGES,
                        "browser.download.folderList": 2,
                        "browser.download.dir": saved,
                        "browser.download.alwaysOpenPanel": false,
                        // It would open what it has saved in a tab of its own, before the page.
                        "pdfjs.disabled": true,
                        "browser.helperApps.neverAsk.saveToDisk": "application/pdf",
                        "layout.css.prefers-color-scheme.content-override":
                            if scheme == Scheme::Dark { 0 } else { 1 },
                    },
                },
            }),
            Self::WebKit => json!({
                "webkitgtk:browserOptions": {
                    "binary": mini_browser()?,
                    "args": ["--automation"],
                },
            }),
        };
        match options {
            Value::Object(map) => Ok(map),
            _ => Err("capabilities are an object".into()),
        }
    }
}

/// WebKit's own small browser lies in a folder named after the machine.
fn mini_browser() -> Outcome<PathBuf> {
    let library = Path::new("/usr/lib");
    std::fs::read_dir(library)?
        .filter_map(|entry| Some(entry.ok()?.path()))
        .flat_map(|folder| {
            ["webkit2gtk-4.1", "webkit2gtk-4.0"].map(|name| folder.join(name).join("MiniBrowser"))
        })
        .find(|path| path.exists())
        .ok_or_else(|| "no MiniBrowser: pkg-scripts/toolchain browsers brings it".into())
}

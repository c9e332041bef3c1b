//! The hosted copy: the same page, and it opens again without its server.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use crate::server::{Answer, Server};
use serde_json::json;
use std::fs;
use std::path::{Path, PathBuf};

cases! { "site":
    it_is_the_same_page in &[Engine::Chromium];
    its_icons_are_as_large_as_they_say;
    it_opens_without_its_server in KEEPERS;
    a_new_build_takes_over in KEEPERS;
}

/// What WebKit's small browser keeps is not known.
const KEEPERS: &[Engine] = &[Engine::Chromium, Engine::Firefox];

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("dist/site")
}

fn find(path: &str) -> Answer {
    let (name, kind) = match path {
        "" => ("index.html", "text/html"),
        "service.js" => ("service.js", "text/javascript"),
        "quirefit.webmanifest" => ("quirefit.webmanifest", "application/manifest+json"),
        "icon.svg" => ("icon.svg", "image/svg+xml"),
        "icon-192.png" => ("icon-192.png", "image/png"),
        "icon-512.png" => ("icon-512.png", "image/png"),
        _ => return None,
    };
    Some((kind, fs::read(folder().join(name)).ok()?))
}

/// But for the policy, manifest, icon and the line that asks for keeping it, byte for byte.
async fn it_is_the_same_page(_: &Page<'_>) -> Outcome {
    let own = fs::read_to_string(Page::address().trim_start_matches("file://"))?;
    let hosted = fs::read_to_string(folder().join("index.html"))?;
    let lines = |text: &str| text.lines().map(str::to_owned).collect::<Vec<_>>();
    let (own, hosted) = (lines(&own), lines(&hosted));
    let missing: Vec<&String> = own.iter().filter(|line| !hosted.contains(line)).collect();
    let more: Vec<&String> = hosted.iter().filter(|line| !own.contains(line)).collect();
    assert!(
        missing
            .iter()
            .all(|line| line.starts_with("<meta http-equiv")
                || line.starts_with("<link rel=\"icon\"")),
        "{missing:?}"
    );
    assert!(missing.len() == 2 && more.len() <= 4, "{more:?}");
    // Nothing may be connected to here either.
    assert!(more.iter().any(|line| line.contains("connect-src 'none'")), "{more:?}");
    Ok(())
}

/// The browser itself decodes them.
async fn its_icons_are_as_large_as_they_say(page: &Page<'_>) -> Outcome {
    let manifest: serde_json::Value =
        serde_json::from_slice(&fs::read(folder().join("quirefit.webmanifest"))?)?;
    let icons = manifest["icons"].as_array().ok_or("a list of icons")?;
    let server = Server::start().await?;
    let visit = async {
        page.open(&server.address).await?;
        for icon in icons.iter().filter(|icon| icon["type"] == "image/png") {
            let size = "const [source, done] = arguments; const image = new Image(); \
                image.onload = () => done(`${image.naturalWidth}x${image.naturalHeight}`); \
                image.onerror = () => done('no image'); image.src = source";
            let found = page.script_later(size, vec![icon["src"].clone()]).await?;
            assert_eq!(found, icon["sizes"]);
        }
        assert!(icons.len() > 2, "{icons:?}");
        page.script_later(FORGET, vec![]).await.map(drop)
    };
    server.during(find, visit).await
}

const KEPT: &str = "const done = arguments[0]; \
    navigator.serviceWorker.ready.then(() => caches.keys()).then((names) => done(names.length))";
const FORGET: &str = "const done = arguments[0]; localStorage.clear(); \
    navigator.serviceWorker.getRegistrations() \
    .then((all) => Promise.all(all.map((one) => one.unregister()))) \
    .then(() => caches.keys()).then((names) => Promise.all(names.map((name) => caches.delete(name)))) \
    .then(() => done(true))";

async fn it_opens_without_its_server(page: &Page<'_>) -> Outcome {
    let server = Server::start().await?;
    let address = server.address.clone();
    let visit = async {
        page.open(&address).await?;
        assert_eq!(page.script_later(KEPT, vec![]).await?, json!(1), "nothing is kept");
        page.type_into("pages", "60 + 4").await?;
        page.settle().await
    };
    server.during(find, visit).await?;
    assert!(server.asked().iter().any(|line| line.contains("service.js")), "{:?}", server.asked());
    // Its port is closed from here on.
    drop(server);
    page.open("about:blank").await.ok();
    for name in ["", "index.html", "?from=mail"] {
        page.open(&format!("{address}{name}")).await?;
        page.type_into("pages", "64").await?;
        page.settle().await?;
        assert!(!page.answer().await?.is_empty());
    }
    page.script_later(FORGET, vec![]).await?;
    Ok(())
}

/// The next build, as it would come from the server: another page under another name.
fn next(path: &str) -> Answer {
    let (kind, bytes) = find(path)?;
    let (from, to) = match path {
        "" => ("name=\"built-from\" content=\"", "name=\"built-from\" content=\"next-"),
        "service.js" => ("BUILD = \"quirefit-", "BUILD = \"quirefit-next-"),
        _ => return Some((kind, bytes)),
    };
    Some((kind, String::from_utf8(bytes).ok()?.replace(from, to).into_bytes()))
}

const BUILT: &str =
    "return document.querySelector('meta[name=built-from]').content.startsWith('next-')";
const TAKEN_OVER: &str = "const done = arguments[0]; const look = () => caches.keys().then((names) => \
    names.filter((name) => name.startsWith('quirefit-')).every((name) => name.includes('next')) \
    ? done(names.includes('another page\\'s')) : setTimeout(look, 50)); look()";
const FOREIGN: &str =
    "const done = arguments[0]; caches.open('another page\\'s').then(() => done(true))";

async fn a_new_build_takes_over(page: &Page<'_>) -> Outcome {
    let server = Server::start().await?;
    let new = std::cell::Cell::new(false);
    let visit = async {
        page.open(&server.address).await?;
        page.script_later(KEPT, vec![]).await?;
        page.script_later(FOREIGN, vec![]).await?;
        new.set(true);
        // This visit still gets what was kept, and fetches the next build meanwhile.
        page.open(&server.address).await?;
        let update = "const done = arguments[0]; \
            navigator.serviceWorker.ready.then((one) => one.update()).then(() => done(true))";
        page.script_later(update, vec![]).await?;
        let foreign = page.script_later(TAKEN_OVER, vec![]).await?;
        assert_eq!(foreign, json!(true), "another page's cache is gone");
        page.open(&server.address).await?;
        assert_eq!(page.script(BUILT, vec![]).await?, json!(true), "the old build is still shown");
        page.script_later(FORGET, vec![]).await
    };
    server.during(|path| if new.get() { next(path) } else { find(path) }, visit).await?;
    Ok(())
}

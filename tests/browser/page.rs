//! The page under test, and what a person can do on it and see of it.

use crate::browser::{Browser, scratch};
use crate::case::Outcome;
use crate::console;
use fantoccini::Locator;
use fantoccini::elements::Element;
use fantoccini::key::Key;
use serde_json::{Value, json};
use std::cell::{Cell, RefCell};
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

/// A wait ends with what is waited for; a shared machine may stand still for seconds before it comes.
const PATIENCE: Duration = Duration::from_secs(20);

/// Brings an element to the middle and waits until it has stood there for three frames.
const COME_NEAR: &str = "const [element, done] = arguments; let still = 0, last; \
    const look = () => { \
        element.scrollIntoView({ block: 'center' }); \
        const { top } = element.getBoundingClientRect(); \
        still = top === last ? still + 1 : 0; last = top; \
        still < 3 ? requestAnimationFrame(look) : done(); \
    }; look();";

/// Two paints and two tasks: whatever the page put off is done by then.
const SETTLE: &str = "const done = arguments[0]; \
    const turn = (next) => requestAnimationFrame(() => setTimeout(next)); \
    turn(() => turn(() => turn(done)));";

/// Opens whatever is closed and waits until each has told of it, which it does in a task of its own. What
/// is swapped meanwhile may never tell: then the patience of the driver ends it.
const OPEN_ALL: &str = "const done = arguments[0]; \
    const closed = [...document.querySelectorAll('details:not([open])')]; \
    const told = closed.map((part) => \
        new Promise((heard) => part.addEventListener('toggle', heard, { once: true }))); \
    for (const part of closed) part.open = true; \
    Promise.all(told).then(() => done());";

/// Waits until the planner has started, where the page has one.
const STARTED: &str = "const [patience, done] = arguments, end = Date.now() + patience; \
    const look = () => !document.getElementById('planner') \
        || performance.getEntriesByName('started').length ? done(true) \
      : Date.now() > end ? done(false) : setTimeout(look, 10); look();";

/// The page in a browser.
pub struct Page<'a> {
    pub browser: &'a Browser,
    /// How far the driver's log has been listened to.
    heard: Cell<usize>,
    /// Complaints of addresses that have been left.
    kept: RefCell<Vec<String>>,
}

impl<'a> Page<'a> {
    pub fn new(browser: &'a Browser) -> Self {
        Self { browser, heard: Cell::new(0), kept: RefCell::default() }
    }

    /// The built file.
    pub fn address() -> String {
        format!("file://{}/dist/quirefit.html", env!("CARGO_MANIFEST_DIR"))
    }

    /// Opens the page as for the first time: nothing kept, a window of middle size.
    pub async fn fresh(&self) -> Outcome {
        self.browser.client.set_window_size(1100, 1000).await?;
        self.open(&Self::address()).await?;
        self.script("localStorage.clear()", vec![]).await?;
        // Complaints of the case before, and of this first opening, are not this case's.
        self.complaints().await?;
        self.open(&Self::address()).await
    }

    /// Opens it again, as after closing the browser.
    pub async fn reload(&self) -> Outcome {
        self.open(&Self::address()).await
    }

    /// Opens an address and waits until the planner there has started.
    pub async fn open(&self, address: &str) -> Outcome {
        self.visit(address).await?;
        self.started().await
    }

    /// Opens an address, and listens there; the planner may still be starting.
    pub async fn visit(&self, address: &str) -> Outcome {
        let lines = self.complaints().await?;
        self.kept.borrow_mut().extend(lines);
        self.browser.client.goto(address).await?;
        console::listen(self.browser).await
    }

    /// Waits until the planner has started.
    pub async fn started(&self) -> Outcome {
        let patience = vec![json!(PATIENCE.as_millis())];
        if self.script_later(STARTED, patience).await? == json!(true) {
            Ok(())
        } else {
            let how = "return `${document.readyState}, ${document.getElementById('notice')?.hidden ? \
                'still starting' : 'given up'}`";
            Err(format!("the planner does not start: {}", self.script(how, vec![]).await?).into())
        }
    }

    /// Opens the page in a window, or where no window is that narrow in a frame, of this width.
    pub async fn width(&self, width: u32) -> Outcome {
        if width >= self.browser.engine.narrowest() {
            self.browser.client.set_window_size(width, 1000).await?;
            self.open(&Self::address()).await?;
        } else {
            let wrapper = scratch().join(format!("frame-{width}.html"));
            let frame = format!(
                "<!doctype html><title>Frame</title><style>body {{ margin: 0 }} iframe {{ border: 0 }}\
                 </style><iframe title=page src=\"{}\" width={width} height=900></iframe>",
                Self::address()
            );
            fs::write(&wrapper, frame)?;
            self.open(&format!("file://{}", wrapper.display())).await?;
            self.browser.client.enter_frame(0).await?;
            console::listen(self.browser).await?;
            self.started().await?;
        }
        let inner = self.script("return innerWidth", vec![]).await?;
        if inner == json!(width) {
            Ok(())
        } else {
            Err(format!("{inner} wide, not {width}").into())
        }
    }

    /// Runs a script in the page.
    pub async fn script(&self, script: &str, arguments: Vec<Value>) -> Outcome<Value> {
        Ok(self.browser.client.execute(script, arguments).await?)
    }

    /// Runs a script that calls back with its last argument.
    pub async fn script_later(&self, script: &str, arguments: Vec<Value>) -> Outcome<Value> {
        Ok(self.browser.client.execute_async(script, arguments).await?)
    }

    /// Waits until the page has done what it puts off until after a paint.
    pub async fn settle(&self) -> Outcome {
        self.script_later(SETTLE, vec![]).await.map(drop)
    }

    pub async fn find(&self, css: &str) -> Outcome<Element> {
        let found = self.browser.client.find(Locator::Css(css)).await;
        found.map_err(|error| format!("{css}: {error}").into())
    }

    /// The field of that name.
    pub async fn field(&self, name: &str) -> Outcome<Element> {
        self.find(&format!("[name='{name}']")).await
    }

    /// Types with real keys in place of what the field holds.
    pub async fn type_into(&self, name: &str, text: &str) -> Outcome {
        let all = format!(
            "{}a{}{}",
            char::from(Key::Control),
            char::from(Key::Null),
            char::from(Key::Delete)
        );
        self.field(name).await?.send_keys(&all).await?;
        self.type_on(name, text).await
    }

    /// Types with real keys after what the field holds.
    pub async fn type_on(&self, name: &str, text: &str) -> Outcome {
        Ok(self.field(name).await?.send_keys(text).await?)
    }

    /// Picks an option of a select, or one of a group of radio buttons by its label: the button
    /// itself may be drawn by the style and have no size of its own.
    pub async fn choose(&self, name: &str, value: &str) -> Outcome {
        let path = format!(
            "//*[@name='{name}']/option[@value='{value}'] \
             | //label[input[@name='{name}' and @value='{value}']]"
        );
        self.press(self.browser.client.find(Locator::XPath(&path)).await?).await
    }

    pub async fn click(&self, css: &str) -> Outcome {
        self.press(self.find(css).await?).await
    }

    /// Scrolls to an element, as a person would, waits until it stands still, and clicks it. WebKit's
    /// driver does not scroll, and regions on the way get their true height only when they come near.
    async fn press(&self, element: Element) -> Outcome {
        let place = vec![serde_json::to_value(&element)?];
        self.script_later(COME_NEAR, place).await?;
        Ok(element.click().await?)
    }

    /// Puts a text into a field as a script would, where a driver cannot.
    pub async fn put(&self, name: &str, text: &str) -> Outcome {
        let put = "const [name, text] = arguments; const field = document.querySelector(`[name='${name}']`); \
            field.value = text; field.dispatchEvent(new Event('input', { bubbles: true }));";
        self.script(put, vec![name.into(), text.into()]).await.map(drop)
    }

    /// Opens everything that can be, wherever it stands, and waits until the page has drawn it.
    pub async fn open_all(&self) -> Outcome {
        self.script_later(OPEN_ALL, vec![]).await?;
        self.settle().await
    }

    /// Has each reader read it, the designer last.
    pub async fn read_by_all(&self) -> Outcome {
        for reading in ["client", "floor", "design"] {
            let read =
                "document.querySelector(`[data-act=reading][data-value=${arguments[0]}]`).click()";
            self.script(read, vec![reading.into()]).await?;
            self.settle().await?;
        }
        Ok(())
    }

    /// What stands in a field.
    pub async fn value(&self, name: &str) -> Outcome<String> {
        Ok(self.field(name).await?.prop("value").await?.unwrap_or_default())
    }

    /// The text a person sees in the element with this id.
    pub async fn text(&self, id: &str) -> Outcome<String> {
        Ok(self.find(&format!("#{id}")).await?.text().await?)
    }

    pub async fn answer(&self) -> Outcome<String> {
        self.text("answer").await
    }

    /// How the page says it understood a field.
    pub async fn echo(&self, name: &str) -> Outcome<String> {
        self.text(&format!("echo-{}", name.replace('.', "-"))).await
    }

    /// Waits for an element's text to become so.
    pub async fn until(&self, id: &str, so: impl Fn(&str) -> bool) -> Outcome<String> {
        let began = Instant::now();
        loop {
            let text = self.text(id).await?;
            if so(&text) {
                return Ok(text);
            }
            if began.elapsed() > PATIENCE {
                return Err(format!("#{id} stays at: {text}").into());
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    }

    /// The path of a file that a case brings or keeps: apart from what the browser saves.
    pub fn apart(&self, name: impl AsRef<Path>) -> Outcome<PathBuf> {
        let folder = self.browser.home.join("apart");
        std::fs::create_dir_all(&folder)?;
        Ok(folder.join(name))
    }

    /// What the console complains about since this was last asked.
    pub async fn complaints(&self) -> Outcome<Vec<String>> {
        let mut lines = self.kept.take();
        lines.extend(console::complaints(self.browser, self.heard.get()).await?);
        self.heard.set(self.browser.driver.spoken()?);
        Ok(lines)
    }

    /// Waits for the file of this ending that the page saves, and gives its path and text. It is put
    /// away, so that the next one is another.
    pub async fn saved(&self, ending: &str) -> Outcome<(PathBuf, String)> {
        let (path, bytes) = self.saved_bytes(ending).await?;
        Ok((path, String::from_utf8(bytes)?))
    }

    /// The same of a file that is no text.
    pub async fn saved_bytes(&self, ending: &str) -> Outcome<(PathBuf, Vec<u8>)> {
        let began = Instant::now();
        loop {
            for folder in [self.browser.home.join("saved"), self.browser.home.clone()] {
                for entry in fs::read_dir(folder)? {
                    let entry = entry?;
                    // Its name is there before its content.
                    if entry.path().extension().is_some_and(|end| end == ending)
                        && entry.metadata()?.len() > 0
                    {
                        let read = self.browser.home.join("read");
                        fs::create_dir_all(&read)?;
                        let away = read.join(entry.file_name());
                        fs::rename(entry.path(), &away)?;
                        let bytes = fs::read(&away)?;
                        return Ok((away, bytes));
                    }
                }
            }
            if began.elapsed() > PATIENCE {
                return Err("no file came".into());
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
    }
}

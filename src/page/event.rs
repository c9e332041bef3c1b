//! What the script tells the session, and what the session tells the script to do.

use serde::{Deserialize, Serialize};

/// Something happened on the page.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
pub struct Event {
    /// What: start, address, input, change, leave, tap, key, drop, act, file, toggle, rest, print,
    /// printed, trap, storage, elsewhere, helper, found, list, design, width.
    pub kind: String,
    /// Where: a field's name, an act, a file's name, an element's id.
    #[serde(default)]
    pub id: String,
    /// With what: the text, the act's value, the file's content.
    #[serde(default)]
    pub value: String,
}

impl Event {
    /// An event from its three parts.
    #[must_use]
    pub fn new(kind: &str, id: &str, value: &str) -> Self {
        Self { kind: kind.to_owned(), id: id.to_owned(), value: value.to_owned() }
    }
}

/// One change to the page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "op", rename_all = "lowercase")]
pub enum Patch {
    /// Replaces what stands in an element.
    Html {
        /// The element's id.
        id: String,
        /// Its new content.
        html: String,
    },
    /// Sets the text of a control, by its name.
    Value {
        /// The control's name.
        id: String,
        /// Its new text.
        text: String,
    },
    /// Sets or removes an attribute.
    Attr {
        /// The element's id.
        id: String,
        /// The attribute.
        name: &'static str,
        /// Its value; nothing removes it.
        value: Option<String>,
    },
    /// Says which language the page is in.
    Language {
        /// Its tag.
        tag: &'static str,
    },
    /// Keeps a text for next time, where the browser lets it.
    Store {
        /// The text; empty forgets.
        text: String,
    },
    /// Saves a file.
    Download {
        /// Its name.
        name: String,
        /// Its content.
        text: String,
    },
    /// Saves a file that is no text.
    Save {
        /// Its name.
        name: String,
        /// Its content, in base64.
        base64: String,
    },
    /// Puts a text on the clipboard.
    Copy {
        /// The text.
        text: String,
    },
    /// The page's address from now on, without what it brought; nothing is opened.
    Address {
        /// The address.
        text: String,
    },
    /// Puts the focus on an element.
    Focus {
        /// The element's id.
        id: String,
    },
    /// Brings an element into view, if it is not.
    Near {
        /// The element's id.
        id: String,
    },
    /// The key was meant for the page: the browser does nothing of its own.
    Taken {},
    /// Moves an element behind the paragraph, row or line of a list that another stands in.
    Place {
        /// The element that moves.
        id: String,
        /// The element it belongs to; empty sends it home.
        at: String,
    },
    /// Says a sentence to somebody who cannot see the page, once, after a pause.
    Announce {
        /// The sentence.
        text: String,
    },
    /// Opens the browser's print window.
    Print {},
    /// Asks the helper what would make a job fit. Its answer comes as `found` with this number.
    Search {
        /// Which question it is; the helper may skip to the latest.
        number: String,
        /// The job file's text.
        job: String,
        /// The shop file's text, empty for the demo shop; nothing where the helper knows it.
        shop: Option<String>,
    },
    /// Saves an SVG file's text as a PNG of so many dots.
    Picture {
        /// The file's name.
        name: String,
        /// The text.
        svg: String,
        /// Dots across.
        width: String,
        /// Dots down.
        height: String,
    },
    /// Asks something of the desk that lists of titles are worked at: `begin` with the file that was opened
    /// last, `show`, `stop`, `save`, `take`. Its answers come as `list`.
    List {
        /// What.
        ask: &'static str,
        /// The reader's language.
        language: &'static str,
        /// What lengths are counted in: "mm" or "in".
        units: &'static str,
        /// The shop file's text where a list begins, empty for the demo shop.
        shop: Option<String>,
        /// Which part of the table is wanted, or which row.
        text: String,
    },
    /// Asks something of the reader of PDF files: `arrive` with the file that was opened last, `place`,
    /// `swap`, `write`, `stop`, `end`. Its answers come as `design`.
    Design {
        /// What.
        ask: &'static str,
        /// The name of the file that is written.
        name: String,
        /// A password, a part of the delivery, or an order.
        text: String,
    },
    /// Asks for a `rest` event once the page has been painted.
    Later {},
}

impl Patch {
    /// Each part by its name: first `op`, what to do, then with what.
    pub fn each_part(&self, put: &mut dyn FnMut(&'static str, Option<&str>)) {
        let mut patch = |op: &str, parts: &[(&'static str, Option<&str>)]| {
            put("op", Some(op));
            parts.iter().for_each(|(name, text)| put(name, *text));
        };
        match self {
            Self::Html { id, html } => patch("html", &[("id", Some(id)), ("html", Some(html))]),
            Self::Value { id, text } => patch("value", &[("id", Some(id)), ("text", Some(text))]),
            Self::Attr { id, name, value } => {
                let value = ("value", value.as_deref());
                patch("attr", &[("id", Some(id)), ("name", Some(name)), value]);
            }
            Self::Language { tag } => patch("language", &[("tag", Some(tag))]),
            Self::Store { text } => patch("store", &[("text", Some(text))]),
            Self::Download { name, text } => {
                patch("download", &[("name", Some(name)), ("text", Some(text))]);
            }
            Self::Save { name, base64 } => {
                patch("save", &[("name", Some(name)), ("base64", Some(base64))]);
            }
            Self::Copy { text } => patch("copy", &[("text", Some(text))]),
            Self::Address { text } => patch("address", &[("text", Some(text))]),
            Self::Focus { id } => patch("focus", &[("id", Some(id))]),
            Self::Near { id } => patch("near", &[("id", Some(id))]),
            Self::Taken {} => patch("taken", &[]),
            Self::Place { id, at } => patch("place", &[("id", Some(id)), ("at", Some(at))]),
            Self::Announce { text } => patch("announce", &[("text", Some(text))]),
            Self::Print {} => patch("print", &[]),
            Self::Search { number, job, shop } => {
                let shop = ("shop", shop.as_deref());
                patch("search", &[("number", Some(number)), ("job", Some(job)), shop]);
            }
            Self::Picture { name, svg, width, height } => patch(
                "picture",
                &[
                    ("name", Some(name)),
                    ("svg", Some(svg)),
                    ("width", Some(width)),
                    ("height", Some(height)),
                ],
            ),
            Self::List { ask, language, units, shop, text } => {
                let (language, units) = (("language", Some(*language)), ("units", Some(*units)));
                let (shop, text) = (("shop", shop.as_deref()), ("text", Some(text.as_str())));
                patch("list", &[("ask", Some(ask)), language, units, shop, text]);
            }
            Self::Design { ask, name, text } => {
                patch("design", &[("ask", Some(ask)), ("name", Some(name)), ("text", Some(text))]);
            }
            Self::Later {} => patch("later", &[]),
        }
    }
}

//! What leaves the page for other programs and people, and links that come back.

use super::event::Patch;
use super::files::Note;
use super::reading::MAKERS_SAVE;
use super::session::Session;
use crate::draft::{Draft, FieldError, to_tree};
use crate::job::{self, LINK_MARK, read_link};
use crate::view::html::{self, Scene};
use crate::view::qr::Code;
use crate::view::{Reading, csv, letter, pdf, pictures, xjdf};
use crate::words::{Say, say};
use base64ct::{Base64, Encoding as _};

/// The element that shows the picture for scanners when it is opened.
pub(super) const CODE: &str = "open-code";

/// A dot of a saved picture, in millimetres: 300 to the inch.
const PNG_DOT: f64 = 25.4 / 300.0;

impl Session {
    /// Saves or copies; false where the act is another's.
    pub(super) fn hand_over(&mut self, act: &str, value: &str, out: &mut Vec<Patch>) -> bool {
        match act {
            _ if MAKERS_SAVE.contains(&act) && self.reading == Reading::Client => {}
            "save-job" => {
                let opened = self.opened.as_ref().and_then(|opened| opened.unchanged(&self.draft));
                let print = || (self.json.print)(&to_tree(&self.draft, &job::SCHEMA));
                let text = opened.unwrap_or_else(print);
                self.download("quirefit-job.json", text, out);
            }
            "save-shop" => self.save_shop(out),
            "save-kept" => self.save_kept(out),
            "save-xjdf" => self.with_scene(out, |scene| {
                let text = xjdf::xjdf(scene.job, scene.plan, &scene.printer);
                Output::File("xjdf", text)
            }),
            "save-tables" => self.with_scene(out, |scene| {
                Output::File("csv", csv::write(&csv::tables(scene), &scene.printer))
            }),
            "copy-text" => self.with_scene(out, |scene| {
                let text = letter::letter(scene.job, scene.shop, scene.plan, &scene.printer);
                Output::Clipboard("letter.copied", text)
            }),
            "copy-link" => self.copy_link(out),
            "picture-svg" | "picture-png" => self.save_picture(act == "picture-png", value, out),
            _ => match pdf::DOCUMENTS.iter().find(|document| document.act == act) {
                Some(document) => self.save_document(document, out),
                None => return false,
            },
        }
        true
    }

    /// Saves a document for print, or says why there is none.
    fn save_document(&mut self, document: &pdf::Kind, out: &mut Vec<Patch>) {
        let (code, language) = (Code::of(&self.draft, &self.address), self.language.tag);
        let write = |scene: Scene| {
            (document.write)(&pdf::Wanted { scene: &scene, language, code: code.as_ref() })
        };
        let note = match self.settled().map(write) {
            Ok(Some(file)) => {
                let name = self.file_name(&format!("{}.pdf", document.name));
                let base64 = Base64::encode_string(&file.bytes);
                out.push(Patch::Save { name: name.clone(), base64 });
                let key = if file.replaced { "pdf.replaced" } else { "pdf.saved" };
                Note::Done(say(key).text("file", name))
            }
            Ok(None) => Note::said("sheet.none"),
            Err(note) => note,
        };
        self.note(note, out);
    }

    /// Saves a drawing: as it is, or as dots that the browser makes of it.
    fn save_picture(&mut self, dots: bool, id: &str, out: &mut Vec<Patch>) {
        let (svg, width, height) = match self.settled().map(|scene| pictures::file(&scene, id)) {
            Ok(Some(made)) => made,
            Ok(None) => return,
            Err(note) => return self.note(note, out),
        };
        let name = self.file_name(&format!("{id}.{}", if dots { "png" } else { "svg" }));
        if dots {
            let count = |length: f64| ((length / PNG_DOT).round() as u32).to_string();
            out.push(Patch::Picture { name, svg, width: count(width), height: count(height) });
        } else {
            out.push(Patch::Download { name, text: svg });
        }
    }

    /// The book for whoever takes it away, or why there is none. Never the one before it, which the page
    /// goes on showing while a field cannot be read.
    pub(super) fn settled(&self) -> Result<Scene<'_>, Note> {
        let scene = self.scene().ok_or_else(|| Note::said("answer.empty"))?;
        let reading = job::read(&self.draft, &self.shop);
        match reading.job {
            Some(_) => Ok(scene),
            None => Err(Note::Unread(reading.errors(&self.draft))),
        }
    }

    /// Hands over something of the plan, or says that there is none yet.
    fn with_scene(&mut self, out: &mut Vec<Patch>, make: impl Fn(&Scene) -> Output) {
        match self.settled().map(|scene| make(&scene)) {
            Ok(Output::File(extension, text)) => self.download(extension, text, out),
            Ok(Output::Clipboard(key, text)) => {
                out.push(Patch::Copy { text });
                self.note(Note::said(key), out);
            }
            Err(note) => self.note(note, out),
        }
    }

    /// The job as a link: behind this page's address where that can be reached from elsewhere. A page
    /// on a disk has no such address, and its path is nobody's business.
    fn copy_link(&mut self, out: &mut Vec<Patch>) {
        let note = match job::to_link(&self.draft) {
            Ok(link) if self.address.starts_with("http") => {
                out.push(Patch::Copy { text: format!("{}{link}", self.address) });
                Note::said("link.copied")
            }
            Ok(link) => {
                out.push(Patch::Copy { text: link });
                Note::said("link.copied.alone")
            }
            Err(errors) => Note::Faults("link.not-made", errors),
        };
        self.note(note, out);
    }

    /// The job as a picture, where somebody looks at it.
    pub(super) fn show_code(&mut self, out: &mut Vec<Patch>) {
        let shown = if self.code_open {
            let picture = Code::of(&self.draft, &self.address);
            html::code(picture.as_ref(), &self.printer()).into_string()
        } else {
            String::new()
        };
        self.set_html("code", shown, out);
    }

    /// The page stands at this address. A book in it is opened, and leaves the address again: what an
    /// address holds goes into the browser's history.
    pub(super) fn arrive(&mut self, address: &str, out: &mut Vec<Patch>) {
        self.address = address.split('#').next().unwrap_or_default().to_owned();
        if address.contains(LINK_MARK)
            && let Some(read) = read_link(address)
        {
            self.open_link(read, out);
            out.push(Patch::Address { text: self.address.clone() });
        }
    }

    /// A link or a code, typed, pasted or scanned into the one line; false where it is none. While it is
    /// still coming in, letter by letter, its end is missing: that is said, and goes by itself.
    pub(super) fn scanned(&mut self, text: &str, out: &mut Vec<Patch>) -> bool {
        let Some(read) = read_link(text) else { return false };
        match read {
            Ok(draft) => {
                let told = self.printer().text(&opened(&draft));
                // Undo brings back what the line held, not the code.
                if let Some(begun) = &self.begun {
                    self.said.clone_from(&begun.before.phrase);
                }
                self.open_link(Ok(draft), out);
                self.set_text("echo-phrase", &told, out);
            }
            Err(_) => self.echo_phrase(out),
        }
        true
    }

    pub(super) fn open_link(&mut self, read: Result<Draft, Vec<FieldError>>, out: &mut Vec<Patch>) {
        let note = match read {
            Ok(draft) => {
                let told = opened(&draft);
                self.replace(draft, out);
                Note::Done(told)
            }
            Err(errors) => Note::Faults("link.not-opened", errors),
        };
        self.note(note, out);
    }
}

/// Something of the plan for another program or person.
enum Output {
    /// A file: its extension and its text.
    File(&'static str, String),
    /// A text for the clipboard, and what is said of it.
    Clipboard(&'static str, String),
}

/// What a link or code was: by its title, else by pages and size.
fn opened(draft: &Draft) -> Say {
    let told = match draft.get("title") {
        "" => [draft.get("pages"), draft.get("size")].join(" · "),
        title => title.to_owned(),
    };
    say("link.opened").text("what", told)
}

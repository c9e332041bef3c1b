//! A region for files that are brought to the page: what they are, and where to open one.

use crate::view::Printer;
use maud::{Markup, html};

/// Such a region.
pub(super) struct Brought {
    /// What its ids end in: `region-ID`, `heading-ID`, `open-ID`.
    pub id: &'static str,
    /// The keys of its heading, its summary, what the files are, that they go nowhere, and of the button.
    pub words: [&'static str; 5],
    /// The name of the button's field, and the files that it offers.
    pub file: (&'static str, &'static str),
}

impl Brought {
    /// The region, with more buttons beside the first, and with what its files bring.
    pub fn region(&self, buttons: &Markup, body: &Markup, printer: &Printer) -> Markup {
        let [heading, summary, what, private, open] = self.words;
        let (file, accept) = self.file;
        html! {
            section class="region" id={ "region-" (self.id) } {
                h2 id={ "heading-" (self.id) } { (printer.word(heading)) }
                details id={ "open-" (self.id) } {
                    summary { (printer.word(summary)) }
                    p { (printer.word(what)) }
                    p { (printer.word(private)) }
                    p class="files" {
                        label class="button file" for=(file) {
                            (printer.word(open))
                            input type="file" id=(file) name=(file) accept=(accept);
                        }
                        (buttons)
                    }
                    (body)
                }
            }
        }
    }
}

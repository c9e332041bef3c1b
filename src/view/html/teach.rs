//! What stands below the first line of the form until somebody has typed: how to begin.

use crate::view::Printer;
use maud::{Markup, html};

/// Lines that can be taken as they are; each is `teach.line.N` of the language files.
pub const LINES: [&str; 4] = ["1", "2", "3", "4"];

/// For an empty form: what to type, lines to try, and where what is typed stays.
#[must_use]
pub fn teach(printer: &Printer) -> Markup {
    html! {
        p { (printer.word("teach.type")) }
        p { (printer.word("teach.try")) }
        p class="choices" {
            @for id in LINES {
                @let line = printer.word(&format!("teach.line.{id}"));
                button type="button" id={ "say-" (id) } data-act="say" data-value=(line) { (line) }
            }
        }
        p { (printer.word("page.private")) }
    }
}

/// For the first visit: that what stands there is an example.
#[must_use]
pub fn first_visit(printer: &Printer) -> Markup {
    html! { p { (printer.word("teach.example")) } }
}

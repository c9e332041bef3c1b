//! Further sections in the form, from the outside of the book to its middle.

use super::fields::control;
use crate::draft::{Draft, MOST_MEMBERS};
use crate::job::SCHEMA;
use crate::shop::Shop;
use crate::units::Measure;
use crate::view::Printer;
use crate::words::say;
use maud::{Markup, html};

/// The sections, `nest` from the outside in by their index, nothing for the main pages. Rewritten
/// whole when one is added, moved or taken out; where each lies is patched into its slot.
#[must_use]
pub fn sections(nest: &[Option<usize>], draft: &Draft, shop: &Shop, printer: &Printer) -> Markup {
    let count = nest.len().saturating_sub(1);
    html! {
        @if count > 0 { p class="hint" { (printer.word("section.order")) } }
        @for (place, item) in nest.iter().enumerate() {
            @match item {
                Some(index) => (section(*index, place, nest.len(), draft, shop, printer)),
                None if count == 0 => {}
                None => {
                    p class="insert main" id="section-main" data-drag {
                        (printer.word("section.main"))
                    }
                }
            }
        }
        @if count < MOST_MEMBERS {
            button type="button" id="section-add" data-act="section-add" {
                (printer.word("section.add"))
            }
        } @else {
            p class="hint" {
                (printer.text(&say("section.most").put("most", Measure::count(MOST_MEMBERS as u32))))
            }
        }
    }
}

fn section(
    index: usize,
    place: usize,
    places: usize,
    draft: &Draft,
    shop: &Shop,
    printer: &Printer,
) -> Markup {
    let name = section_name(index, printer);
    let fields = SCHEMA.groups.iter().flat_map(|(_, fields)| fields.iter());
    let acts = [
        ("section-out", place == 0),
        ("section-in", place + 1 == places),
        ("section-remove", false),
    ];
    html! {
        fieldset class="insert" id={ "section-" (index) } data-drag {
            legend data-grip { b { (name) } " " span class="place" id=(place_id(index)) {} }
            @for field in fields {
                (control(field, &format!("sections.{index}.{}", field.id), draft, shop, printer))
            }
            @for (act, off) in acts {
                button type="button" id={ (act) "-" (index) } data-act=(act) data-value=(index)
                    aria-disabled=[off.then_some("true")] {
                    (printer.word(&format!("act.{act}")))
                    span class="quiet" { ": " (name) }
                }
            }
        }
    }
}

/// What a section is called.
pub(super) fn section_name(index: usize, printer: &Printer) -> String {
    let number = Measure::count(index as u32 + 1);
    printer.text(&say("section.name").put("number", number))
}

/// The slot that says where a section lies.
#[must_use]
pub fn place_id(index: usize) -> String {
    format!("place-section-{index}")
}

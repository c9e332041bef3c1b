//! The form: one control a row of the fields table, each with its own slot for echo and fault.

use super::offers::is_offered;
use super::sections::section_name;
use crate::draft::{Draft, Field, FieldError, Group, Kind};
use crate::entry::Choice;
use crate::job::{Note, SCHEMA};
use crate::shop::Shop;
use crate::view::regions::{ALL, MAKERS};
use crate::view::{Printer, Reading};
use maud::{Markup, html};

/// Groups behind disclosures, in order, and who is asked. What was typed in one counts for everybody.
pub(super) const GROUPS: [(&str, &[Reading]); 9] = [
    ("pictures", MAKERS),
    ("paper", MAKERS),
    ("trim", MAKERS),
    ("sheet", MAKERS),
    ("run", MAKERS),
    ("dispatch", ALL),
    ("dummy", MAKERS),
    ("first-off", MAKERS),
    ("identity", ALL),
];

/// The fields of one group.
pub(super) fn group(group: Group, draft: &Draft, shop: &Shop, printer: &Printer) -> Markup {
    html! {
        @for field in SCHEMA.fields.iter().filter(|field| field.group == group) {
            (control(field, field.id, draft, shop, printer))
        }
    }
}

/// One control with label, then what was understood or an example in its place, then help.
pub(super) fn control(
    field: &Field,
    path: &str,
    draft: &Draft,
    shop: &Shop,
    printer: &Printer,
) -> Markup {
    let id = path.replace('.', "-");
    let (key, label) = (key(path), label(path, printer));
    let hint = printer.word(&format!("{key}.hint"));
    let text = draft.get(path);
    let described =
        if hint.is_empty() { format!("echo-{id}") } else { format!("hint-{id} echo-{id}") };
    html! {
        @match field.kind {
            Kind::Choice(options) => {
                fieldset class="field choice" id={ "field-" (id) } aria-describedby=(described) {
                    legend { (label) }
                    div class="options" {
                        @for option in options {
                            label {
                                input type="radio" name=(path) id={ "input-" (id) "-" (option) } value=(option)
                                    checked[option == &choice(field, text)];
                                " " span { (printer.word(&format!("{key}.{option}"))) }
                            }
                        }
                    }
                    (slot(&id))
                    (example(&id, hint))
                    (help(&id, &key, label, printer))
                }
            }
            _ => {
                div class="field" id={ "field-" (id) } {
                    label for={ "input-" (id) } { (label) }
                    @if field.id == "line" {
                        select id={ "input-" (id) } name=(path) aria-describedby=(described) {
                            (lines(shop, text, printer))
                        }
                    } @else {
                        @let offered = is_offered(field);
                        input type="text" id={ "input-" (id) } name=(path) value=(text)
                            inputmode=(inputmode(field.kind))
                            autocomplete="off" autocapitalize="off" spellcheck="false"
                            role=[offered.then_some("combobox")]
                            aria-autocomplete=[offered.then_some("list")]
                            aria-expanded=[offered.then_some("false")]
                            aria-controls=[offered.then(|| format!("offers-{id}"))]
                            aria-describedby=(described);
                    }
                    (slot(&id))
                    (example(&id, hint))
                    @if is_offered(field) {
                        div class="offers" id={ "offers-" (id) } role="listbox" hidden
                            aria-label={ (printer.word("offer.list")) ": " (label) } {}
                    }
                    (help(&id, &key, label, printer))
                }
            }
        }
    }
}

/// The key of a field's words: those of a section's fields know no number.
fn key(path: &str) -> String {
    match path.split_once('.') {
        Some((group, member)) => {
            format!("field.{group}.{}", member.split('.').next_back().unwrap_or_default())
        }
        None => format!("field.{path}"),
    }
}

/// What stands above a field.
fn label<'a>(path: &str, printer: &'a Printer) -> &'a str {
    printer.word(&format!("{}.label", key(path)))
}

/// A field by its label, with its section's name where every section has one of that label.
#[must_use]
pub fn field_name(path: &str, printer: &Printer) -> String {
    let label = label(path, printer);
    let index = path.split('.').nth(1).and_then(|index| index.parse().ok());
    index.map_or_else(
        || label.to_owned(),
        |index| format!("{}, {label}", section_name(index, printer)),
    )
}

/// Where echo, question or fault stand. Filled by a patch, so that the control itself stays.
fn slot(id: &str) -> Markup {
    html! { div class="echo" id={ "echo-" (id) } {} }
}

/// What could be typed; shown while nothing stands in the slot before it.
fn example(id: &str, hint: &str) -> Markup {
    html! { @if !hint.is_empty() { p class="hint" id={ "hint-" (id) } { (hint) } } }
}

fn help(id: &str, key: &str, label: &str, printer: &Printer) -> Markup {
    let text = printer.word(&format!("{key}.help"));
    html! {
        @if !text.is_empty() {
            details class="help" id={ "help-" (id) } {
                summary { (printer.word("form.help")) span class="quiet" { ": " (label) } }
                p { (text) }
            }
        }
    }
}

fn choice<'a>(field: &Field, text: &'a str) -> &'a str
where
    'static: 'a,
{
    if text.is_empty() { field.default } else { text }
}

/// The options of the line: the shop's lines by name.
pub(super) fn lines(shop: &Shop, chosen: &str, printer: &Printer) -> Markup {
    html! {
        @for (index, line) in shop.lines.iter().enumerate() {
            option value=(line.name) selected[line.name == chosen || (chosen.is_empty() && index == 0)] {
                (printer.typed(&line.name))
            }
        }
    }
}

const fn inputmode(kind: Kind) -> &'static str {
    match kind {
        Kind::Copies | Kind::Number(..) => "numeric",
        Kind::Length(..) => "decimal",
        _ => "text",
    }
}

/// What stands in a field's slot: echo, question with ready answers, or fault with its repair.
#[must_use]
pub fn note(path: &str, note: Option<&Note>, printer: &Printer) -> Markup {
    html! {
        @match note {
            None | Some(Note::Incomplete) => {}
            Some(Note::Echo(echo)) => {
                @let text = printer.text(echo);
                @if !text.is_empty() { p class="understood" { (text) } }
            }
            Some(Note::Narrow(echo, choices)) => {
                p class="understood" { (printer.text(echo)) }
                (ready(path, choices, printer))
            }
            Some(Note::Ask(question)) => {
                p class="question" { (printer.text(&question.ask)) }
                (ready(path, &question.choices, printer))
            }
            Some(Note::Wrong(fault)) => {
                p class="fault" {
                    strong { (printer.text(&fault.wrong)) } " " (printer.text(&fault.repair))
                }
            }
        }
    }
}

/// Ready answers as buttons.
fn ready(path: &str, choices: &[Choice], printer: &Printer) -> Markup {
    html! {
        p class="choices" {
            @for (index, choice) in choices.iter().enumerate() {
                button type="button" id={ "choose-" (path.replace('.', "-")) "-" (index) }
                    data-act={ "choose:" (path) } data-value=(printer.typed(&choice.typed)) {
                    (printer.text(&choice.label))
                }
            }
        }
    }
}

/// Everything that is wrong with a file, as a list; fields by the names that the file has for them.
#[must_use]
pub fn file_faults(errors: &[FieldError], printer: &Printer) -> Markup {
    faults(errors, printer, |path| html! { @if !path.is_empty() { code { (path) } " " } })
}

/// Everything that is wrong with the form, as a list; fields by their labels.
#[must_use]
pub fn form_faults(errors: &[FieldError], printer: &Printer) -> Markup {
    faults(errors, printer, |path| html! { strong { (field_name(path, printer)) } ": " })
}

/// Faults: which field, what was given, what is wrong, how to mend it.
fn faults(errors: &[FieldError], printer: &Printer, name: impl Fn(&str) -> Markup) -> Markup {
    html! {
        ul {
            @for error in errors {
                li {
                    (name(&error.path))
                    @if !error.given.is_empty() { q { (error.given) } " " }
                    (printer.text(&error.wrong)) " " (printer.text(&error.repair))
                }
            }
        }
    }
}

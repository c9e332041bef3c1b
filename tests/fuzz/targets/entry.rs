//! Any text typed into any field.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::draft::Draft;
use quirefit::entry::{LengthUnit, phrase};
use quirefit::job::SCHEMA;
use quirefit_fuzz::work_out;

const BOOK: &[(&str, &str)] = &[
    ("pages", "40 + 4"),
    ("size", "A5"),
    ("paper", "100 gsm silk"),
    ("cover", "250 gsm silk"),
    ("copies", "1200"),
];

fuzz_target!(|input: (u8, u8, &str)| {
    let (field, unit, text) = input;
    let inches = unit & 1 == 1;
    let _ = phrase(text, if inches { LengthUnit::Inch } else { LengthUnit::Millimetre });
    let mut draft = Draft::of(BOOK);
    draft.set("units", if inches { "in" } else { "mm" });
    if let Some(field) = SCHEMA.fields.get(usize::from(field) % SCHEMA.fields.len()) {
        draft.set(field.id, text);
    }
    work_out(&draft);
});

//! Any bytes as a job file.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::draft::to_tree;
use quirefit::job::SCHEMA;
use quirefit_fuzz::{JSON, draft, work_out};

fuzz_target!(|bytes: &[u8]| {
    let Some(read) = draft(bytes, &SCHEMA) else { return };
    // Saved and opened again it is the same.
    let saved = (JSON.print)(&to_tree(&read, &SCHEMA));
    assert_eq!(draft(saved.as_bytes(), &SCHEMA).as_ref(), Some(&read));
    work_out(&read);
});

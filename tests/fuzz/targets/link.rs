//! Any text as a link or a code, and any draft made into one.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::job::{read_link, to_code, to_link};
use quirefit_fuzz::work_out;

fuzz_target!(|text: &str| {
    if let Some(Ok(draft)) = read_link(text) {
        for made in [to_link(&draft), to_code(&draft)].into_iter().flatten() {
            assert_eq!(read_link(&made), Some(Ok(draft.clone())));
        }
        work_out(&draft);
    }
});

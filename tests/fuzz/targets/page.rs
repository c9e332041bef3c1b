//! Any events in any order on the page.
#![no_main]

use libfuzzer_sys::fuzz_target;
use quirefit::page::{Event, Session};
use quirefit::words::Files;
use quirefit_fuzz::JSON;

const KINDS: [&str; 16] = [
    "input", "change", "leave", "tap", "key", "drop", "act", "file", "toggle", "rest", "print",
    "printed", "address", "width", "found", "helper",
];

fuzz_target!(|input: (&str, Vec<(u8, &str, &str)>)| {
    let (kept, events) = input;
    let languages = ["de-CH".to_owned()];
    let mut session = Session::new(Files::new(), &languages, Some(kept), JSON);
    session.handle(&Event::new("start", "", "file:///page.html"));
    for (kind, id, value) in events.iter().take(40) {
        let kind = KINDS[usize::from(*kind) % KINDS.len()];
        session.handle(&Event::new(kind, id, value));
        session.handle(&Event::new("rest", "", ""));
    }
});

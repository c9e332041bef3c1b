//! Any bytes in a sealed link, and any text as a link or a code.
#![no_main]

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use libfuzzer_sys::fuzz_target;
use quirefit::job::{LINK_MARK, read_link, to_code, to_link};
use quirefit_fuzz::work_out;

/// The link around a content, as whoever wants to do harm would make it: its checksum is right.
fn sealed(content: &[u8]) -> Option<String> {
    let [low, high] = u16::try_from(content.len()).ok()?.to_le_bytes();
    let before = [1, low, high];
    let mut sum = crc32fast::Hasher::new();
    sum.update(&before);
    sum.update(content);
    let bytes = [&before[..], &sum.finalize().to_le_bytes(), content].concat();
    Some(format!("{LINK_MARK}{}", URL_SAFE_NO_PAD.encode(bytes)))
}

fn read(text: &str) {
    if let Some(Ok(draft)) = read_link(text) {
        for made in [to_link(&draft), to_code(&draft)].into_iter().flatten() {
            assert_eq!(read_link(&made), Some(Ok(draft.clone())));
        }
        work_out(&draft);
    }
}

fuzz_target!(|bytes: &[u8]| {
    if let Some(link) = sealed(bytes) {
        assert!(read_link(&link).is_some(), "no link: {link}");
        read(&link);
    }
    if let Ok(text) = std::str::from_utf8(bytes) {
        read(text);
        read(&format!("QF{text}"));
    }
});

//! Signs in a file's bytes that it is not whole. The parser repairs what it can and does not say so.

use super::Damage;

/// How far into a file its beginning is looked for, and its end before the end: what readers allow.
const NEAR: usize = 1024;
const HEAD: &[u8] = b"%PDF-";
const END: &[u8] = b"%%EOF";
const START: &[u8] = b"startxref";

/// Where a file's own beginning stands; nothing where it is no PDF.
pub fn beginning(bytes: &[u8]) -> Option<usize> {
    let near = bytes.get(..bytes.len().min(NEAR + HEAD.len()))?;
    near.windows(HEAD.len()).position(|window| window == HEAD)
}

/// What is wrong with a file that begins so many bytes in.
pub fn signs(bytes: &[u8], beginning: usize) -> Vec<Damage> {
    let mut found = Vec::new();
    if beginning > 0 {
        found.push(Damage::Before(u32::try_from(beginning).unwrap_or(u32::MAX)));
    }
    let tail = bytes.get(bytes.len().saturating_sub(NEAR)..).unwrap_or_default();
    if last(tail, END).is_none() {
        found.push(Damage::NoEnd);
    } else if !index_stands(bytes, tail, beginning) {
        found.push(Damage::Index);
    }
    found
}

/// Whether what follows the last `startxref` leads to a table or to the stream in its place. Files with
/// something before their beginning may count from either.
fn index_stands(bytes: &[u8], tail: &[u8], beginning: usize) -> bool {
    let Some(place) = last(tail, START).and_then(|at| number(tail.get(at + START.len()..)?)) else {
        return false;
    };
    [place, place.saturating_add(beginning)].into_iter().any(|at| {
        let there = bytes.get(at..).unwrap_or_default().trim_ascii_start();
        there.starts_with(b"xref") || is_object(there)
    })
}

fn last(text: &[u8], wanted: &[u8]) -> Option<usize> {
    text.windows(wanted.len()).rposition(|window| window == wanted)
}

/// The number at the beginning.
fn number(text: &[u8]) -> Option<usize> {
    let text = text.trim_ascii_start();
    let digits = text.iter().take_while(|byte| byte.is_ascii_digit()).count();
    core::str::from_utf8(text.get(..digits)?).ok()?.parse().ok()
}

/// Two numbers and `obj`.
fn is_object(text: &[u8]) -> bool {
    let mut words = text.split(u8::is_ascii_whitespace).filter(|word| !word.is_empty());
    let mut next = || words.next().unwrap_or_default();
    let digits = |word: &[u8]| !word.is_empty() && word.iter().all(u8::is_ascii_digit);
    digits(next()) && digits(next()) && next().starts_with(b"obj")
}

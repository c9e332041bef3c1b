//! All cases, file by file. To add one: an `async fn name(page: &Page<'_>) -> Outcome` in the file
//! it belongs to, and its name in that file's `cases!` list.

mod access;
mod advice;
mod bounds;
mod card;
mod client;
mod compare;
mod design;
mod drawings;
mod embed;
mod entry;
mod files;
mod glue;
mod handover;
mod harness;
mod language;
mod leaves;
mod lists;
mod looks;
mod lost;
mod opens;
mod paper;
mod site;
mod typing;

use crate::case::Case;

/// Every case of every file.
pub fn all() -> Vec<&'static Case> {
    [
        harness::CASES,
        glue::CASES,
        opens::CASES,
        typing::CASES,
        entry::CASES,
        files::CASES,
        handover::CASES,
        access::CASES,
        advice::CASES,
        client::CASES,
        language::CASES,
        drawings::CASES,
        card::CASES,
        paper::CASES,
        compare::CASES,
        lists::CASES,
        design::CASES,
        looks::CASES,
        lost::CASES,
        leaves::CASES,
        bounds::CASES,
        site::CASES,
        embed::CASES,
    ]
    .into_iter()
    .flatten()
    .collect()
}

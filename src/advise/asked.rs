//! What is asked: the book, how it was typed, and every paper and size that could be taken instead.

use super::papers::{self, PaperChoice, Wanted};
use super::sizes::{self, SizeChoice};
use crate::draft::Draft;
use crate::entry::{LengthUnit, no_paper};
use crate::job::{Job, Role};
use crate::paper::Grain;
use crate::shop::Shop;

/// One question, with everything that is worked out once.
#[derive(Debug)]
pub(super) struct Asked<'a> {
    pub(super) draft: &'a Draft,
    pub(super) job: &'a Job,
    pub(super) shop: &'a Shop,
    /// Papers for the inside.
    pub(super) papers: Vec<PaperChoice>,
    /// Papers for the cover.
    pub(super) covers: Vec<PaperChoice>,
    pub(super) sizes: Vec<SizeChoice>,
    /// The separate cover is printed on the paper of the inside.
    pub(super) cover_follows: bool,
    /// Where head and foot are cut follows from the line.
    pub(super) auto_head_foot: bool,
}

impl<'a> Asked<'a> {
    pub(super) fn new(draft: &'a Draft, job: &'a Job, shop: &'a Shop) -> Self {
        let unit = LengthUnit::of(draft.get("units"));
        let said = |field: &str| match draft.get(field) {
            "along" => Some(Grain::AlongSpine),
            "across" => Some(Grain::AcrossSpine),
            _ => None,
        };
        let papers_for = |role: Role, grain: &str| {
            let section = job.sections.iter().find(|section| section.role == role);
            section.map_or_else(Vec::new, |section| {
                let cover = role == Role::Cover;
                let wanted = Wanted { stock: &section.stock, cover, grain: said(grain), unit };
                papers::choices(&wanted, shop)
            })
        };
        Self {
            draft,
            job,
            shop,
            papers: papers_for(Role::Inside, "grain"),
            covers: papers_for(Role::Cover, "cover_grain"),
            sizes: sizes::choices(job.size, draft.get("bound_edge") == "top", unit),
            cover_follows: no_paper(draft.get("cover")),
            auto_head_foot: matches!(draft.get("head_foot"), "" | "auto"),
        }
    }
}

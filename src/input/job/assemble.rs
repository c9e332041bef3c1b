//! The nest of sections from what was said of pages, papers, cover and inserts.

use super::read::Insert;
use super::{Job, Numbering, Role, Section};
use crate::entry::{Cover, PageCount};
use crate::paper::{Stock, caliper, grammage};
use crate::units::{Copies, PAGES_PER_SHEET, Pages, Size};

/// Puts the sections into a job whose other fields stand already, outermost first: cover, inserts
/// around, the inside, inserts at the centre. Nothing comes back when a paper has no thickness.
pub(super) fn assemble(
    settings: Job,
    count: &PageCount,
    size: Size,
    copies: Option<Copies>,
    paper: Stock,
    cover: Option<Stock>,
    inserts: Vec<Insert>,
) -> Option<Job> {
    let separate = count.cover == Cover::Plus || cover.is_some();
    let cover_pages = Pages(PAGES_PER_SHEET);
    // "64 self cover" with a cover paper: the cover is counted in.
    let inside = match count.cover {
        Cover::Counted if separate => count.inside - cover_pages,
        _ => count.inside,
    };
    let mut sections = Vec::new();
    if separate {
        let stock = cover.unwrap_or_else(|| paper.clone());
        sections.push((Role::Cover, stock, cover_pages));
    }
    let (around, centre): (Vec<Insert>, Vec<Insert>) =
        inserts.into_iter().partition(|(_, _, around)| *around);
    let insert = |(pages, stock, _): Insert| (Role::Insert, stock, pages);
    sections.extend(around.into_iter().map(insert));
    if inside > Pages(0) {
        sections.push((Role::Inside, paper, inside));
    }
    sections.extend(centre.into_iter().map(insert));

    let mut built: Vec<Section> = Vec::with_capacity(sections.len());
    for (role, stock, pages) in sections {
        let lot = built.iter().position(|section| section.stock == stock).unwrap_or(built.len());
        built.push(Section {
            role,
            caliper: caliper(&stock)?,
            grammage: grammage(&stock),
            pages,
            sheets: pages.sheets(),
            supplied: None,
            stock,
            lot,
        });
    }
    let numbering = if separate { Numbering::SeparateCover } else { Numbering::SelfCover };
    Some(Job { sections: built, numbering, size, copies, ..settings })
}

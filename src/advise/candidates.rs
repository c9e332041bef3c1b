//! Every single change worth trying.

use super::asked::Asked;
use super::change::{ByRule, Change, Weighed};
use super::scratch::other_spine;
use crate::data;
use crate::job::{HeadFoot, Job, Role, RouteWish};
use crate::units::{Mm, PAGES_PER_SHEET, Pages, Sheets};

/// Most copies along one fold, as many as the job's field takes.
const MOST_UP: u32 = 3;
/// So many page counts below are tried sheet by sheet; further down the steps widen.
const CLOSE_STEPS: u32 = 16;
/// Beyond those, this many steps lead down to a single sheet.
const WIDE_STEPS: u32 = 16;
/// So many page counts above are tried: a book may be too thin for a line.
const STEPS_UP: u32 = 4;
/// Most face cuts tried, one a millimetre.
const MOST_CUTS: u32 = 30;

/// The single changes, in the order in which two of them are put into a book.
pub(super) fn singles(asked: &Asked) -> Vec<Weighed> {
    let mut out = Vec::new();
    let job = asked.job;
    let lines = (0..asked.shop.lines.len()).filter(|line| *line != job.line);
    out.extend(lines.map(|line| Weighed::plain(Change::Line(line))));
    out.extend(
        asked
            .papers
            .iter()
            .enumerate()
            .map(|(index, choice)| Weighed::new(Change::Paper(index), choice.kind, choice.differs)),
    );
    out.extend(
        asked
            .covers
            .iter()
            .enumerate()
            .map(|(index, choice)| Weighed::new(Change::Cover(index), choice.kind, choice.differs)),
    );
    if job.cover().is_some() && job.main_section().is_some() {
        out.push(Weighed::plain(Change::SelfCover));
    }
    out.push(Weighed::plain(Change::Spine(other_spine(job.spine))));
    pages(job, &mut out);
    out.extend(
        asked
            .sizes
            .iter()
            .enumerate()
            .map(|(index, choice)| Weighed::new(Change::Size(index), choice.kind, choice.differs)),
    );
    face_cuts(asked, &mut out);
    head_foot(job, &mut out);
    by_rule(job, &mut out);
    let ups = (1..=MOST_UP).filter(|up| *up != job.copies_up);
    out.extend(ups.map(|up| Weighed::plain(Change::CopiesUp(up))));
    out
}

/// Fewer pages and more, and two volumes.
fn pages(job: &Job, out: &mut Vec<Weighed>) {
    let Some(main) = job.main_section() else { return };
    let sheets = main.sheets.get();
    let all: u32 = job.sections.iter().map(|section| section.pages.get()).sum();
    let mut push = |pages: Pages| {
        let differs = f64::from(pages.get().abs_diff(main.pages.get())) / f64::from(all.max(1));
        if pages != main.pages {
            out.push(Weighed::new(Change::Pages(pages), &data::PAGES, differs));
        }
    };
    // Where the last sheet has blanks, its full count below is the first step.
    let mut fewer = main.pages.get().saturating_sub(1) / PAGES_PER_SHEET;
    let wide = (sheets / WIDE_STEPS).max(1);
    let mut step = 0;
    while fewer > 0 {
        push(Sheets(fewer).pages());
        step += 1;
        fewer = fewer.saturating_sub(if step < CLOSE_STEPS { 1 } else { wide });
    }
    for more in 1..=STEPS_UP {
        push(Sheets(sheets + more).pages());
    }
    let inserts = job.sections.iter().any(|section| section.role == Role::Insert);
    if let Some((thicker, thinner)) = halves(main.pages).filter(|_| !inserts) {
        out.push(Weighed::plain(Change::Volumes(thicker, thinner)));
    }
}

/// Pages in two volumes, whole sheets in the first; an odd sheet goes to the first.
fn halves(pages: Pages) -> Option<(Pages, Pages)> {
    let thicker = Sheets(pages.sheets().get().div_ceil(2)).pages();
    let thinner = pages - thicker;
    (thinner > Pages(0)).then_some((thicker, thinner))
}

/// Face cuts that the line takes on the outermost leaf, one a millimetre, and the rule's own.
fn face_cuts(asked: &Asked, out: &mut Vec<Weighed>) {
    let job = asked.job;
    if job.face_cut.is_some() {
        out.push(Weighed::plain(Change::FaceCut(None)));
    }
    let range = asked.shop.lines.get(job.line).map(|line| line.face_cut).unwrap_or_default();
    let least = Mm(range.least.unwrap_or_default()) + job.tolerance;
    let from = job.bleed.unwrap_or(Mm::ZERO).max(least).get().ceil() as u32;
    let most = range.most.map_or(u32::MAX, |most| most.floor() as u32);
    let cuts = (from..=most).take(MOST_CUTS as usize).map(|cut| Mm(f64::from(cut)));
    out.extend(
        cuts.filter(|cut| job.face_cut != Some(*cut) && *cut > Mm::ZERO)
            .map(|cut| Weighed::plain(Change::FaceCut(Some(cut)))),
    );
}

/// What somebody has decided and a rule could decide.
fn by_rule(job: &Job, out: &mut Vec<Weighed>) {
    let decided = [
        (job.stitches.is_some(), ByRule::Stitches),
        (job.press_sheet.is_some(), ByRule::PressSheet),
        (job.route != RouteWish::Auto, ByRule::Route),
    ];
    let decided = decided.into_iter().filter(|(decided, _)| *decided);
    out.extend(decided.map(|(_, field)| Weighed::plain(Change::ByRule(field))));
}

/// Head and foot cut in another place than now.
fn head_foot(job: &Job, out: &mut Vec<Weighed>) {
    let others = [HeadFoot::Before, HeadFoot::After];
    out.extend(
        others
            .into_iter()
            .filter(|other| *other != job.head_foot)
            .map(|other| Weighed::plain(Change::HeadFoot(other))),
    );
}

#[cfg(test)]
mod tests {
    use super::halves;
    use crate::units::Pages;

    #[test]
    fn two_volumes_hold_all_pages_and_the_first_whole_sheets() {
        assert_eq!(halves(Pages(144)), Some((Pages(72), Pages(72))));
        // 37 sheets, the last with two blanks: 19 sheets, and 70 pages on 18.
        assert_eq!(halves(Pages(146)), Some((Pages(76), Pages(70))));
        assert_eq!(halves(Pages(4)), None);
    }
}

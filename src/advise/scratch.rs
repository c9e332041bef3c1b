//! A job to try changes on in place, and a plan to judge them with: nothing is allocated per try.

use super::asked::Asked;
use super::change::{ByRule, Change};
use super::papers::PaperChoice;
use crate::check::Verdict;
use crate::job::{HeadFoot, Job, Numbering, Role, RouteWish, Section, Spine};
use crate::plan::{Plan, plan_into};
use crate::units::{PAGES_PER_SHEET, Pages};

/// The book as asked about, and a copy of it that is changed and put back.
#[derive(Debug, Clone)]
struct Pair {
    base: Job,
    work: Job,
}

/// Everything a try needs.
#[derive(Debug)]
pub(super) struct Scratch {
    with_cover: Pair,
    /// The same book without its separate cover.
    bare: Pair,
    /// Which paper each section has: its lot, or a number beyond all lots for a paper taken instead.
    papers: Vec<usize>,
    plan: Plan,
    /// Books planned so far.
    pub(super) tried: usize,
}

impl Scratch {
    pub(super) fn new(job: &Job) -> Self {
        let bare = without_cover(job);
        Self {
            with_cover: Pair { base: job.clone(), work: job.clone() },
            bare: Pair { base: bare.clone(), work: bare },
            papers: Vec::with_capacity(job.sections.len()),
            plan: Plan::default(),
            tried: 0,
        }
    }

    /// Plans the book with these changes. Two volumes are both planned; the worse verdict counts.
    pub(super) fn judge(&mut self, asked: &Asked, changes: &[Change]) -> Verdict {
        let bare = changes.contains(&Change::SelfCover);
        let pair = if bare { &mut self.bare } else { &mut self.with_cover };
        pair.put_back();
        self.papers.clear();
        self.papers.extend(pair.base.sections.iter().map(|section| section.lot));
        for change in changes {
            apply(&mut pair.work, &mut self.papers, asked, *change, bare);
        }
        relabel(&mut pair.work, &self.papers);
        plan_into(&mut self.plan, &pair.work, asked.shop);
        self.tried += 1;
        let mut verdict = self.plan.verdict;
        for change in changes {
            if let Change::Volumes(_, thinner) = change {
                set_pages(&mut pair.work, *thinner, bare);
                plan_into(&mut self.plan, &pair.work, asked.shop);
                self.tried += 1;
                verdict = verdict.max(self.plan.verdict);
            }
        }
        verdict
    }
}

impl Pair {
    /// Puts back whatever a change may have set.
    fn put_back(&mut self) {
        let (base, work) = (&self.base, &mut self.work);
        work.size = base.size;
        work.spine = base.spine;
        work.line = base.line;
        work.face_cut = base.face_cut;
        work.head_foot = base.head_foot;
        work.copies_up = base.copies_up;
        work.stitches = base.stitches;
        work.press_sheet = base.press_sheet;
        work.route = base.route;
        work.dummy = base.dummy;
        for (section, base) in work.sections.iter_mut().zip(&base.sections) {
            section.pages = base.pages;
            section.sheets = base.sheets;
            section.caliper = base.caliper;
            section.grammage = base.grammage;
            section.lot = base.lot;
            section.stock.kind = base.stock.kind;
            section.stock.weight = base.stock.weight;
            section.stock.thickness = base.stock.thickness;
            section.stock.grain = base.stock.grain;
        }
    }
}

fn apply(job: &mut Job, papers: &mut [usize], asked: &Asked, change: Change, bare: bool) {
    if change.is_other_thickness() {
        job.dummy.closed = None;
        job.dummy.push_out = None;
    }
    let beyond = asked.job.sections.len();
    match change {
        Change::Line(line) => {
            job.line = line;
            if asked.auto_head_foot {
                let cuts = asked.shop.lines.get(line).is_some_and(|line| line.cuts_head_foot);
                job.head_foot = if cuts { HeadFoot::OnLine } else { HeadFoot::Before };
            }
        }
        Change::Paper(index) => {
            let follows = asked.cover_follows;
            let part = |role| role == Role::Inside || (role == Role::Cover && follows);
            take(job, papers, asked.papers.get(index), beyond + index, part);
        }
        Change::Cover(index) => {
            let number = beyond + asked.papers.len() + index;
            take(job, papers, asked.covers.get(index), number, |role| role == Role::Cover);
        }
        Change::SelfCover => {}
        Change::Spine(spine) => {
            job.spine = spine;
            job.dummy.push_out = None;
        }
        Change::Pages(pages) | Change::Volumes(pages, _) => set_pages(job, pages, bare),
        Change::Size(index) => {
            if let Some(choice) = asked.sizes.get(index) {
                job.size = choice.size;
            }
        }
        Change::FaceCut(cut) => job.face_cut = cut,
        Change::HeadFoot(head_foot) => job.head_foot = head_foot,
        Change::CopiesUp(copies) => job.copies_up = copies,
        Change::ByRule(ByRule::Stitches) => job.stitches = None,
        Change::ByRule(ByRule::PressSheet) => job.press_sheet = None,
        Change::ByRule(ByRule::Route) => job.route = RouteWish::Auto,
    }
}

/// Gives the sections of a part another paper.
fn take(
    job: &mut Job,
    papers: &mut [usize],
    choice: Option<&PaperChoice>,
    number: usize,
    part: impl Fn(Role) -> bool,
) {
    let Some(choice) = choice else { return };
    for (section, paper) in job.sections.iter_mut().zip(papers) {
        if part(section.role) {
            section.caliper = choice.caliper;
            section.grammage = choice.grammage;
            section.stock.kind = choice.stock.kind;
            section.stock.weight = choice.stock.weight;
            section.stock.thickness = choice.stock.thickness;
            section.stock.grain = choice.stock.grain;
            *paper = number;
        }
    }
}

/// Sets the pages of the main section; without a separate cover its four pages come on top.
fn set_pages(job: &mut Job, pages: Pages, bare: bool) {
    let on_top = if bare { PAGES_PER_SHEET } else { 0 };
    for section in job.sections.iter_mut().filter(|section| section.role == Role::Inside) {
        section.pages = pages + Pages(on_top);
        section.sheets = section.pages.sheets();
    }
}

/// Sections of one paper are one lot, named by the first of them.
fn relabel(job: &mut Job, papers: &[usize]) {
    for (section, paper) in job.sections.iter_mut().zip(papers) {
        section.lot = papers.iter().position(|other| other == paper).unwrap_or_default();
    }
}

/// The book without a separate cover: the first page of the inside is the cover.
fn without_cover(job: &Job) -> Job {
    let mut bare = job.clone();
    let first = job.sections.iter().position(|section| section.role == Role::Cover);
    let Some(first) = first else { return bare };
    bare.sections.remove(first);
    bare.numbering = Numbering::SelfCover;
    bare.dummy.closed = None;
    bare.dummy.push_out = None;
    for section in &mut bare.sections {
        if section.role == Role::Inside {
            section.pages = section.pages + Pages(PAGES_PER_SHEET);
            section.sheets = section.pages.sheets();
        }
    }
    let lots: Vec<usize> = bare
        .sections
        .iter()
        .map(|section: &Section| {
            bare.sections.iter().position(|other| other.lot == section.lot).unwrap_or_default()
        })
        .collect();
    relabel(&mut bare, &lots);
    bare
}

/// The other form of the spine.
pub(super) const fn other_spine(spine: Spine) -> Spine {
    match spine {
        Spine::Round => Spine::Square,
        Spine::Square => Spine::Round,
    }
}

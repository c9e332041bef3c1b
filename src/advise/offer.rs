//! A way that passes, as the page offers it: what changes, what to type, and the book it makes.

use super::asked::Asked;
use super::change::Change;
use super::inverse::{Room, room};
use super::search::Tried;
use crate::check::Verdict;
use crate::data::{CHANGES, ChangeKind};
use crate::draft::Draft;
use crate::job::{self, HeadFoot, Spine};
use crate::plan::plan;
use crate::shop::Shop;
use crate::units::{Band, ClosedThickness, PAGES_PER_SHEET, Pages};
use crate::words::{Say, say};

/// One change in words: its kind, and what it changes to.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    /// The kind of change.
    pub kind: &'static ChangeKind,
    /// Which wording, where the kind has several; may be empty.
    pub case: String,
    /// What it changes to, as typed.
    pub to: String,
    /// And the other of two, where there are two.
    pub then: String,
}

/// A way that passes.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// One change or two.
    pub told: Vec<Told>,
    /// What to type: field path and text.
    pub edits: Vec<(String, String)>,
    /// Fits, or only just.
    pub verdict: Verdict,
    /// S of the book it makes; of two volumes, the thicker.
    pub spine: Band<ClosedThickness>,
    /// Further pages that book has room for.
    pub room: Room,
}

impl Told {
    /// A change told again by the name of its kind; nothing for an unknown name.
    #[must_use]
    pub fn again(kind: &str, case: &str, to: &str, then: &str) -> Option<Self> {
        let kind = CHANGES.iter().find(|row| row.id == kind)?;
        Some(Self { kind, case: case.to_owned(), to: to.to_owned(), then: then.to_owned() })
    }
    /// The change as words.
    #[must_use]
    pub fn say(&self) -> Say {
        let id = self.kind.id;
        let key = match self.case.as_str() {
            "" => format!("fix.{id}"),
            case => format!("fix.{id}.{case}"),
        };
        say(key).text("to", self.to.clone()).text("then", self.then.clone())
    }
}

impl Offer {
    /// May be told to a client: speaks only of pages, papers and size.
    #[must_use]
    pub fn for_client(&self) -> bool {
        self.told.iter().all(|told| told.kind.client)
    }

    /// What is typed when it is taken.
    #[must_use]
    pub fn applied(&self, draft: &Draft) -> Draft {
        applied(draft, &self.edits)
    }

    /// An offer from its changes and texts, read and planned like any other draft. Nothing comes back
    /// unless that book has at most this verdict.
    #[must_use]
    pub fn of(
        draft: &Draft,
        shop: &Shop,
        told: Vec<Told>,
        edits: Vec<(String, String)>,
        at_most: Verdict,
    ) -> Option<Self> {
        let job = job::read(&applied(draft, &edits), shop).job?;
        let planned = plan(&job, shop);
        let room = room(&job, shop, &planned);
        let (verdict, spine) = (planned.verdict, planned.results.stack.closed);
        (verdict <= at_most).then_some(Self { told, edits, verdict, spine, room })
    }
}

fn applied(draft: &Draft, edits: &[(String, String)]) -> Draft {
    let mut draft = draft.clone();
    for (path, text) in edits {
        draft.set(path, text);
    }
    draft
}

/// The offer that a tried way makes.
pub(super) fn offer(asked: &Asked, tried: &Tried) -> Option<Offer> {
    let changes: Vec<Change> = tried.changes().map(|weighed| weighed.change).collect();
    let told = tried
        .changes()
        .filter_map(|weighed| {
            let (case, to) = words(asked, weighed.change, &changes)?;
            let then = match weighed.change {
                Change::Volumes(_, thinner) => pages(thinner, separate(asked, &changes)),
                _ => String::new(),
            };
            let case = if !to.is_empty() && to == then { "even" } else { case };
            Some(Told { kind: weighed.kind, case: case.to_owned(), to, then })
        })
        .collect();
    Offer::of(asked.draft, asked.shop, told, edits(asked, &changes), tried.verdict)
}

/// Which wording, and what it changes to.
fn words(asked: &Asked, change: Change, changes: &[Change]) -> Option<(&'static str, String)> {
    let plain = |text: String| Some(("", text));
    match change {
        Change::Line(line) => plain(asked.shop.lines.get(line)?.name.to_string()),
        Change::Paper(index) => plain(asked.papers.get(index)?.text.clone()),
        Change::Cover(index) => plain(asked.covers.get(index)?.text.clone()),
        Change::SelfCover | Change::Pages(_) | Change::Volumes(..) => {
            plain(pages_text(asked, changes)?)
        }
        Change::Spine(spine) => Some((spine_text(spine), String::new())),
        Change::Size(index) => {
            let choice = asked.sizes.get(index)?;
            match choice.field {
                "size" => plain(choice.text.clone()),
                _ => Some((if choice.text == "top" { "top" } else { "left" }, String::new())),
            }
        }
        Change::FaceCut(None) => Some(("auto", String::new())),
        Change::FaceCut(Some(cut)) => plain(format!("{} mm", cut.get())),
        Change::HeadFoot(head_foot) => Some((head_foot_text(head_foot), String::new())),
        Change::CopiesUp(copies) => plain(copies.to_string()),
    }
}

const fn spine_text(spine: Spine) -> &'static str {
    match spine {
        Spine::Round => "round",
        Spine::Square => "square",
    }
}

const fn head_foot_text(head_foot: HeadFoot) -> &'static str {
    match head_foot {
        HeadFoot::OnLine => "auto",
        HeadFoot::Before => "before",
        HeadFoot::After => "after",
    }
}

/// Whether the book has a separate cover once these changes are made.
fn separate(asked: &Asked, changes: &[Change]) -> bool {
    asked.job.cover().is_some() && !changes.contains(&Change::SelfCover)
}

fn pages(inside: Pages, separate: bool) -> String {
    if separate {
        format!("{} + {PAGES_PER_SHEET}", inside.get())
    } else {
        inside.get().to_string()
    }
}

/// The page count once these changes are made.
fn pages_text(asked: &Asked, changes: &[Change]) -> Option<String> {
    let main = asked.job.main_section()?;
    let inside = changes.iter().find_map(|change| match change {
        Change::Pages(pages) | Change::Volumes(pages, _) => Some(*pages),
        _ => None,
    });
    let counted_in = asked.job.cover().is_some() && !separate(asked, changes);
    let on_top = Pages(if counted_in { PAGES_PER_SHEET } else { 0 });
    Some(pages(inside.unwrap_or(main.pages) + on_top, separate(asked, changes)))
}

/// What to type for these changes.
fn edits(asked: &Asked, changes: &[Change]) -> Vec<(String, String)> {
    let mut out: Vec<(String, String)> = Vec::new();
    let mut put = |path: &str, text: String| {
        if asked.draft.get(path) != text {
            out.retain(|(known, _)| known != path);
            out.push((path.to_owned(), text));
        }
    };
    for change in changes {
        match *change {
            Change::Line(line) => {
                let name = asked.shop.lines.get(line).map(|line| line.name.to_string());
                put("line", name.unwrap_or_default());
            }
            Change::Paper(index) => {
                let text = asked.papers.get(index).map(|choice| choice.text.clone());
                put("paper", text.unwrap_or_default());
            }
            Change::Cover(index) => {
                let text = asked.covers.get(index).map(|choice| choice.text.clone());
                put("cover", text.unwrap_or_default());
            }
            Change::SelfCover | Change::Pages(_) | Change::Volumes(..) => {
                if *change == Change::SelfCover {
                    put("cover", String::new());
                }
                put("pages", pages_text(asked, changes).unwrap_or_default());
            }
            Change::Spine(spine) => {
                put("spine", spine_text(spine).to_owned());
                put("dummy_push_out", String::new());
            }
            Change::Size(index) => {
                if let Some(choice) = asked.sizes.get(index) {
                    put(choice.field, choice.text.clone());
                }
            }
            Change::FaceCut(cut) => {
                put("face_cut", cut.map(|cut| format!("{} mm", cut.get())).unwrap_or_default());
            }
            Change::HeadFoot(head_foot) => put("head_foot", head_foot_text(head_foot).to_owned()),
            Change::CopiesUp(copies) => put("copies_up", copies.to_string()),
        }
        if change.is_other_thickness() {
            put("dummy_thickness", String::new());
            put("dummy_push_out", String::new());
        }
    }
    out
}

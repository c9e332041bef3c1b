//! A way that passes, as the page offers it: what changes, what to type, and the book it makes.

use super::asked::Asked;
use super::change::Change;
use super::inverse::{Room, room};
use super::search::Tried;
use super::typed::{edits, pages, separate, words};
use crate::check::Verdict;
use crate::data::{CHANGES, ChangeKind};
use crate::draft::Draft;
use crate::job;
use crate::plan::plan;
use crate::shop::Shop;
use crate::units::{Band, ClosedThickness};
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
        say(key).typed("to", self.to.clone()).typed("then", self.then.clone())
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

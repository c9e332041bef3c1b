//! Versions of the book that somebody has kept to compare.

use super::event::Patch;
use super::session::Session;
use crate::draft::Draft;
use crate::job;
use crate::plan::plan;
use crate::shop::Shop;
use crate::view::html::compare::{MOST_KEPT, Version};
use crate::words::say;

/// The region's name.
const REGION: &str = "compare";

/// Versions beside the one in the form.
#[derive(Debug, Default)]
pub(super) struct Versions {
    /// Those that stand on the page, planned in the present shop.
    pub(super) kept: Vec<Version>,
    /// Those of last time, until somebody has said to go on with them.
    pub(super) waiting: Vec<Draft>,
}

/// A version planned in a shop. A line that this shop has not is left to the shop's first.
fn version(draft: &Draft, shop: &Shop) -> Version {
    let mut read = draft.clone();
    if shop.line(read.get("line")).is_none() {
        read.set("line", "");
    }
    let job = job::read(&read, shop).job;
    let planned = job.map(|job| {
        let planned = plan(&job, shop);
        Box::new((job, planned))
    });
    Version { draft: draft.clone(), planned }
}

impl Versions {
    /// Those of last time.
    pub(super) fn of_last_time(waiting: Vec<Draft>) -> Self {
        Self { kept: Vec::new(), waiting }
    }

    /// Everything worth keeping for next time.
    pub(super) fn drafts(&self) -> Vec<Draft> {
        let kept = self.kept.iter().map(|version| &version.draft);
        kept.chain(&self.waiting).take(MOST_KEPT).cloned().collect()
    }

    /// Brings back those of last time, or forgets them.
    pub(super) fn restore(&mut self, yes: bool, shop: &Shop) {
        let waiting = core::mem::take(&mut self.waiting);
        let free = MOST_KEPT.saturating_sub(self.kept.len());
        let back = waiting.iter().take(free).filter(|_| yes);
        self.kept.extend(back.map(|draft| version(draft, shop)));
    }

    /// Another shop: everything is planned there.
    pub(super) fn plan_again(&mut self, shop: &Shop) {
        for kept in &mut self.kept {
            *kept = version(&kept.draft, shop);
        }
    }
}

impl Session {
    /// Keeps the version that the answer is about, unless it is kept already or there are enough.
    pub(super) fn keep_version(&mut self, out: &mut Vec<Patch>) {
        let Some((job, planned, _)) = &self.shown else { return };
        let kept = &mut self.versions.kept;
        let known =
            |version: &Version| version.planned.as_deref().is_some_and(|(other, _)| other == job);
        if kept.len() >= MOST_KEPT || kept.iter().any(known) {
            return;
        }
        let planned = Some(Box::new((job.clone(), planned.clone())));
        kept.push(Version { draft: self.advising.draft().clone(), planned });
        self.show_versions(out);
        let told = self.printer().text(&say("compare.done"));
        out.push(Patch::Announce { text: told });
    }

    /// Puts a kept version in the form; undo brings back what was there.
    pub(super) fn take_version(&mut self, place: &str, out: &mut Vec<Patch>) {
        let Some(place) = self.version_at(place) else { return };
        if let Some(draft) = self.versions.kept.get(place).map(|version| version.draft.clone()) {
            self.replace(draft, out);
            self.lead_to(&format!("summary-{REGION}"), out);
        }
    }

    /// Forgets a kept version.
    pub(super) fn drop_version(&mut self, place: &str, out: &mut Vec<Patch>) {
        let Some(place) = self.version_at(place) else { return };
        self.versions.kept.remove(place);
        self.show_versions(out);
        out.push(Patch::Focus { id: format!("summary-{REGION}") });
    }

    fn version_at(&self, place: &str) -> Option<usize> {
        place.parse().ok().filter(|place| *place < self.versions.kept.len())
    }

    /// The answer with its button, and the region, which opens with the first version.
    fn show_versions(&mut self, out: &mut Vec<Patch>) {
        let open = !self.versions.kept.is_empty();
        self.set_open(REGION, open);
        let value = open.then(String::new);
        out.push(Patch::Attr { id: format!("open-{REGION}"), name: "open", value });
        self.show(out);
    }
}

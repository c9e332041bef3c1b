//! What would make it fit, on the page: searched after the answer is painted, by a helper beside the
//! page where one can be had, else here with a smaller budget. Answers to older drafts are dropped.

use super::event::Patch;
use super::helper;
use super::session::Session;
use crate::advise::{Advice, Offer};
use crate::check::Verdict;
use crate::draft::{Draft, Kind, to_tree};
use crate::job;
use crate::view::html::{self, fixes::BACK};
use crate::view::{REGIONS, Reading};

/// Books planned at most when the page itself has to search between two keys.
const TRIED_HERE: usize = 600;
/// The region's name.
const REGION: &str = "fixes";

/// How the search for the shown plan stands.
#[derive(Debug, Default)]
pub(super) struct Advising {
    /// The draft that the shown plan was read from.
    draft: Draft,
    /// Counts the drafts that were shown, so that an answer finds its question.
    number: u32,
    /// The shown advice is the whole of it.
    searched: bool,
    /// The helper has been asked about this draft.
    asked: bool,
    /// There is a helper.
    helper: bool,
    /// The shop as the helper knows it.
    told_shop: Option<String>,
    /// Whether the last plan fitted; the region opens and folds when that changes.
    fitted: Option<bool>,
    /// For whom the region was last painted.
    painted: Option<Reading>,
}

impl Advising {
    /// The draft that the shown plan was read from.
    pub(super) const fn draft(&self) -> &Draft {
        &self.draft
    }
    /// Whether this draft has been advised on already.
    pub(super) fn knows(&self, draft: &Draft) -> bool {
        self.draft == *draft
    }
    /// A new plan stands on the page.
    pub(super) fn begin(&mut self, draft: &Draft) {
        self.draft.clone_from(draft);
        self.number += 1;
        (self.searched, self.asked) = (false, false);
    }
    /// Another shop, or no job at all: whatever was found no longer holds.
    pub(super) fn forget(&mut self) {
        self.begin(&Draft::default());
        self.told_shop = None;
    }
    /// The region still shows the last answer, and the next is on its way.
    pub(super) fn waits(&self, region: &str, reading: Reading) -> bool {
        region == REGION && self.asked && !self.searched && self.painted == Some(reading)
    }
    /// The region stands there no more.
    pub(super) fn forget_painted(&mut self) {
        self.painted = None;
    }
    /// The region has been painted.
    pub(super) fn painted(&mut self, region: &str, reading: Reading) {
        if region == REGION {
            self.painted = Some(reading);
        }
    }
}

/// Says that the ways on the page are the last book's, and new ones on their way.
fn busy(yes: bool) -> Patch {
    let value = yes.then(|| "true".to_owned());
    Patch::Attr { id: format!("body-{REGION}"), name: "aria-busy", value }
}

impl Session {
    /// Sees to it that the shown plan gets its advice.
    pub(super) fn seek(&mut self, out: &mut Vec<Patch>) {
        if self.shown.is_none() || self.advising.searched || self.advising.asked {
            return;
        }
        if !self.advising.helper {
            return self.seek_here();
        }
        let shop = self.shop_text();
        let known = self.advising.told_shop.as_ref() == Some(&shop);
        self.advising.told_shop = Some(shop.clone());
        self.advising.asked = true;
        out.push(busy(true));
        out.push(Patch::Search {
            number: self.advising.number.to_string(),
            job: (self.json.print)(&to_tree(&self.advising.draft, &job::SCHEMA)),
            shop: (!known).then_some(shop),
        });
    }

    /// Searches at once, as far as one can between two keys.
    pub(super) fn seek_here(&mut self) {
        if self.advising.searched {
            return;
        }
        if let Some((job, plan, advice)) = &mut self.shown {
            let draft = &self.advising.draft;
            let cost = advice.cost.take();
            *advice = Advice::searched(draft, job, &self.shop, plan, TRIED_HERE);
            advice.cost = cost;
            self.advising.searched = true;
        }
    }

    /// The helper has found something for the draft of this number.
    pub(super) fn found(&mut self, number: &str, text: &str, out: &mut Vec<Patch>) {
        if self.advising.searched || number != self.advising.number.to_string() {
            return;
        }
        match ((self.json.parse)(text), &mut self.shown) {
            (Some(tree), Some((job, plan, advice))) => {
                let cost = advice.cost.take();
                *advice = helper::advice(&tree, &self.advising.draft, job, &self.shop, plan);
                advice.cost = cost;
                self.advising.searched = true;
            }
            _ => self.seek_here(),
        }
        self.paint_fixes(out);
    }

    /// A helper is there, or was lost.
    pub(super) fn helper(&mut self, there: bool, out: &mut Vec<Patch>) {
        self.advising.helper = there;
        // For tests and whoever looks into the page: who searches.
        let value = Some(if there { "ready" } else { "none" }.to_owned());
        out.push(Patch::Attr { id: "page".to_owned(), name: "data-helper", value });
        if !there {
            self.advising.told_shop = None;
            if core::mem::take(&mut self.advising.asked) {
                self.seek_here();
                self.paint_fixes(out);
            }
        }
    }

    /// What stands over the ways: what the region is called, which depends on whether the book fits, and
    /// the way that led here, to be taken back where it was taken.
    pub(super) fn head_fixes(&mut self, out: &mut Vec<Patch>) {
        if let Some(scene) = self.scene() {
            let heading = self.printer().word(html::fixes::heading(&scene)).to_owned();
            self.set_text(&format!("heading-{REGION}"), &heading, out);
        }
        let seen = |offer: &&Offer| self.reading != Reading::Client || offer.for_client();
        let taken = self.history.taken.as_ref().filter(seen);
        let taken = taken.map(|offer| html::fixes::taken(offer, &self.printer()).into_string());
        self.set_html("taken", taken.unwrap_or_default(), out);
    }

    fn paint_fixes(&mut self, out: &mut Vec<Patch>) {
        out.push(busy(false));
        if let Some(region) = REGIONS.iter().find(|region| region.id == REGION) {
            self.paint_region(region, out);
        }
    }

    /// Opens the region when a book does not fit, folds it away when it does; between changes of the
    /// verdict it stays as the person left it.
    pub(super) fn fold_fixes(&mut self, out: &mut Vec<Patch>) {
        let Some((_, plan, _)) = &self.shown else { return };
        let fits = plan.verdict == Verdict::Fits;
        if self.advising.fitted.replace(fits) == Some(fits) {
            return;
        }
        self.set_open(REGION, !fits);
        let value = (!fits).then(String::new);
        out.push(Patch::Attr { id: format!("open-{REGION}"), name: "open", value });
    }

    /// Takes an offer: its texts go into the draft that the answer is about.
    pub(super) fn apply(&mut self, place: &str, out: &mut Vec<Patch>) {
        let Some(scene) = self.scene() else { return };
        let mut offers = html::fixes::offers(&scene).iter().enumerate();
        let Some((_, offer)) = offers.find(|(index, _)| index.to_string() == place) else { return };
        let mut draft = self.advising.draft.clone();
        for (path, text) in &offer.edits {
            let named = self.shop.stocks.iter().any(|stock| stock.name == *text);
            let kind = job::SCHEMA.field(path).map(|field| field.kind);
            let own = matches!(kind, Some(Kind::Paper | Kind::Size | Kind::Length(..))) && !named;
            draft.set(path, &if own { self.printer().typed(text) } else { text.clone() });
        }
        let taken = Some(offer.clone());
        self.remember("");
        self.history.taken = taken;
        self.draft = draft;
        self.refill(out);
        self.lead_to(BACK, out);
    }

    /// Takes the offer back that led here.
    pub(super) fn take_back(&mut self, out: &mut Vec<Patch>) {
        if self.history.taken.is_some() {
            self.step(true, false, out);
            self.lead_to(&format!("summary-{REGION}"), out);
        }
    }
}

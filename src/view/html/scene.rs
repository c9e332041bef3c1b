//! Everything a region may look at.

use super::compare::Version;
use crate::advise::Advice;
use crate::explain::{Case, figure};
use crate::job::Job;
use crate::plan::{Folio, Plan};
use crate::shop::Shop;
use crate::view::{Printer, Reading, Screen, Ticks, pictures, svg};
use crate::words::{Say, say};
use maud::{Markup, html};

/// One plan, in one shop, for one reader.
#[derive(Debug, Clone, Copy)]
pub struct Scene<'a> {
    /// The job.
    pub job: &'a Job,
    /// The shop.
    pub shop: &'a Shop,
    /// The plan.
    pub plan: &'a Plan,
    /// What can be said beyond the plan.
    pub advice: &'a Advice,
    /// Versions that were kept to compare.
    pub versions: &'a [Version],
    /// What has been ticked off.
    pub ticks: &'a Ticks,
    /// Language and numbers.
    pub printer: Printer<'a>,
    /// Who reads.
    pub reading: Reading,
    /// The screen it is read on.
    pub screen: Screen,
}

impl Scene<'_> {
    /// A page number or a side of the cover, as a word.
    #[must_use]
    pub fn folio(&self, folio: Folio) -> String {
        match folio {
            Folio::Page(page) => page.to_string(),
            Folio::Cover(side) => self.printer.word(&format!("cover.side.{side}")).to_owned(),
        }
    }
    /// What figures are asked of.
    #[must_use]
    pub fn case(&self) -> Case<'_> {
        let client = self.reading == Reading::Client;
        Case { advice: Some(self.advice), client, ..Case::new(self.job, self.shop, self.plan) }
    }
    /// One row of a list of figures: its name, the figure that explains itself, its band. Nothing
    /// where the book has no such figure.
    #[must_use]
    pub fn row(&self, id: &'static str) -> Markup {
        let value = figure(id).zip(self.case().ask(id, 0));
        html! {
            @if let Some((figure, slot)) = value {
                div class="row" {
                    dt { (self.printer.word(figure.name)) }
                    dd { (self.printer.slot_html(&slot)) }
                }
            }
        }
    }
    /// A drawing by its name with its title below it, and a note on how to read it; nothing where the
    /// book has none.
    #[must_use]
    pub fn drawn(&self, id: &str, note: Option<&'static str>) -> Markup {
        let drawing = pictures::drawn(self, id, self.screen.room);
        html! {
            @if let Some(drawing) = &drawing {
                figure {
                    (svg::svg(drawing, &self.printer))
                    figcaption {
                        (self.tell(&drawing.title))
                        @if let Some(key) = note { " " (self.word(key)) }
                        (pictures::saved_by(self, drawing))
                    }
                }
            }
        }
    }
    /// The kinds of paper of the job's sections.
    #[must_use]
    pub fn kinds(&self) -> Vec<&'static str> {
        self.job.sections.iter().map(|section| section.stock.kind.id).collect()
    }
    /// The kind of paper of the outermost sheet.
    #[must_use]
    pub fn outer_kind(&self) -> &'static str {
        self.kinds().first().copied().unwrap_or_default()
    }
    /// A figure that explains itself, of one row of a table where `at` is not 0.
    #[must_use]
    pub fn figure(&self, id: &'static str, at: usize) -> Markup {
        html! { @if let Some(slot) = self.case().ask(id, at) { (self.printer.slot_html(&slot)) } }
    }
    /// A sentence with figures in its slots: slot, figure, row of its table.
    #[must_use]
    pub fn fill(&self, sentence: Say, slots: &[(&'static str, &'static str, usize)]) -> Markup {
        self.tell(&self.case().fill(sentence, slots))
    }
    /// A sentence as HTML.
    #[must_use]
    pub fn tell(&self, sentence: &Say) -> Markup {
        self.printer.html(sentence)
    }
    /// A sentence without slots as HTML.
    #[must_use]
    pub fn word(&self, key: &str) -> Markup {
        self.tell(&say(key))
    }
}

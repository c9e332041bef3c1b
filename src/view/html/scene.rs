//! Everything a region may look at.

use super::compare::Version;
use crate::advise::Advice;
use crate::drawing::Drawing;
use crate::job::Job;
use crate::plan::{Folio, Plan};
use crate::shop::Shop;
use crate::units::{Band, Measure, Unit};
use crate::view::{Printer, Reading, Screen, svg};
use crate::words::{Say, say};
use maud::{Markup, html};

/// Figures that stand in the answer as well: no two elements may have the same id.
const ANSWERED: [&str; 4] = ["spine", "push_out", "face_cut", "mass"];

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
    /// One row of a list of figures: its name, the figure that explains itself, its band.
    #[must_use]
    pub fn row<T: Copy + Into<Measure>>(
        &self,
        label: &str,
        figure: Option<&'static str>,
        band: Band<T>,
    ) -> Markup {
        let unit = band.nominal.into().unit;
        let band = band.map(|value| value.into().value);
        self.row_of(label, figure, band, unit)
    }

    fn row_of(
        &self,
        label: &str,
        figure: Option<&'static str>,
        band: Band<f64>,
        unit: Unit,
    ) -> Markup {
        let printer = &self.printer;
        html! {
            div class="row" {
                dt { (printer.word(label)) }
                dd {
                    @match figure {
                        Some(id) if ANSWERED.contains(&id) => {
                            (printer.figure_at(&format!("row-{id}"), id, band.nominal, unit))
                        }
                        Some(id) => (printer.figure(id, band.nominal, unit)),
                        None => (printer.quantity(Measure::new(band.nominal, unit))),
                    }
                    @if let Some(range) = printer.numbers.range(band, unit) {
                        " " span class="band" { (range) }
                    }
                }
            }
        }
    }
    /// A drawing with its title below it, and a note on how to read it.
    #[must_use]
    pub fn drawn(&self, drawing: &Drawing, note: Option<&'static str>) -> Markup {
        html! {
            figure {
                (svg::svg(drawing, &self.printer))
                figcaption {
                    (self.tell(&drawing.title))
                    @if let Some(key) = note { " " (self.word(key)) }
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

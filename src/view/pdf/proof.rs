//! A reader's proof: the finished book page by page, each as wide as its leaf is after the cut.

use crate::intake::{Binding, Order, OrderPage, Sources, slots};
use crate::plan::Folio;
use crate::view::html::Scene;
use crate::words::say;

/// The order for a reader's proof. A cover that has not come is left out; blanks stay.
#[must_use]
pub fn proof(scene: &Scene, sources: &Sources, binding: Binding, language: &str) -> Order {
    let turned = match binding {
        Binding::Left => 0,
        Binding::Top => 1,
    };
    let come = |folio| match folio {
        Folio::Cover(_) => !sources.lacks_cover(),
        Folio::Page(_) => true,
    };
    let slots = slots(scene.job, scene.plan);
    let pages = slots.iter().filter(|slot| come(slot.folio)).map(|slot| OrderPage {
        size: (slot.size.width.get(), slot.size.height.get()),
        turned,
        placed: slot.placed(sources, binding, |_| slot.frame()).into_iter().collect(),
        marks: Vec::new(),
    });
    Order {
        title: scene
            .printer
            .text(&say("pdf.proof.title").text("title", scene.job.identity.title.clone())),
        language: language.to_owned(),
        layer: scene.printer.word("pdf.pairs.layer").to_owned(),
        pages: pages.collect(),
    }
}

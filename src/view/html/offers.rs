//! What is offered below a field while something is typed into it.

use crate::draft::{Field, Kind};
use maud::{Markup, html};

/// One suggestion: the text it would put into the field, and what that means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Offer {
    /// The text.
    pub typed: String,
    /// What it means, in figures.
    pub meaning: String,
}

/// Whether something can be suggested for a field.
#[must_use]
pub fn is_offered(field: &Field) -> bool {
    matches!(field.kind, Kind::Size | Kind::Paper) || field.id == "press_sheet"
}

/// The options of a field's list. The texts act as ready answers do.
#[must_use]
pub fn offers(path: &str, offers: &[Offer]) -> Markup {
    html! {
        @for (index, offer) in offers.iter().enumerate() {
            div role="option" id=(option_id(path, index)) aria-selected="false"
                data-act={ "choose:" (path) } data-value=(offer.typed) {
                span { (offer.typed) } " " small { (offer.meaning) }
            }
        }
    }
}

/// The id of one option.
#[must_use]
pub fn option_id(path: &str, index: usize) -> String {
    format!("offer-{}-{index}", path.replace('.', "-"))
}

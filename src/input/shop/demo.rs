//! The shop that the page starts with: the built-in line classes and invented papers.

use super::read::Reader;
use super::{Shop, dispatch, press};
use crate::data::{
    DEMO_RATES, DEMO_STOCKS, LINES, POST_STEPS, PRESS_SHEETS, SHOP_DEFAULTS, StageOvers,
};
use crate::draft::Draft;
use crate::entry::{self, LengthUnit};
use crate::paper::Stock;

/// The demo shop. Every figure in it is invented or common practice, and says so.
#[must_use]
pub fn demo() -> Shop {
    let stocks = DEMO_STOCKS
        .iter()
        .filter_map(|row| {
            let stock = entry::paper(row.paper, LengthUnit::Millimetre).value()?;
            Some(Stock { name: row.name.to_owned(), ..stock })
        })
        .collect();
    let press_sheets = PRESS_SHEETS.iter().map(|row| press::usual(row.name, row.size)).collect();
    let rates = Draft::of(&DEMO_RATES);
    let mut reader = Reader::new(&rates);
    Shop {
        name: "The Lantern Street Demonstration Bindery".to_owned(),
        note: "Invented throughout. Open your own shop file to plan on your own line.".to_owned(),
        lines: LINES.to_vec(),
        stocks,
        press_sheets,
        defaults: SHOP_DEFAULTS,
        overs: StageOvers::default(),
        carton: dispatch::carton(&mut reader),
        post: POST_STEPS.to_vec(),
        rates: dispatch::rates(&mut reader),
        round_fold: None,
        square_fold: None,
    }
}

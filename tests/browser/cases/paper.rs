//! The page on paper: few sheets, whoever prints it.

use super::card::PRINTERS;
use crate::case::Outcome;
use crate::cases;
use crate::look::{self, A4, LETTER};
use crate::page::Page;
use std::fs;

cases! { "paper":
    takes_few_sheets in PRINTERS;
}

async fn takes_few_sheets(page: &Page<'_>) -> Outcome {
    for (reading, most) in [("client", 1), ("design", 6), ("floor", 7)] {
        page.click(&format!("#reading-{reading}")).await?;
        page.settle().await?;
        for (name, sheet) in [("a4", A4), ("letter", LETTER)] {
            let name = format!("paper-{reading}-{name}");
            let pdf = look::print(page, &name, sheet).await?;
            let path = page.apart(format!("{name}.pdf"))?;
            fs::write(&path, pdf)?;
            let pages = look::pages(&path)?;
            assert!((1..=most).contains(&pages), "{name}: {pages} pages, at most {most}");
        }
    }
    Ok(())
}

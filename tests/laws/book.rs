//! The book itself: push-out, thickness, pages, bands, chips.

use crate::jobs::jobs;
use crate::support;
use crate::written::{bands, fields, written};
use crate::{EXACT, FAILURES};
use proptest::prelude::*;
use quirefit::job::Numbering;
use quirefit::plan::{Folio, Plan, plan, plan_into};
use quirefit::units::{Band, Mm, Sheets};
use quirefit::view::json::plan_out;
use quirefit::view::{Numbers, Printer};
use quirefit::words::{EN, Words};

proptest! {
    #![proptest_config(support::tried(256, FAILURES))]

    #[test]
    fn push_out_starts_at_nothing_and_grows_inward((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let leaves = &plan.results.leaves;
        let ends: [fn(Band<Mm>) -> Mm; 3] = [|band| band.low, |band| band.nominal, |band| band.high];
        for end in ends {
            prop_assert_eq!(end(leaves[0].push_out), Mm(0.0));
            for pair in leaves.windows(2) {
                let (outer, inner) = (end(pair[0].push_out).get(), end(pair[1].push_out).get());
                prop_assert!(inner >= outer - EXACT, "{} then {}", outer, inner);
            }
        }
        for pair in leaves.windows(2) {
            prop_assert!(pair[1].push_out.nominal > pair[0].push_out.nominal);
            prop_assert!(pair[1].length < pair[0].length);
            prop_assert!(pair[1].image_shift < pair[0].image_shift);
        }
    }

    #[test]
    fn more_pages_or_thicker_paper_never_make_it_thinner(
        (mut job, shop) in jobs(),
        more in 1u32..12,
        thicker in 1.0..1.5f64,
        at in 0usize..4,
    ) {
        // A thickness measured on a dummy is that of one book and of no other.
        job.dummy.closed = None;
        let before = plan(&job, &shop).results.stack.closed;
        let index = at.min(job.sections.len() - 1);
        let mut longer = job.clone();
        longer.sections[index].sheets = longer.sections[index].sheets + Sheets(more);
        let mut heavier = job;
        let leaf = heavier.sections[index].caliper.value;
        heavier.sections[index].caliper.value = leaf.times(thicker);
        for changed in [longer, heavier] {
            let after = plan(&changed, &shop).results.stack.closed;
            prop_assert!(after.nominal.0.get() >= before.nominal.0.get() - EXACT);
            prop_assert!(after.high.0.get() >= before.high.0.get() - EXACT);
            prop_assert!(after.low.0.get() >= before.low.0.get() - EXACT);
        }
    }

    #[test]
    fn every_page_stands_once_and_sides_add_up((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let leaves = &plan.results.leaves;
        prop_assert_eq!(leaves.len() as u32, job.sheets().get());
        let (mut pages, mut covers) = (Vec::new(), Vec::new());
        for leaf in leaves {
            for folio in leaf.folios.all() {
                match folio {
                    Folio::Page(page) => pages.push(page),
                    Folio::Cover(side) => covers.push(side),
                }
            }
        }
        pages.sort_unstable();
        covers.sort_unstable();
        let last = pages.len() as u32;
        prop_assert_eq!(&pages, &(1..=last).collect::<Vec<_>>());
        let apart = job.numbering == Numbering::SeparateCover;
        prop_assert_eq!(&covers, &if apart { vec![1, 2, 3, 4] } else { vec![] });
        let number = |folio| match folio {
            Folio::Page(page) => (page, last),
            Folio::Cover(side) => (side, 4),
        };
        for leaf in leaves {
            let [front_left, front_right, back_left, back_right] = leaf.folios.all().map(number);
            prop_assert_eq!(front_left.0 + front_right.0, front_left.1 + 1);
            prop_assert_eq!(back_left.0 + back_right.0, back_left.1 + 1);
            // Odd pages lie on the right of what faces out, as in every book that opens to the left.
            prop_assert_eq!(front_right.0 % 2, 1);
        }
    }

    #[test]
    fn every_band_is_in_order_and_every_number_is_one((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let text = written(&plan);
        for [low, nominal, high] in bands(&text) {
            prop_assert!(low <= nominal + EXACT && nominal <= high + EXACT, "{} {} {}", low, nominal, high);
        }
        for odd in ["NaN", "inf", "-inf"] {
            let at = text.find(odd).unwrap_or_default();
            prop_assert!(
                fields(&text, odd).count() == 0,
                "{} in …{}…", odd, &text[at.saturating_sub(160)..(at + 40).min(text.len())]
            );
        }
    }

    /// What is cut off and what stays weigh what was there: W × height × grammage of every sheet.
    #[test]
    fn nothing_is_lost_on_the_cut((job, shop) in jobs()) {
        let plan = plan(&job, &shop);
        let results = &plan.results;
        let Some(mass) = results.mass else {
            prop_assert!(job.sections.iter().any(|section| section.grammage.is_none()));
            return Ok(());
        };
        let sheet = results.trim.flat.width.get() * results.trim.flat.height.get() / 1e6;
        let untrimmed: f64 = job
            .sections
            .iter()
            .map(|section| {
                let grammage = section.grammage.unwrap().nominal.get();
                f64::from(section.sheets.get()) * sheet * grammage / f64::from(job.copies_up)
            })
            .sum();
        let after = mass.book.nominal.get() + mass.chips.get();
        prop_assert!((after - untrimmed).abs() <= EXACT * untrimmed.max(1.0), "{} of {}", after, untrimmed);
        prop_assert!(mass.chips.get() > 0.0 && mass.book.low.get() >= 0.0);
    }

    #[test]
    fn the_same_job_gives_the_same_bytes((job, shop) in jobs(), (other, elsewhere) in jobs()) {
        let first = plan(&job, &shop);
        let words = Words::load(&[EN]);
        let printer = Printer { words: &words, numbers: Numbers::METRIC };
        let bytes = |plan: &Plan| serde_json::to_string(&plan_out(&job, plan, &printer)).unwrap();
        // Planned anew, and over the plan of another job in another shop.
        let again = plan(&job, &shop);
        let mut over = plan(&other, &elsewhere);
        plan_into(&mut over, &job, &shop);
        prop_assert_eq!(bytes(&again), bytes(&first));
        prop_assert_eq!(bytes(&over), bytes(&first));
        prop_assert!(written(&over) == written(&first), "a plan remembers the one before");
    }
}

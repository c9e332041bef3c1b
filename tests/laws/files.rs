//! What is saved reads back equal: jobs and shops.

use crate::FAILURES;
use crate::jobs::{SHOPS, typed_jobs};
use crate::support::{self, JSON};
use proptest::prelude::*;
use quirefit::draft::{Draft, Kind, from_tree, to_tree};
use quirefit::job;
use quirefit::shop::{self, draft_of};

proptest! {
    #![proptest_config(support::tried(256, FAILURES))]

    /// Draft, tree, text, tree, draft: nothing typed is lost or changed.
    #[test]
    fn a_saved_job_reads_back_equal((draft, job, shop) in typed_jobs()) {
        let text = (JSON.print)(&to_tree(&draft, &job::SCHEMA));
        let back = from_tree(&(JSON.parse)(&text).unwrap(), &job::SCHEMA).unwrap();
        prop_assert_eq!(&back, &draft);
        prop_assert_eq!(job::read(&back, &shop).job, Some(job));
        prop_assert_eq!((JSON.print)(&to_tree(&back, &job::SCHEMA)), text);
    }
}

/// A shop's texts, some of them changed to others that are possible.
fn shop_drafts() -> impl Strategy<Value = Draft> {
    let change = (any::<prop::sample::Index>(), 0.0..1.0f64, any::<bool>());
    (0..SHOPS.len(), proptest::collection::vec(change, 0..20)).prop_map(|(shop, changes)| {
        let mut draft = draft_of(&SHOPS[shop]);
        let paths: Vec<String> = draft.all().map(|(path, _)| path.to_owned()).collect();
        for (index, share, inches) in changes {
            let path = &paths[index.index(paths.len())];
            let text = match shop::SCHEMA.field(path).unwrap().kind {
                Kind::Length(least, most) if inches => {
                    format!("{:.3} in", (least + share * (most - least)) / 25.4)
                }
                Kind::Length(least, most) => format!("{:.2}", least + share * (most - least)),
                Kind::Mass(least, most) if inches => {
                    format!("{:.2} oz", (least + share * (most - least)) / 28.35)
                }
                Kind::Mass(least, most) => format!("{:.1}", least + share * (most - least)),
                _ => continue,
            };
            draft.set(path, &text);
        }
        draft
    })
}

proptest! {
    #![proptest_config(support::tried(128, FAILURES))]

    #[test]
    fn a_written_shop_reads_back_equal(draft in shop_drafts()) {
        // Changed limits may stand the wrong way round: then there is no shop to write.
        let Ok(shop) = shop::read(&draft) else { return Ok(()) };
        let written = draft_of(&shop);
        let text = (JSON.print)(&to_tree(&written, &shop::SCHEMA));
        let back = from_tree(&(JSON.parse)(&text).unwrap(), &shop::SCHEMA).unwrap();
        prop_assert_eq!(&back, &written);
        let read = shop::read(&back);
        prop_assert!(read.is_ok(), "{:?}", read.err());
        support::same(&read.unwrap(), &shop, "the shop");
    }
}

//! Head-room is honest: so much more fits, and one sheet more does not.

use crate::jobs::jobs;
use crate::support;
use crate::{EXACT, FAILURES};
use proptest::prelude::*;
use quirefit::job::{Job, Role};
use quirefit::plan::{LimitCheck, LimitId, Plan, Trust, plan};
use quirefit::shop::{Calibration, Shop};
use quirefit::units::Sheets;

/// A limit of a plan.
fn limit(plan: &Plan, id: LimitId) -> Option<LimitCheck> {
    plan.results.limits.iter().find(|check| check.id == id).copied()
}

/// The job with so many sheets more in its main section; nothing when none would be left. A closed
/// thickness measured on a dummy grows by two leaves a sheet.
fn with_sheets(job: &Job, planned: &Plan, more: i64) -> Option<Job> {
    let mut job = job.clone();
    let index = job.sections.iter().position(|section| section.role == Role::Inside)?;
    let main = &mut job.sections[index];
    let sheets =
        u32::try_from(i64::from(main.sheets.get()) + more).ok().filter(|left| *left > 0)?;
    main.sheets = Sheets(sheets);
    main.pages = main.sheets.pages();
    let leaf = planned.results.stack.calipers[index].nominal;
    job.dummy.closed = job.dummy.closed.map(|closed| closed + leaf * (2 * more) as f64);
    Some(job)
}

/// The shop with the fold that this job's dummy shows, where it is believed.
fn with_measured_fold(job: &Job, shop: &Shop) -> Shop {
    let fold = plan(job, shop).results.fold;
    let mut shop = shop.clone();
    if let (Some((factor, error)), Trust::Good | Trust::Weak) = (fold.measured, fold.trust) {
        let kept = Some(Calibration { factor, error, note: String::new() });
        (shop.round_fold, shop.square_fold) = (kept.clone(), kept);
    }
    shop
}

proptest! {
    #![proptest_config(support::tried(256, FAILURES))]

    /// So many more sheets still fit the limit, and one more does not: planned anew each time.
    #[test]
    fn head_room_is_honest((mut job, shop) in jobs()) {
        // What a dummy tells of the fold is kept for the larger book; its push-out is not.
        let shop = with_measured_fold(&job, &shop);
        job.dummy.push_out = None;
        let plan_now = plan(&job, &shop);
        for check in &plan_now.results.limits {
            let (Some(room), Some(most)) = (check.room.sheets, check.range.most) else { continue };
            let high = |more: i64| {
                let plan = plan(&with_sheets(&job, &plan_now, more)?, &shop);
                // Where another press sheet runs uncut for the thicker book, its cut is another too.
                let other = plan.results.trim.straight && check.id == LimitId::InnermostChip;
                limit(&plan, check.id).filter(|_| !other).map(|check| check.value.high)
            };
            if let Some(high) = high(room) {
                prop_assert!(
                    high <= most + EXACT,
                    "{:?}: room for {} is told, but then {} stands against {}", check.id, room, high, most
                );
            }
            if let Some(high) = high(room + 1) {
                prop_assert!(
                    high > most - EXACT,
                    "{:?}: room for {} is told, but one more gives {} against {}", check.id, room, high, most
                );
            }
        }
    }
}

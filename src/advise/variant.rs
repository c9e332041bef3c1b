//! The same book with more sheets or other copies, planned anew in place.

use crate::job::{Job, Role};
use crate::plan::{Plan, plan_into};
use crate::shop::Shop;
use crate::units::{Copies, Mm, Sheets};

/// A copy of a job to change, and a plan that is used again.
#[derive(Debug)]
pub(super) struct Variant<'a> {
    asked: &'a Job,
    base: &'a Plan,
    shop: &'a Shop,
    job: Job,
    plan: Plan,
    /// The main section's place.
    main: Option<usize>,
}

impl<'a> Variant<'a> {
    pub(super) fn new(asked: &'a Job, shop: &'a Shop, base: &'a Plan) -> Self {
        Self::over(asked, shop, base, Plan::default())
    }

    /// The same over an earlier plan, whose lists are used again.
    pub(super) fn over(asked: &'a Job, shop: &'a Shop, base: &'a Plan, plan: Plan) -> Self {
        let main = asked.sections.iter().position(|section| section.role == Role::Inside);
        Self { asked, base, shop, job: asked.clone(), plan, main }
    }

    /// The plan, to be used again.
    pub(super) fn into_plan(self) -> Plan {
        self.plan
    }

    /// The book with so many further sheets in its main section; nothing where it has none.
    pub(super) fn larger(&mut self, more: Sheets) -> Option<&Plan> {
        self.job.copies = self.asked.copies;
        self.put(more)?;
        Some(self.planned())
    }

    /// The book as it is, in so many copies.
    pub(super) fn copies(&mut self, copies: Copies) -> &Plan {
        self.job.copies = Some(copies);
        // Without a main section there are no sheets to put back.
        let _ = self.put(Sheets(0));
        self.planned()
    }

    fn put(&mut self, more: Sheets) -> Option<()> {
        let main = self.main?;
        let base = self.asked.sections.get(main)?;
        let section = self.job.sections.get_mut(main)?;
        section.pages = base.pages + more.pages();
        section.sheets = base.sheets + more;
        // What a dummy says of this book's papers and fold holds for more of the same: the closed
        // thickness grows by two leaves a sheet, the push-out by the factor that was measured.
        let results = &self.base.results;
        let leaf = results.stack.calipers.get(main).map_or(Mm::ZERO, |caliper| caliper.nominal);
        let thicker = leaf * more.as_f64();
        let factor = results.fold.measured.map_or(0.0, |(factor, _)| factor);
        let (dummy, measured) = (&mut self.job.dummy, &self.asked.dummy);
        dummy.closed = measured.closed.map(|closed| closed + thicker * 2.0);
        dummy.push_out = measured.push_out.map(|out| out + thicker * factor);
        Some(())
    }

    fn planned(&mut self) -> &Plan {
        plan_into(&mut self.plan, &self.job, self.shop);
        &self.plan
    }
}

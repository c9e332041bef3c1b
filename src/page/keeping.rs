//! What is kept for next time, beside what another page of this same file has kept meanwhile.

use super::event::Patch;
use super::saved::Saved;
use super::session::Session;
use crate::draft::Draft;

/// What another page keeps: it goes into whatever this one keeps, or would be overwritten.
#[derive(Debug, Default)]
pub(super) struct Elsewhere {
    /// Jobs, the latest last.
    jobs: Vec<Draft>,
    shop: Option<Draft>,
    /// The job that this page gave away last: another has it from here.
    ours: Option<Draft>,
}

impl Elsewhere {
    /// Whether there is any.
    pub(super) const fn has_jobs(&self) -> bool {
        !self.jobs.is_empty()
    }
}

impl Session {
    /// What is worth keeping for next time.
    pub(super) fn worth_keeping(&self) -> Saved {
        Saved {
            language: self.chose_language.then_some(self.language),
            reading: self.reading,
            card: self.screen.card,
            job: (!self.untouched).then(|| self.draft.clone()),
            earlier: self.pending.iter().chain(&self.elsewhere.jobs).cloned().collect(),
            versions: self.versions.drafts(),
            ticks: self.ticks.clone(),
            shop: self.own_shop.as_ref().or(self.elsewhere.shop.as_ref()).cloned(),
            unread: self.unread.clone(),
        }
    }

    /// Keeps it once somebody has done something, and no oftener than it changes.
    pub(super) fn keep(&mut self, out: &mut Vec<Patch>) {
        let saved = self.worth_keeping();
        let kept = &self.kept;
        let shop = (&saved.shop, &saved.versions);
        let set = (saved.language, saved.reading, saved.card, shop);
        let before = (&kept.shop, &kept.versions);
        let idle = self.untouched && set == (kept.language, kept.reading, kept.card, before);
        if self.keeps && !idle && self.kept != saved {
            self.store(saved, out);
        }
    }

    fn store(&mut self, saved: Saved, out: &mut Vec<Patch>) {
        let text = saved.print(self.json);
        self.elsewhere.ours = core::mem::replace(&mut self.kept, saved).job;
        out.push(Patch::Store { text });
    }

    /// Another page has kept this since: nothing was stored over it. What it holds that this page has
    /// not is kept beside the job here.
    pub(super) fn kept_elsewhere(&mut self, text: &str, out: &mut Vec<Patch>) {
        let heard = Saved::read(text, self.json);
        if self.unread.is_none() && heard.unread.as_deref() == Some(text) {
            self.unread = heard.unread;
            self.show_file_note(out);
        }
        let here = self.versions.drafts();
        let mut known: Vec<&Draft> = self.pending.iter().chain(&here).collect();
        known.extend([Some(&self.draft), self.elsewhere.ours.as_ref()].into_iter().flatten());
        let mut jobs: Vec<Draft> = Vec::new();
        for job in heard.versions.into_iter().chain(heard.earlier).chain(heard.job) {
            if !known.contains(&&job) && !jobs.contains(&job) {
                jobs.push(job);
            }
        }
        self.elsewhere.jobs = jobs;
        self.elsewhere.shop = heard.shop;
        self.show_storage(out);
        if self.keeps {
            self.store(self.worth_keeping(), out);
        }
    }

    /// Says so where the browser keeps nothing for next time, and where two pages keep something.
    pub(super) fn show_storage(&mut self, out: &mut Vec<Patch>) {
        let key = match (self.keeps, self.elsewhere.has_jobs()) {
            (false, _) => "page.forgets",
            (true, true) => "page.elsewhere",
            (true, false) => "",
        };
        self.set_html("storage", self.printer().word(key).to_owned(), out);
    }
}

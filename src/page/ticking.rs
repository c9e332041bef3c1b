//! Boxes of the set-up list.

use super::event::Patch;
use super::session::Session;
use crate::view::REGIONS;
use crate::view::set_up::boxes;

impl Session {
    /// A box was ticked, or its tick taken away. Nothing of the job changes: there is no step to undo.
    pub(super) fn tick(&mut self, name: &str, ticked: bool, out: &mut Vec<Patch>) {
        let line = self.scene().and_then(|scene| {
            let found =
                boxes(&scene.case()).into_iter().flatten().find(|(known, _)| known == name)?;
            Some(found.1.text(&scene.printer))
        });
        if let Some(line) = line {
            self.ticks.set(line, ticked);
        }
        if let Some(region) = REGIONS.iter().find(|region| region.id == "set-up") {
            self.paint_region(region, out);
        }
        self.keep(out);
    }
}

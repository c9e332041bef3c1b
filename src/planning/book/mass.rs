//! What one book weighs, and what is cut off it.

use super::{Leaf, Trim};
use crate::job::Job;
use crate::units::{Band, Gram, Gsm, LEAVES_PER_SHEET, Mm};

/// Mass of one book without wire.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BookMass {
    /// Trimmed, with its true leaf lengths: Σ 2 L_k h g.
    pub book: Band<Gram>,
    /// The trade's figure from the nominal page: Σ 2 w h g.
    pub nominal_page: Gram,
    /// All that is cut off one copy at face, head and foot.
    pub chips: Gram,
}

/// The mass of a book; nothing when a paper's weight is not known.
#[must_use]
pub fn mass(job: &Job, leaves: &[Leaf], trim: &Trim) -> Option<BookMass> {
    let height = job.size.height;
    let copies = f64::from(job.copies_up);
    // One copy's share of the printed height.
    let printed = trim.flat.height / copies;
    let pair = f64::from(LEAVES_PER_SHEET);
    let mut total = BookMass::default();
    for leaf in leaves {
        let section = job.sections.get(leaf.section)?;
        let grammage: Band<Gsm> = section.grammage?;
        let of = |grammage: Gsm, width: Mm, height: Mm| grammage.mass_of(width * pair, height);
        total.book.nominal = total.book.nominal + of(grammage.nominal, leaf.length, height);
        total.nominal_page = total.nominal_page + of(grammage.nominal, job.size.width, height);
        let face = trim.face_cut + leaf.push_out.nominal;
        let strips = of(grammage.nominal, face, printed)
            + of(grammage.nominal, leaf.length, printed - height);
        total.chips = total.chips + strips;
    }
    // Sections of one lot err together, lots apart.
    let doubt_of = |lot: usize| -> f64 {
        let of_lot =
            |leaf: &&Leaf| job.sections.get(leaf.section).is_some_and(|section| section.lot == lot);
        let length: Mm = leaves.iter().filter(of_lot).map(|leaf| leaf.length).sum();
        let grammage = job.sections.get(lot).and_then(|section| section.grammage);
        let above = grammage.map_or(Gsm::ZERO, |grammage| grammage.above());
        above.mass_of(length * pair, height).get()
    };
    let squares: f64 = (0..job.sections.len()).map(|lot| doubt_of(lot).powi(2)).sum();
    total.book = Band::<Gram>::around(total.book.nominal, Gram(squares.sqrt()));
    Some(total)
}

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
    let mut doubt_by_lot = vec![Gram::ZERO; job.sections.len()];
    for leaf in leaves {
        let section = job.sections.get(leaf.section)?;
        let grammage: Band<Gsm> = section.grammage?;
        let of = |grammage: Gsm, width: Mm, height: Mm| grammage.mass_of(width * pair, height);
        total.book.nominal = total.book.nominal + of(grammage.nominal, leaf.length, height);
        if let Some(doubt) = doubt_by_lot.get_mut(section.lot) {
            *doubt = *doubt + of(grammage.above(), leaf.length, height);
        }
        total.nominal_page = total.nominal_page + of(grammage.nominal, job.size.width, height);
        let face = trim.face_cut + leaf.push_out.nominal;
        let strips = of(grammage.nominal, face, printed)
            + of(grammage.nominal, leaf.length, printed - height);
        total.chips = total.chips + strips;
    }
    let doubt = doubt_by_lot.iter().map(|doubt| doubt.get().powi(2)).sum::<f64>().sqrt();
    total.book = Band::<Gram>::around(total.book.nominal, Gram(doubt));
    Some(total)
}

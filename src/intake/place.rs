//! Where a page that came in goes: onto its leaf, upright, and from there onto a sheet.
//!
//! A leaf is seen flat with the fold upright, lengths from its lower left corner: fold or face cut, and
//! foot cut. Pictures that the shop moves have their spine edge s_k from the fold; others lie at the fold.

use super::{Binding, Frame, Matrix, Placed, Source, Sources};
use crate::job::{ImagesMovedBy, Job};
use crate::plan::{Folio, Leaf, Panel, Plan};
use crate::units::{Mm, Size, in_order};

/// One side of one leaf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slot {
    /// What is printed there.
    pub folio: Folio,
    /// Its folded sheet, counted from the outside.
    pub sheet: u32,
    /// From the fold to the face cut, and along the fold.
    pub size: Size,
    /// The fold is at its right.
    pub fold_right: bool,
    /// From the fold to the page's spine edge.
    pub shift: Mm,
}

impl Slot {
    /// The slot of a page.
    #[must_use]
    pub fn new(job: &Job, leaf: &Leaf, folio: Folio, fold_right: bool) -> Self {
        let shift = match job.images {
            ImagesMovedBy::Shop => leaf.image_shift,
            ImagesMovedBy::Designer | ImagesMovedBy::Nobody => Mm::ZERO,
        };
        let size = Size::new(leaf.length, job.size.height);
        Self { folio, sheet: leaf.place, size, fold_right, shift }
    }

    /// The whole leaf.
    #[must_use]
    pub const fn frame(&self) -> Frame {
        let (right, top) = (self.size.width.get(), self.size.height.get());
        Frame { left: 0.0, bottom: 0.0, right, top }
    }

    /// Lays a page on the leaf: how it goes there, and as far as it has picture there. Its spine edge is
    /// where it belongs; along the fold it lies in the middle, should it be longer or shorter.
    #[must_use]
    pub fn lay(&self, source: &Source, binding: Binding) -> (Matrix, Frame) {
        // One bound at the top is turned so that its spine stands upright.
        let turned = Matrix::turned(match binding {
            Binding::Left => 0,
            Binding::Top => 3,
        });
        let page = turned.frame(source.frame);
        let (width, shift) = (self.size.width.get(), self.shift.get());
        let x = if self.fold_right { width - shift - page.right } else { shift - page.left };
        let y = (self.size.height.get() - page.height()) / 2.0 - page.bottom;
        let matrix = turned.then(Matrix::shift(x, y));
        (matrix, matrix.frame(source.reach))
    }

    /// As far as the page may show: from the fold to `face` beyond whatever ends last, the leaf or the
    /// page, and beyond head and foot.
    #[must_use]
    pub fn window(&self, laid: Frame, face: Mm, (head, foot): (Mm, Mm)) -> Frame {
        let face = face.get();
        let whole = self.frame();
        let (left, right) = if self.fold_right {
            (whole.left.min(laid.left) - face, whole.right)
        } else {
            (whole.left, whole.right.max(laid.right) + face)
        };
        Frame { left, bottom: whole.bottom - foot.get(), right, top: whole.top + head.get() }
    }

    /// The page on the leaf, within a window; nothing for a blank.
    #[must_use]
    pub fn placed(
        &self,
        sources: &Sources,
        binding: Binding,
        window: impl Fn(Frame) -> Frame,
    ) -> Option<Placed> {
        let source = sources.get(self.folio)?;
        let (matrix, reach) = self.lay(source, binding);
        let clip = reach.within(window(matrix.frame(source.frame)))?;
        Some(Placed { part: source.part, page: source.page, matrix, clip })
    }
}

/// Every page of the finished book in the order in which it is read, the sides of a separate cover
/// around it.
#[must_use]
pub fn slots(job: &Job, plan: &Plan) -> Vec<Slot> {
    let slots: Vec<Slot> = plan
        .results
        .leaves
        .iter()
        .flat_map(|leaf| {
            let folios = leaf.folios;
            [
                (folios.front_left, true),
                (folios.front_right, false),
                (folios.back_left, true),
                (folios.back_right, false),
            ]
            .map(|(folio, fold_right)| Slot::new(job, leaf, folio, fold_right))
        })
        .collect();
    let place = |slot: &Slot| match slot.folio {
        Folio::Cover(side @ (1 | 2)) => (0, side),
        Folio::Page(page) => (1, page),
        Folio::Cover(side) => (2, side),
    };
    in_order(&slots, |one, other| place(one).cmp(&place(other)))
}

/// From a leaf to the sheet it is printed on: the panel as it lies there, the sheet this high.
#[must_use]
pub fn folded(panel: &Panel, high: Mm) -> Matrix {
    let (wide, tall) = (panel.size.width.get(), panel.size.height.get());
    let (left, bottom) = (panel.corner.width.get(), high.get() - panel.corner.height.get() - tall);
    if panel.head_down {
        Matrix::turned(2).then(Matrix::shift(left + wide, bottom + tall))
    } else {
        Matrix::shift(left, bottom)
    }
}

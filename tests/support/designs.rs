//! Facts of designs as the reader of PDF files would tell them, without any file.

use quirefit::intake::{Damage, Facts, Frame, PageFacts, Unreadable, pass};

/// A page of this finished size with so much bleed all round, and every box.
pub fn whole(width: f64, height: f64, bleed: f64) -> PageFacts {
    let around = |more: f64| {
        let low = 13.0 - more;
        Some(Frame {
            left: low,
            bottom: low,
            right: 13.0 + width + more,
            top: 13.0 + height + more,
        })
    };
    PageFacts {
        media: around(13.0),
        trim: around(0.0),
        bleed: around(bleed),
        ..PageFacts::default()
    }
}

/// A page of this size that says nothing else.
pub fn bare(width: f64, height: f64) -> PageFacts {
    let media = Some(Frame { left: 0.0, bottom: 0.0, right: width, top: height });
    PageFacts { media, ..PageFacts::default() }
}

/// A file of these pages.
pub fn file(pages: &[PageFacts]) -> Facts {
    Facts { bytes: 1_000_000, pages: pages.to_vec(), ..Facts::default() }
}

/// So many pages of A5 with 3 mm of bleed.
pub fn a5(pages: usize) -> Facts {
    file(&vec![whole(148.0, 210.0, 3.0); pages])
}

/// What the reader answers.
pub fn told(facts: &Facts) -> String {
    pass(&Ok::<_, Unreadable>(facts.clone()))
}

/// What the reader answers where it cannot.
pub fn refused(why: Unreadable) -> String {
    pass(&Err::<Facts, _>(why))
}

/// Files with something to say of each, for a book of A5 with 40 pages inside and a cover apart.
pub fn telling() -> Vec<Facts> {
    let with = |at: usize, page: PageFacts| {
        let mut facts = a5(40);
        facts.pages[at] = page;
        facts
    };
    let damage =
        [Damage::Before(24), Damage::NoEnd, Damage::Index, Damage::Pages { said: 41, found: 40 }];
    let broken = Facts { damage: damage.to_vec(), encrypted: true, ..a5(40) };
    let cropped = PageFacts { crop: bare(148.0, 210.0).media, ..bare(160.0, 230.0) };
    vec![
        broken,
        a5(1),
        a5(36),
        a5(39),
        a5(43),
        a5(44),
        a5(4),
        a5(3),
        with(7, whole(210.0, 148.0, 3.0)),
        with(7, whole(296.0, 210.0, 3.0)),
        with(7, whole(74.0, 210.0, 3.0)),
        with(7, whole(140.0, 216.0, 3.0)),
        with(7, whole(148.0, 210.0, 1.0)),
        with(7, whole(148.0, 210.0, 0.0)),
        with(7, bare(154.0, 216.0)),
        with(7, bare(148.0, 210.0)),
        with(7, cropped),
        with(7, PageFacts::default()),
        file(&[whole(296.0, 210.0, 3.0), whole(148.0, 210.0, 3.0)]),
    ]
}

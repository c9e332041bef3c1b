//! Reads the facts of a PDF: pages, boxes, turns, encryption, damage.

use super::signs::{beginning, signs};
use super::{Damage, Facts, Frame, PageFacts, Unreadable};
use crate::units::{MM_PER_INCH, POINTS_PER_INCH};
use hayro_syntax::object::dict::keys::{
    BLEED_BOX, CONTENTS, COUNT, CROP_BOX, MEDIA_BOX, PAGES, PARENT, TRIM_BOX, USER_UNIT,
};
use hayro_syntax::object::{Array, Dict, Object, Rect};
use hayro_syntax::page::{Page, Rotation};
use hayro_syntax::{DecryptionError, LoadPdfError, Pdf};
use std::borrow::Cow;

/// Steps of a millimetre that are told apart: files write hundredths of a point, some thousandths.
const FINEST: f64 = 10_000.0;
/// How deep a tree of pages is followed. A whole one of a million pages is some twenty deep.
const DEEP: usize = 64;

/// Reads a file. `password` is empty where none is known.
///
/// # Errors
/// Why nothing can be said about it. Whatever is wrong with a file that can be read is in its facts.
pub fn read(bytes: Vec<u8>, password: &str) -> Result<Facts, Unreadable> {
    open(bytes, password).map(|(_, facts)| facts)
}

/// Reads a file, and keeps it open.
pub(super) fn open(bytes: Vec<u8>, password: &str) -> Result<(Pdf, Facts), Unreadable> {
    if bytes.is_empty() {
        return Err(Unreadable::Empty);
    }
    let start = beginning(&bytes).ok_or(Unreadable::NoPdf)?;
    let mut damage = signs(&bytes, start);
    let size = bytes.len() as u64;
    let pdf = Pdf::new_with_password(bytes, password).map_err(why)?;
    let pages: Vec<PageFacts> = pdf.pages().iter().map(facts).collect();
    if pages.is_empty() {
        return Err(Unreadable::Broken);
    }
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    let found = count(pages.len());
    if let Some(said) = pages_said(&pdf).filter(|said| *said != found) {
        damage.push(Damage::Pages { said, found });
    }
    let facts = Facts { bytes: size, encrypted: is_encrypted(&pdf), damage, pages };
    Ok((pdf, facts))
}

/// Whether what streams hold had to be deciphered: then it is no longer the file's own bytes.
fn is_encrypted(pdf: &Pdf) -> bool {
    let mut streams = pdf.objects().into_iter().filter_map(Object::into_stream);
    streams.next().is_some_and(|stream| matches!(stream.raw_data(), Cow::Owned(_)))
}

fn why(error: LoadPdfError) -> Unreadable {
    match error {
        LoadPdfError::Decryption(DecryptionError::PasswordProtected) => Unreadable::Password,
        LoadPdfError::Decryption(_) => Unreadable::Cipher,
        LoadPdfError::Invalid => Unreadable::Broken,
    }
}

/// The number of pages that the file states.
fn pages_said(pdf: &Pdf) -> Option<u32> {
    let catalog: Dict<'_> = pdf.xref().get(pdf.xref().root_id())?;
    catalog.get::<Dict<'_>>(PAGES)?.get::<i32>(COUNT)?.try_into().ok()
}

fn facts(page: &Page<'_>) -> PageFacts {
    let own = page.raw();
    let (unit, turned) = (unit(own), quarters(page));
    let frame = |rect: Rect| {
        let mm =
            |points: f64| (points * unit / POINTS_PER_INCH * MM_PER_INCH * FINEST).round() / FINEST;
        let (left, bottom, right, top) = (mm(rect.x0), mm(rect.y0), mm(rect.x1), mm(rect.y1));
        let frame = Frame { left, bottom, right, top };
        let sound = frame.width() > 0.0 && frame.height() > 0.0 && frame.width().is_finite();
        (sound && frame.height().is_finite()).then(|| frame.turned(turned))
    };
    // The parser takes A4 where nothing is said: the file itself is asked.
    let inherited = |key: &[u8]| inherited(own, key).and_then(frame);
    let stated = |key: &[u8]| own.get::<Rect>(key).and_then(frame);
    PageFacts {
        media: inherited(MEDIA_BOX),
        crop: inherited(CROP_BOX),
        trim: stated(TRIM_BOX),
        bleed: stated(BLEED_BOX),
        turned,
        empty: is_empty(own, page),
    }
}

/// How many points the page's own unit has.
pub(super) fn unit(page: &Dict<'_>) -> f64 {
    let unit = page.get::<f32>(USER_UNIT).map_or(1.0, f64::from);
    if unit > 0.0 && unit.is_finite() { unit } else { 1.0 }
}

/// Quarter turns clockwise by which a page is shown.
pub(super) fn quarters(page: &Page<'_>) -> u8 {
    match page.rotation() {
        Rotation::None => 0,
        Rotation::Horizontal => 1,
        Rotation::Flipped => 2,
        Rotation::FlippedHorizontal => 3,
    }
}

/// A box of a page, or of what it lies in (ISO 32000-1, 7.7.3.4).
fn inherited(page: &Dict<'_>, key: &[u8]) -> Option<Rect> {
    let mut here = page.clone();
    for _ in 0..DEEP {
        if let Some(rect) = here.get::<Rect>(key) {
            return Some(rect);
        }
        here = here.get::<Dict<'_>>(PARENT)?;
    }
    None
}

/// Whether nothing is drawn. Only short contents are unpacked: a long one draws something.
fn is_empty(own: &Dict<'_>, page: &Page<'_>) -> bool {
    const SHORT: usize = 256;
    let packed = match own.get::<Object<'_>>(CONTENTS) {
        Some(Object::Stream(stream)) => stream.raw_data().len(),
        Some(Object::Array(parts)) => length(&parts),
        _ => return true,
    };
    let blank = |text: &[u8]| text.trim_ascii().is_empty();
    packed <= SHORT && page.page_stream().is_some_and(blank)
}

fn length(parts: &Array<'_>) -> usize {
    let streams = parts.iter::<Object<'_>>().filter_map(Object::into_stream);
    streams.map(|stream| stream.raw_data().len()).fold(0, usize::saturating_add)
}

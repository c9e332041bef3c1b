//! Makes a PDF of pages that came in: each becomes a form, drawn wherever the order wants it. What a page
//! is made of stays as it is: fonts, colours, pictures, layers. Notes and fields on a page are none of it.

use super::copy::{Copier, Numbered, held, packed};
use super::file::{quarters, unit};
use super::{Matrix, Order, OrderPage, Placed, layers};
use crate::units::POINTS_PER_MM;
use hayro_syntax::Pdf;
use hayro_syntax::object::dict::keys::{
    COLORSPACE, CONTENTS, DECODE_PARMS, EXT_G_STATE, FILTER, FONT, GROUP, I, OUTPUT_INTENTS,
    PATTERN, PROPERTIES, SHADING, XOBJECT,
};
use hayro_syntax::object::{Array, Dict, Object, Stream};
use hayro_syntax::page::Page;
use pdf_writer::{Content, Finish, Name, Rect, Ref, TextStr};
use std::borrow::Cow;

/// The name of the layer of marks, and of the font they have.
const LAYER: &[u8] = b"Marks";
const LETTERS: &[u8] = b"F";
/// Numbers of what every file has.
const CATALOG: i32 = 1;
/// See [`CATALOG`].
const TREE: i32 = 2;
/// See [`CATALOG`].
const INFO: i32 = 3;
/// See [`CATALOG`].
const FONT_ID: i32 = 4;
/// See [`CATALOG`].
const LAYER_ID: i32 = 5;

/// A document that is being made.
pub struct Writer {
    order: Order,
    copier: Copier,
    out: pdf_writer::Pdf,
    /// The form of each page that was used, by file.
    forms: Numbered,
    made: Vec<Ref>,
}

impl Writer {
    /// Begins with an order.
    pub fn new(order: Order) -> Self {
        let out = pdf_writer::Pdf::with_settings(pdf_writer::Settings { pretty: false });
        let copier = Copier::new(LAYER_ID + 1);
        Self { order, copier, out, forms: Numbered::default(), made: Vec::new() }
    }

    /// Makes the next page. Gives back how many are made of how many.
    pub fn go_on(&mut self, files: &[Option<Pdf>]) -> (usize, usize) {
        let all = self.order.pages.len();
        if let Some(page) = self.order.pages.get(self.made.len()).cloned() {
            self.page(&page, files);
        }
        (self.made.len(), all)
    }

    fn page(&mut self, page: &OrderPage, files: &[Option<Pdf>]) {
        let mut content = Content::new();
        let mut used: Vec<(String, Ref)> = Vec::new();
        for placed in &page.placed {
            let file = placed.part as usize;
            let Some(source) = files
                .get(file)
                .and_then(Option::as_ref)
                .and_then(|pdf| pdf.pages().get(placed.page as usize))
            else {
                continue;
            };
            let form = self.form(file, placed.page, source);
            let name = format!("P{file}-{}", placed.page);
            draw(&mut content, placed, source, &name);
            if !used.iter().any(|(known, _)| *known == name) {
                used.push((name, form));
            }
        }
        let mut drawn = content.finish().into_vec();
        if !page.marks.is_empty() {
            drawn.extend_from_slice(b"\n/OC /Marks BDC\n");
            drawn.extend_from_slice(&page.marks);
            drawn.extend_from_slice(b"\nEMC");
        }
        let (id, stream) = (self.copier.fresh(), self.copier.fresh());
        let mut written = self.out.page(id);
        let (wide, high) = page.size;
        written
            .parent(Ref::new(TREE))
            .media_box(Rect::new(0.0, 0.0, points(wide), points(high)))
            .contents(stream);
        if page.turned > 0 {
            written.rotate(i32::from(page.turned) * 90);
        }
        let mut resources = written.resources();
        let mut forms = resources.x_objects();
        for (name, form) in &used {
            forms.pair(Name(name.as_bytes()), *form);
        }
        forms.finish();
        if !page.marks.is_empty() {
            resources.fonts().pair(Name(LETTERS), Ref::new(FONT_ID));
            resources.insert(Name(b"Properties")).dict().pair(Name(LAYER), Ref::new(LAYER_ID));
        }
        resources.finish();
        written.finish();
        self.out.stream(stream, &drawn);
        self.copier.follow(files, &mut self.out);
        self.made.push(id);
    }

    /// The form of a page: its whole content, within its whole area.
    fn form(&mut self, file: usize, number: u32, page: &Page<'_>) -> Ref {
        let number = number as usize;
        if let Some(form) = self.forms.get(file, number) {
            return form;
        }
        let id = self.copier.fresh();
        self.forms.set(file, number, id);
        let own = page.raw();
        // One stream stays packed as it is; several have to be put together.
        let one = match own.get::<Object<'_>>(CONTENTS) {
            Some(Object::Stream(stream)) => Some(stream),
            Some(Object::Array(parts)) => only(&parts),
            _ => None,
        }
        .filter(packed);
        let data: Cow<'_, [u8]> = match &one {
            Some(stream) => stream.raw_data(),
            None => page.page_stream().unwrap_or_default().into(),
        };
        let area = page.media_box();
        let mut form = self.out.form_xobject(id, &data);
        let [left, bottom, right, top] = [area.x0, area.y0, area.x1, area.y1].map(held);
        form.bbox(Rect::new(left, bottom, right, top));
        if let Some(stream) = &one {
            for key in [FILTER, DECODE_PARMS] {
                self.copier.entry(file, stream.dict(), key, &mut form);
            }
        }
        // A page's group stands apart whatever it says (ISO 32000-1, 11.4.7); a form's does if it says so.
        if let Some(group) = own.get::<Dict<'_>>(GROUP) {
            let mut written = form.insert(Name(GROUP)).dict();
            self.copier.entries(file, &group, &mut written, &[I], 0);
            written.pair(Name(I), true);
        }
        let resources = page.resources();
        let mut written = form.resources();
        for (key, dict) in [
            (EXT_G_STATE, &resources.ext_g_states),
            (FONT, &resources.fonts),
            (COLORSPACE, &resources.color_spaces),
            (PATTERN, &resources.patterns),
            (PROPERTIES, &resources.properties),
            (SHADING, &resources.shadings),
            (XOBJECT, &resources.x_objects),
        ] {
            if !dict.is_empty() {
                self.copier.entries(file, dict, &mut written.insert(Name(key)).dict(), &[], 0);
            }
        }
        written.finish();
        form.finish();
        id
    }

    /// The file. Layers that a file hides stay hidden; what its colours are meant for is said again.
    pub fn finish(mut self, files: &[Option<Pdf>]) -> Vec<u8> {
        let [catalog, tree, info, font, layer] =
            [CATALOG, TREE, INFO, FONT_ID, LAYER_ID].map(Ref::new);
        let catalogs: Vec<(usize, Dict<'_>)> = files
            .iter()
            .enumerate()
            .filter_map(|(at, pdf)| {
                let pdf = pdf.as_ref()?;
                Some((at, pdf.xref().get::<Dict<'_>>(pdf.xref().root_id())?))
            })
            .collect();
        let mut written = self.out.catalog(catalog);
        written.pages(tree).lang(TextStr(&self.order.language));
        written.viewer_preferences().display_doc_title(true);
        let meant = catalogs.iter().find(|(_, whole)| whole.contains_key(OUTPUT_INTENTS));
        if let Some((at, whole)) = meant {
            self.copier.entry(*at, whole, OUTPUT_INTENTS, &mut written);
        }
        layers::write(layer, &catalogs, &mut self.copier, &mut written);
        written.finish();
        self.out.document_info(info).title(TextStr(&self.order.title)).creator(TextStr("Quirefit"));
        self.out
            .type1_font(font)
            .base_font(Name(b"Helvetica"))
            .encoding_predefined(Name(b"WinAnsiEncoding"));
        let mut marks = self.out.indirect(layer).dict();
        marks.pair(Name(b"Type"), Name(b"OCG")).pair(Name(b"Name"), TextStr(&self.order.layer));
        marks.finish();
        let count = self.made.len() as i32;
        self.out.pages(tree).kids(self.made.iter().copied()).count(count);
        self.copier.follow(files, &mut self.out);
        self.out.finish()
    }
}

/// Draws a page's form where it belongs.
fn draw(content: &mut Content, placed: &Placed, page: &Page<'_>, name: &str) {
    let clip = placed.clip;
    let seen = Matrix::scale(unit(page.raw()) / POINTS_PER_MM).then(Matrix::turned(quarters(page)));
    let there = seen.then(placed.matrix).then(Matrix::scale(POINTS_PER_MM));
    content.save_state();
    content.rect(
        points(clip.left),
        points(clip.bottom),
        points(clip.width()),
        points(clip.height()),
    );
    content.clip_nonzero().end_path();
    content.transform(there.0.map(held));
    content.x_object(Name(name.as_bytes()));
    content.restore_state();
}

/// Millimetres in points.
const fn points(length: f64) -> f32 {
    held(length * POINTS_PER_MM)
}

/// The stream of a list that holds no other.
fn only<'a>(parts: &Array<'a>) -> Option<Stream<'a>> {
    let mut streams = parts.iter::<Object<'a>>().filter_map(Object::into_stream);
    streams.next().filter(|_| streams.next().is_none())
}

//! A document as a file (ISO 32000-1): objects by number, first the whole, then fonts, layers, pages and
//! the parts in reading order.

use super::document::{Box4, Document, LAYER, Page, clean, points};
use pdf_writer::{Chunk, Finish, Name, Pdf, Rect, Ref, Settings, TextStr};

impl Document {
    /// The file.
    pub fn finish(mut self, title: &str, language: &str) -> Vec<u8> {
        self.end_page();
        let title = clean(title);
        let count = |number: usize| number as i32;
        let [catalog, tree, info, font, root] = [1, 2, 3, 4, 5].map(Ref::new);
        let layers: Vec<Ref> = (6..).map(Ref::new).take(self.layers.len()).collect();
        let first = 6 + count(layers.len());
        let pages: Vec<Ref> = (first..).step_by(2).map(Ref::new).take(self.pages.len()).collect();
        let first_part = first + 2 * count(pages.len());

        let mut pdf = Pdf::with_settings(Settings { pretty: false });
        let mut whole = pdf.catalog(catalog);
        whole.pages(tree).lang(TextStr(language)).pair(Name(b"StructTreeRoot"), root);
        whole.mark_info().marked(true);
        whole.viewer_preferences().display_doc_title(true);
        if !layers.is_empty() {
            let mut optional = whole.insert(Name(b"OCProperties")).dict();
            optional.insert(Name(b"OCGs")).array().items(layers.iter().copied());
            let mut shown = optional.insert(Name(b"D")).dict();
            shown.insert(Name(b"Order")).array().items(layers.iter().copied());
        }
        whole.finish();
        pdf.document_info(info).title(TextStr(&title)).creator(TextStr("Quirefit"));
        pdf.type1_font(font)
            .base_font(Name(b"Helvetica"))
            .encoding_predefined(Name(b"WinAnsiEncoding"));
        for (id, name) in layers.iter().zip(&self.layers) {
            let mut layer = pdf.indirect(*id).dict();
            layer.pair(Name(b"Type"), Name(b"OCG")).pair(Name(b"Name"), TextStr(&clean(name)));
        }
        pdf.pages(tree).kids(pages.iter().copied()).count(count(pages.len()));
        for (at, (id, page)) in pages.iter().zip(&self.pages).enumerate() {
            page.write(&mut pdf, *id, (tree, font, &layers), count(at));
        }
        self.tags.write(&mut pdf, root, first_part, &pages);
        pdf.finish()
    }
}

impl Page {
    fn write(&self, chunk: &mut Chunk, id: Ref, parts: (Ref, Ref, &[Ref]), at: i32) {
        let (tree, font, layers) = parts;
        let (wide, high) = self.size;
        let rect = |[left, top, right, bottom]: Box4| {
            Rect::new(points(left), points(high - bottom), points(right), points(high - top))
        };
        let content = Ref::new(id.get() + 1);
        let mut page = chunk.page(id);
        page.parent(tree).media_box(rect([0.0, 0.0, wide, high])).struct_parents(at);
        for (name, area) in [("TrimBox", self.trim), ("BleedBox", self.bleed)] {
            if let Some(area) = area {
                page.pair(Name(name.as_bytes()), rect(area));
            }
        }
        page.contents(content);
        let mut resources = page.resources();
        resources.fonts().pair(Name(b"F"), font);
        let mut named = resources.insert(Name(b"Properties")).dict();
        for (at, layer) in layers.iter().enumerate() {
            named.pair(Name(format!("{LAYER}{at}").as_bytes()), *layer);
        }
        named.finish();
        resources.finish();
        page.finish();
        chunk.stream(content, &self.drawn);
    }
}

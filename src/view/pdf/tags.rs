//! What a document says to somebody who cannot see it: its parts in reading order (ISO 32000-1, 14.7).

use pdf_writer::types::{StructRole, TableHeaderScope};
use pdf_writer::writers::StructTreeRoot;
use pdf_writer::{Chunk, Finish, Name, Ref, TextStr};

/// A part of the document.
#[derive(Debug)]
struct Part {
    role: StructRole,
    /// The part it stands in; the first stands in none.
    parent: Option<usize>,
    /// What a figure shows.
    alt: Option<String>,
    kids: Vec<Kid>,
}

#[derive(Debug)]
enum Kid {
    Part(usize),
    /// What is drawn under a number on a page.
    Drawn {
        page: usize,
        number: i32,
    },
}

/// All parts, and what each page draws for which.
#[derive(Debug)]
pub(super) struct Tags {
    parts: Vec<Part>,
    /// The part that is being filled.
    open: usize,
    /// For every page, the part behind each number.
    drawn: Vec<Vec<usize>>,
}

impl Tags {
    pub fn new() -> Self {
        let whole = Part { role: StructRole::Document, parent: None, alt: None, kids: Vec::new() };
        Self { parts: vec![whole], open: 0, drawn: Vec::new() }
    }

    pub fn page(&mut self) {
        self.drawn.push(Vec::new());
    }

    /// Whatever is drawn from now on belongs to a new part of the one that is open.
    pub fn open(&mut self, role: StructRole, alt: Option<String>) {
        let (parent, new) = (self.open, self.parts.len());
        self.parts.push(Part { role, parent: Some(parent), alt, kids: Vec::new() });
        self.put(Kid::Part(new));
        self.open = new;
    }

    pub fn close(&mut self) {
        self.open = self.parts.get(self.open).and_then(|part| part.parent).unwrap_or_default();
    }

    /// The role of the open part, and the number under which it is drawn on the last page.
    pub fn draw(&mut self) -> (StructRole, i32) {
        let page = self.drawn.len().saturating_sub(1);
        let open = self.open;
        let number = self.drawn.last_mut().map_or(0, |drawn| {
            drawn.push(open);
            drawn.len() as i32 - 1
        });
        self.put(Kid::Drawn { page, number });
        (self.parts.get(open).map_or(StructRole::Document, |part| part.role), number)
    }

    fn put(&mut self, kid: Kid) {
        if let Some(part) = self.parts.get_mut(self.open) {
            part.kids.push(kid);
        }
    }

    /// Writes every part below the root. `first` is where their numbers begin.
    pub fn write(&self, chunk: &mut Chunk, root: Ref, first: i32, pages: &[Ref]) {
        let of = |part: usize| Ref::new(first + part as i32);
        let mut tree = chunk.indirect(root).start::<StructTreeRoot>();
        tree.child(of(0));
        tree.parent_tree_next_key(self.drawn.len() as i32);
        let mut parents = tree.parent_tree();
        let mut numbers = parents.nums();
        let lists = first + self.parts.len() as i32;
        for page in 0..self.drawn.len() as i32 {
            numbers.insert(page, Ref::new(lists + page));
        }
        numbers.finish();
        parents.finish();
        tree.finish();
        for (at, drawn) in (0..).zip(&self.drawn) {
            let list = chunk.indirect(Ref::new(lists + at)).array();
            list.typed::<Ref>().items(drawn.iter().map(|part| of(*part)));
        }
        for (at, part) in self.parts.iter().enumerate() {
            let mut element = chunk.struct_element(of(at));
            element.kind(part.role).parent(part.parent.map_or(root, of));
            if let Some(alt) = &part.alt {
                element.alt(TextStr(alt));
            }
            if part.role == StructRole::TH {
                element.attributes().push().table().scope(TableHeaderScope::Column);
            }
            let mut kids = element.children();
            for kid in &part.kids {
                match kid {
                    Kid::Part(part) => {
                        kids.struct_element(of(*part));
                    }
                    Kid::Drawn { page, number } => {
                        let mut marked = kids.marked_content_ref();
                        marked.marked_content_id(*number);
                        if let Some(page) = pages.get(*page) {
                            marked.page(*page);
                        }
                    }
                }
            }
        }
    }
}

/// A role as it stands in what is drawn.
pub(super) fn name(role: StructRole) -> Name<'static> {
    role.to_name()
}

//! Objects of files, copied into another: whatever is referred to follows, once, under a number of its
//! own. What is packed stays packed as it is, what was encrypted is not any more.

use hayro_syntax::object::dict::keys::{
    DECODE_PARMS, DP, FILTER, LENGTH, PAGE, PAGES, PARENT, PIECE_INFO, STRUCT_PARENT,
    STRUCT_PARENTS, TYPE,
};
use hayro_syntax::object::{Array, Dict, MaybeRef, ObjRef, Object, Stream};
use hayro_syntax::{Filter, Pdf};
use pdf_writer::{Chunk, Name, Null, Obj, Ref, Str};

/// What leads out of a page, into what is not copied.
const LEFT: [&[u8]; 4] = [PARENT, PIECE_INFO, STRUCT_PARENT, STRUCT_PARENTS];
/// How a stream is packed.
const PACKED: [&[u8]; 4] = [LENGTH, FILTER, DECODE_PARMS, DP];
/// How deep objects stand in each other at most; what is deeper is left out.
const DEEP: u8 = 60;

/// The highest number that an object can have (ISO 32000-1, annex C).
const MOST: usize = 8_388_607;

/// What things of each file have become, by their numbers in it.
#[derive(Default)]
pub struct Numbered([Vec<Option<Ref>>; 2]);

impl Numbered {
    /// What one has become.
    pub fn get(&self, file: usize, number: usize) -> Option<Ref> {
        self.0.get(file)?.get(number).copied().flatten()
    }

    /// What one becomes. A number that no file can have is not remembered.
    pub fn set(&mut self, file: usize, number: usize, id: Ref) {
        if let Some(known) = self.0.get_mut(file).filter(|_| number <= MOST) {
            known.resize(known.len().max(number + 1), None);
            if let Some(place) = known.get_mut(number) {
                *place = Some(id);
            }
        }
    }
}

/// What has been copied, and what is still to be.
pub struct Copier {
    next: i32,
    /// What each object of each file has become, by its number: of those with one number only one lives.
    known: Numbered,
    waiting: Vec<(usize, ObjRef, Ref)>,
}

impl Copier {
    /// The first number that it gives.
    pub fn new(first: i32) -> Self {
        Self { next: first, known: Numbered::default(), waiting: Vec::new() }
    }

    /// A number that nothing has yet.
    pub const fn fresh(&mut self) -> Ref {
        let number = Ref::new(self.next);
        self.next += 1;
        number
    }

    /// The number of a file's object, which will be copied.
    pub fn refer(&mut self, file: usize, to: ObjRef) -> Ref {
        let number = to.obj_number as usize;
        if let Some(known) = self.known.get(file, number) {
            return known;
        }
        let fresh = self.fresh();
        self.known.set(file, number, fresh);
        self.waiting.push((file, to, fresh));
        fresh
    }

    /// Copies everything that has been referred to.
    pub fn follow(&mut self, files: &[Option<Pdf>], out: &mut Chunk) {
        while let Some((file, from, to)) = self.waiting.pop() {
            let pdf = files.get(file).and_then(Option::as_ref);
            let object = pdf.and_then(|pdf| pdf.xref().get::<Object<'_>>(from.into()));
            match object {
                Some(Object::Stream(stream)) => self.stream(file, &stream, to, out),
                Some(Object::Dict(dict)) if is_page(&dict) => out.indirect(to).primitive(Null),
                Some(object) => self.object(file, &object, out.indirect(to), 0),
                None => out.indirect(to).primitive(Null),
            }
        }
    }

    fn stream(&mut self, file: usize, stream: &Stream<'_>, to: Ref, out: &mut Chunk) {
        let packed = packed(stream);
        let data =
            if packed { stream.raw_data() } else { stream.decoded_data().unwrap_or_default() };
        let mut written = out.stream(to, &data);
        let dict = stream.dict();
        let left = if packed { &PACKED[..1] } else { &PACKED[..] };
        self.entries(file, dict, &mut written, left, 0);
    }

    /// Every entry of a dictionary but these, and but one whose name is empty: what is written after such a
    /// name would be taken for it, and nobody refers to it.
    pub fn entries(
        &mut self,
        file: usize,
        from: &Dict<'_>,
        to: &mut pdf_writer::Dict<'_>,
        but: &[&[u8]],
        deep: u8,
    ) {
        for (name, value) in from.entries() {
            let name: &[u8] = &name;
            if !name.is_empty() && !but.contains(&name) && !LEFT.contains(&name) {
                self.value(file, &value, to.insert(Name(name)), deep);
            }
        }
    }

    /// One entry of a dictionary, if it has it.
    pub fn entry(
        &mut self,
        file: usize,
        from: &Dict<'_>,
        key: &[u8],
        to: &mut pdf_writer::Dict<'_>,
    ) {
        if let Some(value) = from.get_raw::<Object<'_>>(key) {
            self.value(file, &value, to.insert(Name(key)), 0);
        }
    }

    /// A value or what stands for it.
    pub fn value(&mut self, file: usize, value: &MaybeRef<Object<'_>>, to: Obj<'_>, deep: u8) {
        match value {
            MaybeRef::Ref(other) => to.primitive(self.refer(file, *other)),
            MaybeRef::NotRef(object) => self.object(file, object, to, deep),
        }
    }

    fn object(&mut self, file: usize, object: &Object<'_>, to: Obj<'_>, deep: u8) {
        if deep > DEEP {
            return to.primitive(Null);
        }
        match object {
            // A stream never stands inside of another object.
            Object::Null(_) | Object::Stream(_) => to.primitive(Null),
            Object::Name(name) if name.is_empty() => to.primitive(Null),
            Object::Boolean(yes) => to.primitive(*yes),
            Object::Number(number) => {
                let number = number.as_f64();
                let whole = number as i32;
                if f64::from(whole).to_bits() == number.to_bits() {
                    to.primitive(whole);
                } else {
                    to.primitive(held(number));
                }
            }
            Object::String(text) => to.primitive(Str(text.as_bytes())),
            Object::Name(name) => to.primitive(Name(name)),
            Object::Array(list) => self.list(file, list, to, deep),
            Object::Dict(dict) => self.entries(file, dict, &mut to.dict(), &[], deep + 1),
        }
    }

    fn list(&mut self, file: usize, list: &Array<'_>, to: Obj<'_>, deep: u8) {
        let mut written = to.array();
        for item in list.raw_iter() {
            self.value(file, &item, written.push(), deep + 1);
        }
    }
}

/// Whether a stream's bytes can stay as they are: deciphering them is not a part of the new file.
pub fn packed(stream: &Stream<'_>) -> bool {
    stream.filters().first() != Some(&Filter::Crypt)
}

/// A number as readers take it: one that means nothing any more is written no larger than this.
pub const fn held(number: f64) -> f32 {
    /// Longer ones are written without a point, and readers take them for whole numbers, which end sooner.
    const LARGE: f32 = 1e11;
    (number as f32).clamp(-LARGE, LARGE)
}

/// A page, or a part of the tree of pages: would bring the whole file with it.
fn is_page(dict: &Dict<'_>) -> bool {
    let kind = dict.get::<hayro_syntax::object::Name<'_>>(TYPE);
    kind.is_some_and(|kind| [PAGE, PAGES].contains(&&*kind))
}

//! Layers of the files that a document is made of: what a file hides stays hidden, what it prints or shows
//! alone is printed or shown alone (ISO 32000-1, 8.11.4).

use super::copy::Copier;
use hayro_syntax::object::dict::keys::{AS, BASE_STATE, D, OCGS, OCPROPERTIES, OFF, ON};
use hayro_syntax::object::{Array, Dict, MaybeRef, ObjRef, Object};
use pdf_writer::{Finish, Name, Ref};

/// Writes the entry of a document's catalogue, with a layer of its own and those of each file's catalogue.
pub fn write(
    own: Ref,
    catalogs: &[(usize, Dict<'_>)],
    copier: &mut Copier,
    to: &mut pdf_writer::Dict<'_>,
) {
    let (mut groups, mut hidden, mut rules) = (vec![own], Vec::new(), Vec::new());
    for (file, catalog) in catalogs {
        let Some(layers) = catalog.get::<Dict<'_>>(OCPROPERTIES) else { continue };
        let all = references(&layers, OCGS);
        let shown = layers.get::<Dict<'_>>(D).unwrap_or_default();
        let [on, off] = [ON, OFF].map(|key| {
            let mut known = references(&shown, key);
            known.sort_unstable_by_key(|group| group.obj_number);
            known
        });
        let is_in = |known: &[ObjRef], group: ObjRef| {
            known.binary_search_by_key(&group.obj_number, |known| known.obj_number).is_ok()
        };
        let name = shown.get::<hayro_syntax::object::Name<'_>>(BASE_STATE);
        let none = name.is_some_and(|state| &*state == OFF);
        for group in all {
            let written = copier.refer(*file, group);
            groups.push(written);
            if is_in(&off, group) || none && !is_in(&on, group) {
                hidden.push(written);
            }
        }
        let list = shown.get::<Array<'_>>(AS);
        rules.extend(list.iter().flat_map(Array::raw_iter).map(|rule| (*file, rule)));
    }
    let mut optional = to.insert(Name(OCPROPERTIES)).dict();
    optional.insert(Name(OCGS)).array().items(groups.iter().copied());
    let mut shown = optional.insert(Name(D)).dict();
    shown.insert(Name(b"Order")).array().items(groups);
    shown.insert(Name(OFF)).array().items(hidden);
    let mut written = shown.insert(Name(AS)).array();
    for (file, rule) in rules {
        copier.value(file, &rule, written.push(), 0);
    }
    written.finish();
    shown.finish();
    optional.finish();
}

fn references(dict: &Dict<'_>, key: &[u8]) -> Vec<ObjRef> {
    let list = dict.get::<Array<'_>>(key);
    let all = list.iter().flat_map(Array::raw_iter);
    all.filter_map(|item: MaybeRef<Object<'_>>| match item {
        MaybeRef::Ref(to) => Some(to),
        MaybeRef::NotRef(_) => None,
    })
    .collect()
}

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
    let (mut groups, mut hidden) = (vec![own], Vec::new());
    for (file, catalog) in catalogs {
        let Some(layers) = catalog.get::<Dict<'_>>(OCPROPERTIES) else { continue };
        let shown = layers.get::<Dict<'_>>(D).unwrap_or_default();
        let state = shown.get::<hayro_syntax::object::Name<'_>>(BASE_STATE);
        let all_hidden = state.is_some_and(|state| &*state == OFF);
        let (on, off) = (references(&shown, ON), references(&shown, OFF));
        for group in references(&layers, OCGS) {
            let written = copier.refer(*file, group);
            groups.push(written);
            if off.contains(&group) || all_hidden && !on.contains(&group) {
                hidden.push(written);
            }
        }
    }
    let mut optional = to.insert(Name(OCPROPERTIES)).dict();
    optional.insert(Name(OCGS)).array().items(groups.iter().copied());
    let mut shown = optional.insert(Name(D)).dict();
    shown.insert(Name(b"Order")).array().items(groups);
    shown.insert(Name(OFF)).array().items(hidden);
    let mut rules = shown.insert(Name(AS)).array();
    for (file, catalog) in catalogs {
        let layers = catalog.get::<Dict<'_>>(OCPROPERTIES).unwrap_or_default();
        let Some(list) = layers.get::<Dict<'_>>(D).and_then(|shown| shown.get::<Array<'_>>(AS))
        else {
            continue;
        };
        for rule in list.raw_iter() {
            copier.value(*file, &rule, rules.push(), 0);
        }
    }
    rules.finish();
    shown.finish();
    optional.finish();
}

fn references(dict: &Dict<'_>, key: &[u8]) -> Vec<ObjRef> {
    let mut found = Vec::new();
    let Some(list) = dict.get::<Array<'_>>(key) else { return found };
    for item in list.raw_iter() {
        let item: MaybeRef<Object<'_>> = item;
        if let MaybeRef::Ref(to) = item {
            found.push(to);
        }
    }
    found
}

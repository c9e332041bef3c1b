//! The first form of a link, frozen: links that are out in the world must open for ever.
//!
//! Nothing here may change but by adding names at the end of a list. What else a link needs one day
//! goes into a second form beside this one.

use crate::draft::Tree;
use serde::{Deserialize, Serialize};

/// The number of a field in a link is its place in this list. Only ever add at the end.
pub const FIELDS: &[&str] = &[
    "pages",
    "size",
    "paper",
    "cover",
    "copies",
    "spine",
    "bleeds",
    "line",
    "images",
    "art_face",
    "folio_face",
    "bleed",
    "safe",
    "spine_text",
    "grain",
    "cover_grain",
    "bound_edge",
    "face_cut",
    "head_trim",
    "foot_trim",
    "tolerance",
    "head_foot",
    "copies_up",
    "gutter",
    "press_sheet",
    "route",
    "pairs",
    "wrapper",
    "dummy_thickness",
    "dummy_push_out",
    "first_thickness",
    "first_push_out",
    "first_width",
    "stitches",
    "loops",
    "start",
    "supplied_inside",
    "supplied_cover",
    "title",
    "customer",
    "date",
    "by",
    "units",
];

/// The same for the fields of a further section.
pub const SECTION_FIELDS: &[&str] = &["pages", "paper", "supplied", "place"];

/// The repeated group a link knows of.
pub const SECTIONS: &str = "sections";

/// Texts as typed, each with the number of its field.
type Texts = Vec<(u8, String)>;

/// What a link holds: typed texts and nothing else.
#[derive(Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct LinkV1 {
    fields: Texts,
    sections: Vec<Texts>,
}

impl LinkV1 {
    /// The texts of a job file's tree; nothing where a field has no number here.
    pub fn of(tree: &Tree) -> Option<Self> {
        let Tree::Map(entries) = tree else { return None };
        let mut link = Self { fields: Vec::new(), sections: Vec::new() };
        for (name, value) in entries {
            match value {
                Tree::List(members) if name == SECTIONS => {
                    for member in members {
                        let Tree::Map(entries) = member else { return None };
                        let mut texts = Vec::with_capacity(entries.len());
                        for (name, value) in entries {
                            texts.push(numbered(SECTION_FIELDS, name, value)?);
                        }
                        link.sections.push(texts);
                    }
                }
                _ if name == "format" || name == "version" => {}
                _ => link.fields.push(numbered(FIELDS, name, value)?),
            }
        }
        Some(link)
    }

    /// The tree of the job file with these texts; nothing where a number is not known.
    pub fn tree(self, format: &str, version: u32) -> Option<Tree> {
        let named = |names: &[&str], texts: Texts| -> Option<Vec<(String, Tree)>> {
            let name = |(number, text): (u8, String)| {
                Some(((*names.get(usize::from(number))?).to_owned(), Tree::Text(text)))
            };
            texts.into_iter().map(name).collect()
        };
        let mut entries = vec![
            ("format".to_owned(), Tree::text(format)),
            ("version".to_owned(), Tree::Number(f64::from(version))),
        ];
        entries.extend(named(FIELDS, self.fields)?);
        if !self.sections.is_empty() {
            let member = |texts| named(SECTION_FIELDS, texts).map(Tree::Map);
            let members: Option<Vec<Tree>> = self.sections.into_iter().map(member).collect();
            entries.push((SECTIONS.to_owned(), Tree::List(members?)));
        }
        Some(Tree::Map(entries))
    }
}

fn numbered(names: &[&str], name: &str, value: &Tree) -> Option<(u8, String)> {
    let number = names.iter().position(|known| *known == name)?;
    Some((u8::try_from(number).ok()?, value.typed()?))
}

#[cfg(test)]
mod tests {
    use super::{FIELDS, SECTION_FIELDS, SECTIONS};
    use crate::job::SCHEMA;

    #[test]
    fn every_field_of_a_job_has_a_number() {
        let lacking = |fields: &[crate::draft::Field], names: &[&str]| -> Vec<&str> {
            fields.iter().map(|field| field.id).filter(|id| !names.contains(id)).collect()
        };
        let missing = lacking(SCHEMA.fields, FIELDS);
        assert!(
            missing.is_empty(),
            "add {missing:?} at the end of FIELDS in src/input/job/link_v1.rs"
        );
        for (group, fields) in SCHEMA.groups {
            assert_eq!(
                *group, SECTIONS,
                "a link knows no other group: write src/input/job/link_v2.rs"
            );
            let missing = lacking(fields, SECTION_FIELDS);
            assert!(missing.is_empty(), "add {missing:?} at the end of SECTION_FIELDS");
        }
    }

    #[test]
    fn no_name_stands_twice() {
        for names in [FIELDS, SECTION_FIELDS] {
            let mut sorted = names.to_vec();
            sorted.sort_unstable();
            sorted.dedup();
            assert_eq!(sorted.len(), names.len());
        }
    }
}

//! The heads of a list's columns: which field stands below each, by its name or another that people
//! write.

use crate::draft::{FieldError, Kind};
use crate::job::SCHEMA;
use crate::words::say;

/// What the cells of a column are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Part {
    /// A field of the job.
    Field(&'static str),
    /// Finished width, where width and height stand apart.
    Width,
    /// Finished height.
    Height,
}

/// Other names of columns, in English and German, small letters, without spaces or marks. Every
/// field's own name counts too. Common practice.
const NAMES: &[(Part, &[&str])] = &[
    (Part::Field("title"), &["name", "job", "jobname", "book", "titel", "bezeichnung", "auftrag"]),
    (Part::Field("customer"), &["client", "kunde", "auftraggeber"]),
    (Part::Field("date"), &["due", "datum", "termin"]),
    (
        Part::Field("pages"),
        &["pp", "pagecount", "extent", "numberofpages", "seiten", "seitenzahl", "umfang"],
    ),
    (
        Part::Field("size"),
        &["trimsize", "trim", "finishedsize", "format", "endformat", "größe", "groesse"],
    ),
    (Part::Width, &["w", "trimwidth", "finishedwidth", "breite", "formatbreite"]),
    (Part::Height, &["h", "trimheight", "finishedheight", "höhe", "hoehe", "formathöhe"]),
    (
        Part::Field("paper"),
        &[
            "stock",
            "text",
            "textpaper",
            "textstock",
            "inside",
            "insidepaper",
            "papier",
            "inhalt",
            "papierinhalt",
            "inhaltspapier",
            "innenteil",
        ],
    ),
    (
        Part::Field("cover"),
        &["coverpaper", "coverstock", "umschlag", "umschlagpapier", "papierumschlag"],
    ),
    (
        Part::Field("copies"),
        &["quantity", "qty", "run", "printrun", "auflage", "menge", "exemplare", "stück", "stueck"],
    ),
    (Part::Field("spine"), &["back", "rücken", "ruecken"]),
    (Part::Field("bleeds"), &["randabfallend", "anschnitt"]),
    (Part::Field("bleed"), &["beschnitt"]),
    (Part::Field("bound_edge"), &["boundat", "bundseite"]),
    (Part::Field("copies_up"), &["up", "nutzen"]),
    (Part::Field("grain"), &["laufrichtung"]),
    (Part::Field("line"), &["machine", "maschine", "linie"]),
];

/// One column that is read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Column {
    /// Its place in the row.
    pub place: usize,
    /// What its cells are.
    pub part: Part,
    /// The unit that its head names in brackets, for cells that name none.
    pub unit: &'static str,
}

/// The columns of a list.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Heads {
    /// Those that are read.
    pub columns: Vec<Column>,
    /// The heads of those that are not, as they stand.
    pub ignored: Vec<String>,
    /// How many columns the list has.
    pub count: usize,
}

impl Heads {
    /// The columns of a first row.
    pub(super) fn of<'a>(cells: impl Iterator<Item = &'a str>) -> Self {
        let mut heads = Self::default();
        for (place, cell) in cells.enumerate() {
            heads.count = place + 1;
            let (name, unit) = match cell.split_once(['(', '[']) {
                Some((name, unit)) => (name, unit.trim_end_matches([')', ']', ' ']).trim()),
                None => (cell, ""),
            };
            let unit = ["mm", "cm", "in"].into_iter().find(|known| *known == unit).unwrap_or("");
            match part(name) {
                Some(part) => heads.columns.push(Column { place, part, unit }),
                None if cell.trim().is_empty() => {}
                None => heads.ignored.push(cell.trim().to_owned()),
            }
        }
        heads
    }

    /// What of the heads cannot be: nothing known, two for one field, or what every book needs lacking.
    pub(super) fn fault(&self) -> Option<FieldError> {
        let has = |part| self.columns.iter().any(|column| column.part == part);
        let first_two = |one: &Column| {
            self.columns.iter().any(|other| other.place < one.place && other.part == one.part)
        };
        if let Some(double) = self.columns.iter().find(|column| first_two(column)) {
            let path = match double.part {
                Part::Field(path) => path,
                Part::Width | Part::Height => "size",
            };
            return Some(FieldError::repaired(path, "", say("titles.twice")));
        }
        let sized = has(Part::Field("size")) || (has(Part::Width) && has(Part::Height));
        let lacking = [
            (has(Part::Field("pages")), "pages"),
            (sized, "size"),
            (has(Part::Field("paper")), "paper"),
        ];
        let lacking = lacking.into_iter().find(|(there, _)| !there)?.1;
        Some(FieldError::repaired(lacking, &self.ignored.join(" · "), say("titles.no-head")))
    }
}

/// The field of a head.
fn part(name: &str) -> Option<Part> {
    let plain: String = letters(name).collect();
    let field = SCHEMA.fields.iter().find(|field| letters(field.id).eq(plain.chars()));
    let known = || {
        let apart = [("width", Part::Width), ("height", Part::Height)];
        let apart = apart.into_iter().find(|(name, _)| *name == plain).map(|(_, part)| part);
        apart.or_else(|| {
            let mut rows = NAMES.iter();
            rows.find(|(_, names)| names.contains(&plain.as_str())).map(|(part, _)| *part)
        })
    };
    field.map(|field| Part::Field(field.id)).or_else(known)
}

fn letters(name: &str) -> impl Iterator<Item = char> {
    name.chars().filter(|letter| letter.is_alphanumeric()).flat_map(char::to_lowercase)
}

/// Whether a bare number in a field is a length.
pub(super) fn is_length(part: Part) -> bool {
    match part {
        Part::Width | Part::Height => true,
        Part::Field(id) => SCHEMA
            .field(id)
            .is_some_and(|field| matches!(field.kind, Kind::Length(..) | Kind::Size)),
    }
}

#[cfg(test)]
mod tests {
    use super::{NAMES, Part, letters};
    use crate::job::SCHEMA;

    #[test]
    fn every_name_leads_to_one_field() {
        let mut all: Vec<String> =
            SCHEMA.fields.iter().map(|field| letters(field.id).collect()).collect();
        for (part, names) in NAMES {
            if let Part::Field(id) = part {
                assert!(SCHEMA.field(id).is_some(), "{id}");
            }
            for name in *names {
                assert!(letters(name).eq(name.chars()), "{name} is not as it is compared");
                all.push((*name).to_owned());
            }
        }
        all.sort();
        let count = all.len();
        all.dedup();
        assert_eq!(all.len(), count, "a name stands twice");
    }
}

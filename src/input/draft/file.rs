//! A file's tree to a draft and back, with every fault found in one pass.

use crate::draft::{Draft, Field, Schema, Tree};
use crate::units::{Measure, Unit, digits};
use crate::words::{Say, say};

/// Something in a file or a form that cannot be right.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldError {
    /// The field's path; empty when the file as a whole is meant.
    pub path: String,
    /// What was given, at most so much of it as a line can hold.
    pub given: String,
    /// What is wrong with it.
    pub wrong: Say,
    /// What to put instead.
    pub repair: Say,
}

impl FieldError {
    /// An error whose repair has the key of its fault with `.repair` behind it, and the same slots.
    #[must_use]
    pub fn repaired(path: &str, given: &str, wrong: Say) -> Self {
        let repair = Say { key: format!("{}.repair", wrong.key), ..wrong.clone() };
        Self::new(path, given, wrong, repair)
    }
}

/// As much of a text as an error repeats.
const REPEATED: usize = 60;

impl FieldError {
    /// An error about what was given.
    #[must_use]
    pub fn new(path: &str, given: &str, wrong: Say, repair: Say) -> Self {
        let mut short: String = given.chars().take(REPEATED).collect();
        if short.len() < given.len() {
            short.push('…');
        }
        Self { path: path.to_owned(), given: short, wrong, repair }
    }
}

/// Longest text a file may hold in one field.
const LONGEST: usize = 500;
/// Most members of a repeated group, in a file or a form.
pub const MOST_MEMBERS: usize = 40;

/// Reads the tree of a file into a draft.
///
/// # Errors
/// All of them at once: a foreign or newer format, unknown names, values that are no text, groups
/// that are no lists, texts and lists beyond all measure.
pub fn from_tree(tree: &Tree, schema: &Schema) -> Result<Draft, Vec<FieldError>> {
    let (draft, errors) = read_tree(tree, schema)?;
    if errors.is_empty() { Ok(draft) } else { Err(errors) }
}

/// The same for whoever goes on to read the values: what of the file could be taken into a draft, and
/// what could not, so that an unknown name does not hide a value that cannot be right.
///
/// # Errors
/// The file as a whole is foreign or of another version.
pub fn read_tree(
    tree: &Tree,
    schema: &Schema,
) -> Result<(Draft, Vec<FieldError>), Vec<FieldError>> {
    let Tree::Map(entries) = tree else {
        return Err(vec![FieldError::repaired(
            "",
            "",
            say("file.foreign").text("format", schema.format),
        )]);
    };
    let find = |name: &str| entries.iter().find(|(key, _)| key == name).map(|(_, value)| value);
    let format = find("format").and_then(Tree::typed).unwrap_or_default();
    if format != schema.format {
        return Err(vec![FieldError::repaired(
            "format",
            &format,
            say("file.foreign").text("format", schema.format),
        )]);
    }
    match find("version") {
        Some(Tree::Number(version)) if *version == f64::from(schema.version) => {}
        Some(Tree::Number(version)) if *version > f64::from(schema.version) => {
            let newer = say("file.newer").put("knows", Measure::count(schema.version));
            return Err(vec![FieldError::repaired("version", &digits(*version), newer)]);
        }
        other => {
            let given = other.and_then(Tree::typed).unwrap_or_default();
            let wrong = say("file.version").put("knows", Measure::count(schema.version));
            return Err(vec![FieldError::repaired("version", &given, wrong)]);
        }
    }
    let mut reader = Reader { draft: Draft::default(), errors: Vec::new() };
    for (name, value) in entries.iter().filter(|(name, _)| name != "format" && name != "version") {
        match schema.groups.iter().find(|(group, _)| group == name) {
            Some((group, fields)) => reader.group(group, fields, value),
            None => reader.field("", name, schema.fields, value),
        }
    }
    Ok((reader.draft, reader.errors))
}

/// Builds the draft and collects what does not belong.
struct Reader {
    draft: Draft,
    errors: Vec<FieldError>,
}

impl Reader {
    fn field(&mut self, prefix: &str, name: &str, fields: &[Field], value: &Tree) {
        let path = format!("{prefix}{name}");
        if !fields.iter().any(|field| field.id == name) {
            let given = value.typed().unwrap_or_default();
            let wrong = match nearest(name, fields) {
                Some(near) => say("file.unknown-near").text("near", near),
                None => say("file.unknown"),
            };
            self.errors.push(FieldError::repaired(&path, &given, wrong.text("name", name)));
        } else if let Some(text) = value.typed() {
            if text.chars().count() > LONGEST {
                let most = Measure::new(LONGEST as f64, Unit::Count);
                self.errors.push(FieldError::repaired(
                    &path,
                    &text,
                    say("file.long").put("most", most),
                ));
            } else if self.draft.get(&path).is_empty() {
                self.draft.set(&path, &text);
            } else {
                self.errors.push(FieldError::repaired(
                    &path,
                    &text,
                    say("file.twice").text("name", name),
                ));
            }
        } else {
            let wrong = say("file.value").text("name", name);
            self.errors.push(FieldError::repaired(&path, &sketch(value), wrong));
        }
    }

    fn group(&mut self, group: &str, fields: &[Field], value: &Tree) {
        let Tree::List(members) = value else {
            self.errors.push(FieldError::repaired(
                group,
                &sketch(value),
                say("file.list").text("name", group),
            ));
            return;
        };
        if members.len() > MOST_MEMBERS {
            let given = members.len().to_string();
            let most = Measure::new(MOST_MEMBERS as f64, Unit::Count);
            self.errors.push(FieldError::repaired(
                group,
                &given,
                say("file.many").put("most", most),
            ));
            return;
        }
        for (index, member) in members.iter().enumerate() {
            let path = format!("{group}.{index}");
            if let Tree::Map(entries) = member {
                for (name, value) in entries {
                    self.field(&format!("{path}."), name, fields, value);
                }
            } else {
                let wrong = say("file.member").text("name", group);
                self.errors.push(FieldError::repaired(&path, &sketch(member), wrong));
            }
        }
    }
}

/// A value as far as it fits into a message.
fn sketch(value: &Tree) -> String {
    value.typed().unwrap_or_else(|| {
        match value {
            Tree::List(_) => "[…]",
            Tree::Map(_) => "{…}",
            _ => "null",
        }
        .to_owned()
    })
}

/// The field whose name has the same letters in another order or differs in one place.
fn nearest(name: &str, fields: &[Field]) -> Option<&'static str> {
    let often = |text: &str, letter| text.chars().filter(|other| *other == letter).count();
    let anagram = |id: &str| {
        id.len() == name.len() && id.chars().all(|letter| often(id, letter) == often(name, letter))
    };
    let differs_once = |id: &str| {
        let (a, b) = (name.as_bytes(), id.as_bytes());
        let same = a.iter().zip(b).take_while(|(x, y)| x == y).count();
        let tail = a.iter().rev().zip(b.iter().rev()).take_while(|(x, y)| x == y).count();
        a.len().abs_diff(b.len()) <= 1 && same + tail + 1 >= a.len().max(b.len())
    };
    fields.iter().map(|field| field.id).find(|id| anagram(id) || differs_once(id))
}

/// Writes a draft in the order of its rows, each text as it was typed.
#[must_use]
pub fn to_tree(draft: &Draft, schema: &Schema) -> Tree {
    let mut entries = vec![
        ("format".to_owned(), Tree::text(schema.format)),
        ("version".to_owned(), Tree::Number(f64::from(schema.version))),
    ];
    entries.extend(texts(draft, "", schema.fields));
    for (group, fields) in schema.groups {
        let members: Vec<Tree> = (0..draft.members(group))
            .map(|index| Tree::Map(texts(draft, &format!("{group}.{index}."), fields)))
            .collect();
        if !members.is_empty() {
            entries.push(((*group).to_owned(), Tree::List(members)));
        }
    }
    Tree::Map(entries)
}

fn texts(draft: &Draft, prefix: &str, fields: &[Field]) -> Vec<(String, Tree)> {
    fields
        .iter()
        .map(|field| (field.id.to_owned(), draft.get(&format!("{prefix}{}", field.id))))
        .filter(|(_, text)| !text.is_empty())
        .map(|(id, text)| (id, Tree::text(text)))
        .collect()
}

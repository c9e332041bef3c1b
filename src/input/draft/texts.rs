//! Text by field path, with the order of repeated groups.

use std::collections::BTreeMap;

/// What was typed, by field path: `pages`, `sections.0.paper`. An empty text is an absent one.
///
/// ```
/// use quirefit_input::draft::Draft;
/// let mut draft = Draft::default();
/// draft.set("pages", "60 + 4");
/// assert_eq!(draft.get("pages"), "60 + 4");
/// assert_eq!(draft.get("size"), "");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Draft {
    texts: BTreeMap<String, String>,
}

impl Draft {
    /// A draft of these fields.
    #[must_use]
    pub fn of(fields: &[(&str, &str)]) -> Self {
        let mut draft = Self::default();
        for (path, text) in fields {
            draft.set(path, text);
        }
        draft
    }
    /// The text at a path, empty when nothing was typed.
    #[must_use]
    pub fn get(&self, path: &str) -> &str {
        self.texts.get(path).map_or("", String::as_str)
    }
    /// Puts a text at a path; an empty text removes it.
    pub fn set(&mut self, path: &str, text: &str) {
        if text.is_empty() {
            self.texts.remove(path);
        } else {
            self.texts.insert(path.to_owned(), text.to_owned());
        }
    }
    /// Whether nothing at all was typed.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.texts.is_empty()
    }
    /// Every path with its text.
    pub fn all(&self) -> impl Iterator<Item = (&str, &str)> {
        self.texts.iter().map(|(path, text)| (path.as_str(), text.as_str()))
    }
    /// How many members a repeated group has: one more than its highest index.
    #[must_use]
    pub fn members(&self, group: &str) -> usize {
        self.texts
            .keys()
            .filter_map(|path| index_in(path, group))
            .max()
            .map_or(0, |(index, _)| index + 1)
    }
    /// Takes a member out of a group and closes the gap.
    pub fn remove_member(&mut self, group: &str, gone: usize) {
        let kept: Vec<usize> = (0..self.members(group)).filter(|index| *index != gone).collect();
        self.reorder_members(group, &kept);
    }
    /// Puts the members of a group into another order: the first is the one whose index stands first.
    /// Members that are not named are dropped.
    pub fn reorder_members(&mut self, group: &str, order: &[usize]) {
        let kept = core::mem::take(&mut self.texts);
        for (path, text) in kept {
            let path = match index_in(&path, group) {
                None => path,
                Some((old, field)) => match order.iter().position(|index| *index == old) {
                    Some(new) => member_path(group, new, field),
                    None => continue,
                },
            };
            self.texts.insert(path, text);
        }
    }
}

/// The path of a field in a member of a repeated group.
fn member_path(group: &str, index: usize, field: &str) -> String {
    format!("{group}.{index}.{field}")
}

/// Splits a path of a group into the member's index and the field.
fn index_in<'a>(path: &'a str, group: &str) -> Option<(usize, &'a str)> {
    let (index, field) = path.strip_prefix(group)?.strip_prefix('.')?.split_once('.')?;
    Some((index.parse().ok()?, field))
}

#[cfg(test)]
mod tests {
    use super::Draft;

    #[test]
    fn removing_a_member_moves_the_rest_down() {
        let mut draft = Draft::of(&[
            ("pages", "64"),
            ("sections.0.paper", "a"),
            ("sections.1.paper", "b"),
            ("sections.2.paper", "c"),
        ]);
        draft.remove_member("sections", 1);
        assert_eq!(draft.members("sections"), 2);
        assert_eq!(draft.get("sections.1.paper"), "c");
        assert_eq!(draft.get("pages"), "64");
    }

    #[test]
    fn members_change_places_with_all_they_hold() {
        let mut draft = Draft::of(&[
            ("pages", "64"),
            ("sections.0.paper", "a"),
            ("sections.1.paper", "b"),
            ("sections.1.pages", "8"),
            ("sections.2.paper", "c"),
        ]);
        draft.reorder_members("sections", &[1, 2, 0]);
        let papers: Vec<&str> = (0..3)
            .map(|index| ["sections.0.paper", "sections.1.paper", "sections.2.paper"][index])
            .map(|path| draft.get(path))
            .collect();
        assert_eq!(papers, ["b", "c", "a"]);
        assert_eq!((draft.get("sections.0.pages"), draft.get("sections.1.pages")), ("8", ""));
        assert_eq!(draft.get("pages"), "64");
    }
}

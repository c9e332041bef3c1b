//! The language files, read: a key leads to a pattern with named slots.

use std::collections::BTreeMap;

/// Patterns by key. Later texts overrule earlier ones, so a regional file holds only what differs.
#[derive(Debug, Clone, Default)]
pub struct Words {
    patterns: BTreeMap<String, String>,
}

/// A piece of a pattern.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part<'a> {
    /// Words to print as they stand.
    Text(&'a str),
    /// The name of a slot.
    Slot(&'a str),
}

impl Words {
    /// Reads language files, most general first.
    #[must_use]
    pub fn load(texts: &[&str]) -> Self {
        let mut words = Self::default();
        for text in texts {
            words.read(text);
        }
        words
    }

    /// Reads one more file; it overrules what is there. A line is `key = pattern`; `#` starts a remark;
    /// a line that begins with a space continues the pattern before it.
    pub fn read(&mut self, text: &str) {
        let patterns = &mut self.patterns;
        let mut last = None;
        for line in text.lines() {
            if line.starts_with(' ') {
                if let Some(pattern) = last.as_ref().and_then(|key| patterns.get_mut(key)) {
                    pattern.push(' ');
                    pattern.push_str(line.trim());
                }
            } else if let Some((key, pattern)) = line.split_once('=')
                && !line.starts_with('#')
            {
                let key = key.trim().to_owned();
                patterns.insert(key.clone(), pattern.trim().to_owned());
                last = Some(key);
            }
        }
    }

    /// Says some words otherwise wherever they stand; names of slots stay.
    pub fn respell(&mut self, pairs: &[(&str, &str)]) {
        for pattern in self.patterns.values_mut() {
            if !pairs.iter().any(|(from, _)| pattern.contains(from)) {
                continue;
            }
            let mut said = String::new();
            for part in parts(pattern) {
                match part {
                    Part::Slot(slot) => said.extend(["{", slot, "}"]),
                    Part::Text(text) => {
                        let respelt = pairs
                            .iter()
                            .fold(text.to_owned(), |text, (from, to)| text.replace(from, to));
                        said.push_str(&respelt);
                    }
                }
            }
            *pattern = said;
        }
    }

    /// The pattern of a key; with a number, its form for one or for many where the language has
    /// both (`key.one`, `key.other`). A missing key comes back as nothing: a test forbids it.
    #[must_use]
    pub fn pattern(&self, key: &str, number: Option<f64>) -> Option<&str> {
        let form = match number {
            Some(1.0) => ".one",
            Some(_) => ".other",
            None => "",
        };
        self.patterns
            .get(&format!("{key}{form}"))
            .or_else(|| self.patterns.get(key))
            .map(String::as_str)
    }

    /// A pattern without slots, or nothing to print when the key is missing.
    #[must_use]
    pub fn plain(&self, key: &str) -> &str {
        self.pattern(key, None).unwrap_or_default()
    }

    /// Every key with its pattern, in order.
    pub fn all(&self) -> impl Iterator<Item = (&str, &str)> {
        self.patterns.iter().map(|(key, pattern)| (key.as_str(), pattern.as_str()))
    }
}

/// Cuts a pattern at its `{slots}`.
///
/// ```
/// use quirefit_input::words::{Part, parts};
/// let cut: Vec<_> = parts("Trim {cut} off").collect();
/// assert_eq!(cut, [Part::Text("Trim "), Part::Slot("cut"), Part::Text(" off")]);
/// ```
pub fn parts(pattern: &str) -> impl Iterator<Item = Part<'_>> {
    pattern.split('{').enumerate().flat_map(|(index, piece)| {
        let (slot, text) = match piece.split_once('}') {
            Some((slot, text)) if index > 0 => (Some(slot), text),
            _ => (None, piece),
        };
        let text = (!text.is_empty()).then_some(Part::Text(text));
        slot.map(Part::Slot).into_iter().chain(text)
    })
}

//! The files of words: their form, what a region says otherwise, and help for every field.

use crate::families::{families, fields};
use crate::support::{files, name, text_of};
use crate::{in_code, keys_of, slots};
use quirefit::draft::Group;
use quirefit::words::{EN, Words};
use std::collections::BTreeSet;

/// What a region says otherwise than its language, by region. Other languages have a test of their
/// own, `translations`.
fn regions() -> Vec<(String, Words)> {
    let found: Vec<(String, Words)> = files("src/input/words")
        .iter()
        .filter_map(|path| {
            let region = name(path).strip_suffix(".txt").filter(|tag| tag.contains('-'))?;
            Some((region.to_owned(), Words::load(&[&text_of(path)])))
        })
        .collect();
    assert!(found.len() >= 2, "only {} files of regions", found.len());
    found
}

#[test]
fn every_region_says_only_what_differs() {
    let english = Words::load(&[EN]);
    let keys = keys_of(&english);
    for (region, words) in regions() {
        let own = keys_of(&words);
        let unknown: Vec<&String> = own.difference(&keys).collect();
        assert!(unknown.is_empty(), "{region}: {unknown:?} are not in en.txt");
        for (key, pattern) in words.all() {
            let expected = english.pattern(key, None).unwrap();
            assert_eq!(slots(pattern), slots(expected), "{region}: {key}");
            assert_ne!(pattern, expected, "{region}: {key} does not differ");
        }
    }
}

/// Every field says what it means and where to find what to type.
#[test]
fn every_field_has_help() {
    let english = Words::load(&[EN]);
    let short: Vec<String> = fields()
        .into_iter()
        .filter(|(_, field)| field.group != Group::Setting)
        .map(|(path, _)| format!("field.{path}.help"))
        .filter(|key| english.plain(key).chars().count() < 30)
        .collect();
    assert!(short.is_empty(), "no help in {short:?}");
}

#[test]
fn files_are_well_formed() {
    let mut whole: BTreeSet<String> = in_code().into_keys().collect();
    whole.extend(families().into_iter().flat_map(|(_, keys)| keys));
    for path in files("src/input/words").iter().filter(|path| path.ends_with(".txt")) {
        let text = text_of(path);
        let mut seen = BTreeSet::new();
        for (number, line) in text.lines().enumerate() {
            let at = format!("{path}:{}", number + 1);
            if line.is_empty() || line.starts_with(['#', ' ']) {
                continue;
            }
            let (key, pattern) = line.split_once(" =").unwrap_or_else(|| panic!("{at}: {line}"));
            assert!(seen.insert(key), "{at}: {key} stands twice");
            let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "._-".contains(c);
            assert!(key.chars().all(plain), "{at}: {key}");
            assert_eq!(pattern.matches('{').count(), pattern.matches('}').count(), "{at}");
            assert!(!pattern.trim().contains("  "), "{at}: two spaces");
        }
        for key in &seen {
            // A word may end in "one" and be no form.
            let alone = whole.contains(*key);
            for (form, other) in [(".one", ".other"), (".other", ".one")] {
                if let Some(stem) = key.strip_suffix(form).filter(|_| !alone) {
                    assert!(
                        seen.contains(format!("{stem}{other}").as_str()),
                        "{path}: {key} is alone"
                    );
                }
            }
        }
    }
}

//! The languages a page can be read in: their files, and how each writes numbers.

use super::Words;
use std::collections::BTreeMap;

/// Texts of the language files by language.
pub type Files = BTreeMap<String, String>;

/// The decimal sign, and what stands between groups of three.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// 1,234.5
    Point,
    /// 1 234,5
    Comma,
    /// 1’234.5
    Apostrophe,
}

impl Mark {
    /// The decimal sign, and what stands between groups. A narrow space that does not break where
    /// the sign is a comma, as DIN 5008 has it for German (from memory: a space, never a comma).
    #[must_use]
    pub const fn signs(self) -> (char, char) {
        match self {
            Self::Point => ('.', ','),
            Self::Comma => (',', '\u{202f}'),
            Self::Apostrophe => ('.', '’'),
        }
    }
}

/// One language as it is spoken in one place.
#[derive(Debug, PartialEq, Eq)]
pub struct Language {
    /// Its tag, as browsers and HTML write it.
    pub tag: &'static str,
    /// What those who read it call it.
    pub name: &'static str,
    /// The file of its language.
    file: &'static str,
    /// What its region calls otherwise, wherever it stands; what differs more has a file of the
    /// region's tag.
    respelt: &'static [(&'static str, &'static str)],
    /// How it writes numbers.
    pub mark: Mark,
    /// Lengths in inches, as long as nobody has chosen.
    pub inches: bool,
}

/// The file that every other overrules.
const BASE: &str = "en";

/// The languages on offer, the page's own first.
pub static LANGUAGES: [Language; 4] = [
    Language {
        tag: "en-GB",
        name: "English (UK)",
        file: BASE,
        respelt: &[(" face edge", " fore-edge"), (" face", " fore-edge"), ("foot", "tail")],
        mark: Mark::Point,
        inches: false,
    },
    Language {
        tag: "en-US",
        name: "English (US)",
        file: BASE,
        respelt: &[
            ("crease", "score"),
            ("Crease", "Score"),
            ("creasing", "scoring"),
            ("Creasing", "Scoring"),
            (" overs", " spoilage"),
            ("spoilt", "spoiled"),
            ("metre", "meter"),
            ("centre", "center"),
        ],
        mark: Mark::Point,
        inches: true,
    },
    Language {
        tag: "de",
        name: "Deutsch",
        file: "de",
        respelt: &[],
        mark: Mark::Comma,
        inches: false,
    },
    Language {
        tag: "de-CH",
        name: "Deutsch (Schweiz)",
        file: "de",
        respelt: &[("ß", "ss")],
        mark: Mark::Apostrophe,
        inches: false,
    },
];

/// Languages that write a decimal point though the page does not speak them: Chinese, Hebrew, Hindi,
/// Japanese, Korean, Malay, Thai (Unicode CLDR, from memory).
const POINTED: [&str; 7] = ["zh", "he", "hi", "ja", "ko", "ms", "th"];

fn primary(tag: &str) -> &str {
    tag.split('-').next().unwrap_or(tag)
}

impl Language {
    /// The page's own language.
    #[must_use]
    pub fn first() -> &'static Self {
        let [first, ..] = &LANGUAGES;
        first
    }
    /// The language of this tag, or the first of the same tongue.
    #[must_use]
    pub fn of(tag: &str) -> Option<&'static Self> {
        let exact = LANGUAGES.iter().find(|language| language.tag.eq_ignore_ascii_case(tag));
        exact.or_else(|| {
            LANGUAGES
                .iter()
                .find(|language| primary(language.tag).eq_ignore_ascii_case(primary(tag)))
        })
    }
    /// What to speak with somebody who reads these languages, the dearest first, and how to write
    /// numbers. A region counts only in the first of them: many browsers put US English behind
    /// whatever a person really reads.
    #[must_use]
    pub fn choose(tags: &[String]) -> (&'static Self, Mark) {
        let dearest = tags.first().map_or(BASE, String::as_str);
        if let Some(language) = Self::of(dearest) {
            return (language, language.mark);
        }
        let mark = if POINTED.contains(&primary(dearest)) { Mark::Point } else { Mark::Comma };
        let language = tags.iter().find_map(|tag| Self::of(primary(tag)));
        (language.unwrap_or(Self::first()), mark)
    }
    /// Its words: what it lacks is said in the file that every other overrules.
    #[must_use]
    pub fn words(&self, files: &Files) -> Words {
        let text = |name: &str| files.get(name).map_or("", String::as_str);
        let mut words = Words::load(&[text(BASE)]);
        if self.file != BASE {
            words.read(text(self.file));
        }
        words.respell(self.respelt);
        if self.tag != self.file {
            words.read(text(self.tag));
        }
        words
    }
}

/// The language files that the module itself holds: none in the page's own, which gets them from the
/// page.
#[must_use]
pub fn built_in() -> Files {
    #[cfg(any(feature = "embed", not(target_arch = "wasm32")))]
    let texts =
        [("en", super::EN), ("en-GB", super::EN_GB), ("en-US", super::EN_US), ("de", super::DE)];
    #[cfg(not(any(feature = "embed", not(target_arch = "wasm32"))))]
    let texts: [(&str, &str); 0] = [];
    texts.map(|(name, text)| (name.to_owned(), text.to_owned())).into()
}

#[cfg(test)]
mod tests {
    use super::{Language, Mark};

    fn chosen(tags: &[&str]) -> (&'static str, Mark) {
        let tags: Vec<String> = tags.iter().map(|tag| (*tag).to_owned()).collect();
        let (language, mark) = Language::choose(&tags);
        (language.tag, mark)
    }

    #[test]
    fn the_first_language_decides() {
        assert_eq!(chosen(&[]), ("en-GB", Mark::Point));
        assert_eq!(chosen(&["en"]), ("en-GB", Mark::Point));
        assert_eq!(chosen(&["EN-us", "en-GB"]), ("en-US", Mark::Point));
        assert_eq!(chosen(&["en-NZ", "en-US"]), ("en-GB", Mark::Point));
        assert_eq!(chosen(&["de-AT", "en-US"]), ("de", Mark::Comma));
        assert_eq!(chosen(&["de-CH", "fr-CH"]), ("de-CH", Mark::Apostrophe));
    }

    #[test]
    fn who_reads_none_of_them_keeps_the_own_numbers() {
        assert_eq!(chosen(&["fr-FR", "fr", "en-US", "en"]), ("en-GB", Mark::Comma));
        assert_eq!(chosen(&["fr-CH", "de-CH"]), ("de", Mark::Comma));
        assert_eq!(chosen(&["ja"]), ("en-GB", Mark::Point));
    }
}

//! Whether a name has what was typed so far, anywhere in it.

/// The pieces of a typed text: words and numbers, in lower case.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sought(Vec<String>);

/// A piece is a whole word of the name, its beginning, or stands within it.
const WHOLE: u32 = 0;
const BEGINS: u32 = 1;
const WITHIN: u32 = 4;

impl Sought {
    /// What was typed.
    #[must_use]
    pub fn of(typed: &str) -> Self {
        Self(pieces(typed))
    }
    /// Nothing was typed: everything fits.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }
    /// The number that was typed, if there is one alone.
    #[must_use]
    pub fn number(&self) -> Option<f64> {
        let mut numbers = self.0.iter().filter_map(|piece| piece.parse().ok());
        numbers.next().filter(|_| numbers.next().is_none())
    }
    /// How far a name is from what was typed; nothing where a piece is not in it. A number must stand
    /// at the beginning of one, so that "30" is not found in "130".
    ///
    /// ```
    /// use quirefit_input::entry::Sought;
    /// let typed = Sought::of("130 s");
    /// assert!(typed.distance("Pond Silk 130") < typed.distance("130 gsm glossy"));
    /// assert_eq!(typed.distance("Pond Silk 170"), None);
    /// ```
    #[must_use]
    pub fn distance(&self, name: &str) -> Option<u32> {
        let name = pieces(name);
        self.0.iter().map(|piece| nearest(piece, &name)).sum()
    }
}

fn nearest(piece: &str, name: &[String]) -> Option<u32> {
    let number = piece.starts_with(|letter: char| letter.is_ascii_digit());
    let one = |word: &String| match () {
        () if word == piece => Some(WHOLE),
        () if word.starts_with(piece) => Some(BEGINS),
        () if !number && word.contains(piece) => Some(WITHIN),
        () => None,
    };
    name.iter().filter_map(one).min()
}

/// Cuts at spaces, and where letters follow digits; a decimal sign stays in its number, the digit of
/// "A5" in its name. The sign of multiplication says nothing.
fn pieces(text: &str) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    let mut last = None;
    for letter in text.to_lowercase().chars() {
        let class = match letter {
            '.' | ',' if last == Some('0') => '0',
            'x' if last == Some('0') => ' ',
            letter if letter.is_ascii_digit() && last == Some('a') => 'a',
            letter if letter.is_ascii_digit() => '0',
            letter if letter.is_alphabetic() => 'a',
            '#' => '#',
            _ => ' ',
        };
        if class != ' ' {
            if last == Some(class) {
                out.last_mut().into_iter().for_each(|piece| piece.push(letter));
            } else {
                out.push(letter.to_string());
            }
        }
        last = Some(class);
    }
    out.retain(|piece| piece != "x");
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_cut_where_letters_meet_digits() {
        assert_eq!(pieces("130gsm Silk"), ["130", "gsm", "silk"]);
        assert_eq!(pieces("100# text"), ["100", "#", "text"]);
        assert_eq!(pieces("8.5 × 11 in"), ["8.5", "11", "in"]);
        assert_eq!(pieces("8,5x11"), ["8,5", "11"]);
        assert_eq!(pieces("A5 landscape"), ["a5", "landscape"]);
        assert_eq!(pieces("  "), [""; 0]);
    }

    #[test]
    fn every_piece_must_be_there_and_whole_words_are_nearest() {
        let near = |typed: &str, name: &str| Sought::of(typed).distance(name);
        assert_eq!(near("", "A5"), Some(0));
        assert_eq!(near("silk 130", "Pond Silk 130"), Some(0));
        assert_eq!(near("ilk", "Pond Silk 130"), Some(4));
        assert_eq!(near("30", "Pond Silk 130"), None);
        assert_eq!(near("silk gloss", "Pond Silk 130"), None);
        assert!(near("let", "Half Letter") < near("etter", "Half Letter"));
        assert_eq!(Sought::of("128 silk").number(), Some(128.0));
        assert_eq!(Sought::of("128 silk 0.1").number(), None);
    }
}

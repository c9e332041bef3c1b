//! What is written as one stays one: a number or size that is understood in part is not taken.

use super::number::Style;
use super::phrase_parts::{Part, joins};
use super::text::{Line, Token};

/// A part of a line, and the tokens it is made of: from one up to, not with, another.
pub(super) struct Piece {
    pub(super) from: usize,
    pub(super) to: usize,
    pub(super) part: Part,
}

/// The parts of a line; where only some of what belongs together is understood, all of it is words.
pub(super) fn whole(line: &Line, pieces: Vec<Piece>) -> Vec<Part> {
    let seams = Seams { line };
    let mut parts: Vec<Piece> = Vec::new();
    for mut piece in pieces {
        if let Some(last) = parts.last_mut().filter(|last| seams.ties(last, &piece)) {
            seams.widen(last, last.from, piece.to);
            continue;
        }
        seams.take_sign_before(&mut piece, parts.is_empty());
        if let Some(last) = parts.last_mut() {
            seams.take_sign_behind(last, false);
        }
        parts.push(piece);
    }
    if let Some(last) = parts.last_mut() {
        seams.take_sign_behind(last, true);
    }
    parts.into_iter().map(|piece| piece.part).collect()
}

/// Where two pieces meet.
struct Seams<'a> {
    line: &'a Line,
}

impl Seams<'_> {
    fn sign(&self, index: usize) -> Option<char> {
        match self.line.tokens().get(index) {
            Some(Token::Sign(sign)) => Some(*sign),
            _ => None,
        }
    }

    fn is_number(&self, index: Option<usize>) -> bool {
        let token = index.and_then(|index| self.line.tokens().get(index));
        matches!(token, Some(Token::Number(_)))
    }

    fn begins_with_number(&self, piece: &Piece) -> bool {
        self.is_number(Some(piece.from))
    }

    fn ends_with_number(&self, piece: &Piece) -> bool {
        self.is_number(piece.to.checked_sub(1))
    }

    /// More tokens belong to a piece, and what they say together is not understood.
    fn widen(&self, piece: &mut Piece, from: usize, to: usize) {
        let text = self.line.span(from, to).to_owned();
        *piece = Piece { from, to, part: Part::Words { text, describes: false } };
    }

    /// Whether two pieces are one thing: "1e308", "5x5 m", "10-12", "5 x 5 x 5", "64 + 4 + 4".
    fn ties(&self, one: &Piece, other: &Piece) -> bool {
        let numbers = self.ends_with_number(one) && self.begins_with_number(other);
        match other.from.saturating_sub(one.to) {
            0 if self.line.touches(other.from) => true,
            0 => self.may_be_unit(one, other) || self.adds(one, other),
            1 => match self.sign(one.to) {
                Some('×') => self.multiplies(one, other),
                Some(_) => numbers && self.line.touches(one.to) && self.line.touches(other.from),
                None => false,
            },
            _ => false,
        }
    }

    /// An unknown word behind a number may be its unit, unless it says more about size or pages.
    fn may_be_unit(&self, one: &Piece, other: &Piece) -> bool {
        let Part::Words { text, describes } = &other.part else { return false };
        let paper = *describes && matches!(one.part, Part::Paper { .. });
        let word = self.line.tokens().get(other.from).is_some_and(|token| token.word().is_some());
        let more = joins::size("A5", text) || joins::pages("4", text);
        self.ends_with_number(one) && word && !paper && !more
    }

    /// A plus that nobody has understood stands at the seam.
    fn adds(&self, one: &Piece, other: &Piece) -> bool {
        let before = self.sign(other.from) == Some('+') && self.ends_with_number(one);
        let summed = self.begins_with_number(one) || matches!(other.part, Part::Number(_));
        let behind = one.to.checked_sub(1).and_then(|last| self.sign(last)) == Some('+');
        before || (behind && summed && self.begins_with_number(other))
    }

    /// "500 x 24pp" is copies of a page count; three sides are no size.
    fn multiplies(&self, one: &Piece, other: &Piece) -> bool {
        let each = [&one.part, &other.part];
        let loose = |part: &Part| is_count(part) || matches!(part, Part::Words { .. });
        each.iter().any(|part| is_sided(part)) || each.iter().all(|part| loose(part))
    }

    /// A minus before a number is the number's: "-1". So is an x with nothing before it: "x 5".
    fn take_sign_before(&self, piece: &mut Piece, first: bool) {
        let Some(at) = piece.from.checked_sub(1) else { return };
        let taken = match self.sign(at) {
            Some('-') => {
                self.begins_with_number(piece)
                    && self.line.touches(piece.from)
                    && !self.line.touches(at)
            }
            Some('×') => first && (is_sided(&piece.part) || is_count(&piece.part)),
            _ => false,
        };
        if taken {
            self.widen(piece, at, piece.to);
        }
    }

    /// Half a size or fraction: "5 x", "1/".
    fn take_sign_behind(&self, piece: &mut Piece, last: bool) {
        let at = piece.to;
        let taken = match self.sign(at) {
            Some('×') => last && (is_sided(&piece.part) || is_count(&piece.part)),
            Some('-' | '/') => {
                self.ends_with_number(piece) && self.line.touches(at) && !self.line.touches(at + 1)
            }
            _ => false,
        };
        if taken {
            self.widen(piece, piece.from, at + 1);
        }
    }
}

/// A size given by its sides.
fn is_sided(part: &Part) -> bool {
    let Part::Size(text) = part else { return false };
    Line::cut(text.clone(), Style::Measured).tokens().contains(&Token::Sign('×'))
}

/// A number of something, copies perhaps.
fn is_count(part: &Part) -> bool {
    matches!(part, Part::Number(_) | Part::Copies(_))
}

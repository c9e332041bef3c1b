//! Letters of the fonts that every reader has: how they are written, and how wide they are.
//!
//! Text is written in WinAnsiEncoding (ISO 32000-1, annex D.2), which holds the letters of western
//! Europe. Widths are those of Helvetica in the core fonts' metrics, in thousandths of its size.

/// What stands for a letter that the encoding does not have.
const UNKNOWN: u8 = b'?';
/// Thousandths in a whole.
const THOUSAND: f64 = 1000.0;

/// Letters from 0x80 to 0x9f; the rest agrees with Latin 1. A blank is not used.
const FROM_80: [char; 32] = [
    '€', ' ', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', ' ', 'Ž', ' ', //
    ' ', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', ' ', 'ž', 'Ÿ',
];

/// Widths from the blank on.
const WIDTHS: [u16; 224] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, // 20
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, // 30
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, // 40
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, // 50
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, // 60
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, 350, // 70
    556, 350, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350, // 80
    350, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 350, 500, 667, // 90
    278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333, // a0
    400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834, 834, 611, // b0
    667, 667, 667, 667, 667, 667, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278, // c0
    722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611, // d0
    556, 556, 556, 556, 556, 556, 889, 500, 556, 556, 556, 556, 278, 278, 278, 278, // e0
    556, 556, 556, 556, 556, 556, 556, 584, 611, 556, 556, 556, 556, 500, 556, 500, // f0
];

/// A text as it is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Letters {
    /// One byte a letter.
    pub bytes: Vec<u8>,
    /// Some letter is not in the encoding: a question mark stands for it.
    pub replaced: bool,
}

impl Letters {
    /// Writes a text. Letters of another shape for the same thing become what the encoding has.
    #[must_use]
    pub fn of(text: &str) -> Self {
        let mut replaced = false;
        let bytes = text
            .chars()
            .map(|letter| {
                byte(letter).unwrap_or_else(|| {
                    replaced = true;
                    UNKNOWN
                })
            })
            .collect();
        Self { bytes, replaced }
    }

    /// How wide it is in letters of a size, in the same unit.
    #[must_use]
    pub fn width(&self, size: f64) -> f64 {
        let widths = self.bytes.iter().filter_map(|byte| {
            WIDTHS.get(usize::from(byte.checked_sub(b' ')?)).map(|width| f64::from(*width))
        });
        widths.sum::<f64>() * size / THOUSAND
    }
}

fn byte(letter: char) -> Option<u8> {
    match letter {
        ' '..='~' | '\u{a0}'..='ÿ' => u8::try_from(u32::from(letter)).ok(),
        '\u{2009}' | '\u{202f}' | '\t' | '\n' => Some(b' '),
        '\u{2010}' | '\u{2011}' => Some(b'-'),
        // A minus is as long as this dash.
        '−' => byte('–'),
        _ => {
            let place = FROM_80.iter().position(|known| *known == letter)?;
            u8::try_from(place).ok().map(|place| place + 0x80)
        }
    }
}

//! Texts cut into pieces.

use super::number::Style;
use super::text::{Line, Token, quoted, tidy};

fn shape(text: &str) -> String {
    let line = Line::cut(tidy(text), Style::Measured);
    let piece = |token: &Token| match token {
        Token::Number(number) => format!("{}", number.value),
        Token::Word(word) => word.clone(),
        Token::Sign(sign) => sign.to_string(),
        Token::Bad => "!".to_owned(),
    };
    line.tokens().iter().map(piece).collect::<Vec<_>>().join("|")
}

#[test]
fn pieces() {
    for (text, pieces) in [
        ("64pp A5", "64|pp|a5"),
        ("80x80", "80|×|80"),
        ("170mmX240mm", "170|mm|×|240|mm"),
        ("8.5\u{2009}× 11″", "8.5|×|11|\""),
        ("6 by 9 in", "6|×|9|in"),
        ("90 g/m²", "90|g/m²"),
        ("1.3 cm3/g", "1.3|cm3/g"),
        ("64 self-cover", "64|self|cover"),
        ("64 pp. ", "64|pp"),
        ("-1", "-|1"),
        ("9 μm", "9|µm"),
        ("1.2.3 x", "!|×"),
    ] {
        assert_eq!(shape(text), pieces, "{text}");
    }
}

#[test]
fn long_texts_are_quoted_short() {
    assert_eq!(quoted(&"🦆".repeat(5000)).chars().count(), 40 + 1);
}

#[test]
fn puts_words_behind_a_piece() {
    let line = Line::cut("90 marmalade".to_owned(), Style::Measured);
    assert_eq!(line.with_after(0, "gsm"), "90 gsm marmalade");
    assert_eq!(line.with_after(1, "gsm"), "90 marmalade gsm");
}

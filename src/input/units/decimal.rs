//! Numbers in decimal digits. Every double is printed here, exactly as the library's `{:.n}` would:
//! the library's own printer, which serves any number of digits, is a sizeable part of a small module.

/// Digits that every double keeps: what was typed with so many comes back as it was.
const KEPT: usize = 15;
/// From here on the digits behind the fifteenth are zeros.
const LARGE: f64 = 1e15;
const TEN: f64 = 10.0;
/// Bits of a double: those of its fraction, and what its exponent counts from.
const FRACTION: u64 = 52;
const EXPONENT: u64 = 0x7ff;
const BIAS: u64 = 1075;

/// A number with so many decimals, at most 15: to nearest, a tie to the even digit.
///
/// ```
/// use quirefit_input::units::fixed;
/// assert_eq!(fixed(-2.0437, 2), "-2.04");
/// ```
#[must_use]
pub fn fixed(number: f64, places: usize) -> String {
    let sign = if number.is_sign_negative() { "-" } else { "" };
    if !number.is_finite() {
        return [sign, if number.is_nan() { "NaN" } else { "inf" }].concat();
    }
    let mut size = number.abs();
    let mut zeros = 0;
    while size >= LARGE {
        size /= TEN;
        zeros += 1;
    }
    let mut text = steps(size, places.min(KEPT)).to_string();
    while text.len() <= places {
        text.insert(0, '0');
    }
    let point = text.len() - places;
    let (whole, part) = text.split_at_checked(point).unwrap_or((&text, ""));
    let (gap, zeros) = (if places > 0 { "." } else { "" }, "0".repeat(zeros));
    [sign, whole, &zeros, gap, part].concat()
}

/// How many steps of so many decimals a size below 10¹⁵ has. A double is a whole number of halves of
/// halves: nothing is lost before the rounding.
fn steps(size: f64, places: usize) -> u64 {
    let bits = size.to_bits();
    let exponent = (bits >> FRACTION) & EXPONENT;
    let fraction = bits & ((1 << FRACTION) - 1);
    let whole = if exponent == 0 { fraction } else { fraction | 1 << FRACTION };
    let scaled = u128::from(whole) * 10_u128.pow(places as u32);
    let halves = BIAS - exponent.max(1);
    if halves >= u64::from(u128::BITS) {
        return 0;
    }
    let (below, half) = (scaled >> halves, 1_u128 << (halves - 1));
    let rest = scaled - (below << halves);
    let up = rest > half || (rest == half && below & 1 == 1);
    (below + u128::from(up)) as u64
}

/// A number in as many digits as it needs, at most 15.
///
/// ```
/// use quirefit_input::units::digits;
/// assert_eq!(digits(0.1 + 0.2), "0.3");
/// assert_eq!(digits(1500.0), "1500");
/// ```
#[must_use]
pub fn digits(number: f64) -> String {
    let mut places = KEPT;
    let mut rest = number.abs();
    while rest >= 1.0 && places > 0 {
        rest /= TEN;
        places -= 1;
    }
    trimmed(fixed(number, places))
}

/// Without the zeros at the end of its decimals.
#[must_use]
pub fn trimmed(text: String) -> String {
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::{digits, fixed};
    use proptest::prelude::*;

    proptest! {
        /// Against the library's printer, over everything that a figure may be.
        #[test]
        fn prints_as_the_library_does(number in -1e14..1e14_f64, small in -10.0..10.0_f64) {
            for number in [number, small, small / 1e4, (small * 1e3).round() / 1e3] {
                for places in 0..=4 {
                    prop_assert_eq!(fixed(number, places), format!("{number:.places$}"));
                }
            }
        }
    }

    #[test]
    fn a_tie_goes_to_the_even_digit() {
        for eighths in -4000..4000 {
            let number = f64::from(eighths) / 8.0;
            for places in 0..=4 {
                assert_eq!(fixed(number, places), format!("{number:.places$}"));
            }
        }
    }

    #[test]
    fn whatever_it_is_it_is_printed() {
        for number in [0.0, -0.0, 5e-324, 1e-300, 1e15, 1e21, f64::INFINITY, f64::NAN] {
            assert_eq!(fixed(number, 2), format!("{number:.2}"));
        }
        assert_eq!(fixed(f64::MAX, 0).len(), 309);
    }

    #[test]
    fn what_was_typed_comes_back() {
        for text in ["0", "7", "0.05", "-2.54", "0.108", "1200", "1000000", "12345678.9012345"] {
            assert_eq!(text.parse().map(digits).as_deref(), Ok(text));
        }
        // Every thousandth up to a hundred metres, which is as finely as anybody measures them.
        for thousandths in 0..=100_000 {
            let number = f64::from(thousandths) / 1000.0;
            assert_eq!(digits(number).parse(), Ok(number));
        }
    }
}

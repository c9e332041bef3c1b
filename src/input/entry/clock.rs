//! A time of day: when a run starts.

use super::Reading;
use super::text::{quoted, tidy};
use crate::units::{HOURS_PER_DAY, MINUTES_PER_HOUR, Measure, SECONDS_PER_MINUTE, Second, Unit};
use crate::words::say;

/// Hours that "am" and "pm" count to.
const HALF_DAY: u32 = 12;
/// Marks between hours and minutes.
const MARKS: [char; 3] = [':', '.', 'h'];

/// Reads a time of day: "8:30", "08.30", "8h30", "8", "8:30 pm", "20:15". Comes back as seconds since
/// midnight.
///
/// # Errors
/// [`Reading::Wrong`] for anything else.
///
/// ```
/// use quirefit_input::{entry, units::Second};
/// assert_eq!(entry::clock("8:30").value(), Some(Second(30_600.0)));
/// ```
#[must_use]
pub fn clock(text: &str) -> Reading<Second> {
    let typed = tidy(text).to_lowercase();
    // In German the word for "o'clock" stands behind.
    let typed = typed.strip_suffix("uhr").unwrap_or(&typed).trim_end();
    let (digits, half) = half_of_day(typed);
    if digits.is_empty() || digits.ends_with(MARKS) {
        return Reading::Incomplete;
    }
    let (hours, minutes) = digits.split_once(MARKS).unwrap_or((digits, "0"));
    let number = |part: &str| {
        let plain = !part.is_empty() && part.len() <= 2 && part.bytes().all(|b| b.is_ascii_digit());
        plain.then(|| part.parse::<u32>().ok()).flatten()
    };
    match (number(hours), number(minutes)) {
        (Some(hours), Some(minutes)) if minutes < MINUTES_PER_HOUR => {
            let most = if half.is_some() { HALF_DAY + 1 } else { HOURS_PER_DAY };
            if hours >= most || (half.is_some() && hours == 0) {
                return wrong(text);
            }
            let hours = match half {
                Some(later) => hours % HALF_DAY + later,
                None => hours,
            };
            let seconds = f64::from((hours * MINUTES_PER_HOUR + minutes) * SECONDS_PER_MINUTE);
            let echo = say("entry.clock.echo").put("time", Measure::new(seconds, Unit::Clock));
            Reading::Understood(Second(seconds), echo)
        }
        _ => wrong(text),
    }
}

/// The digits, and the hours to add when "am" or "pm" stands behind them.
fn half_of_day(typed: &str) -> (&str, Option<u32>) {
    let without = |end: &str| typed.strip_suffix(end).map(str::trim_end);
    match (without("am"), without("pm")) {
        (Some(digits), _) => (digits, Some(0)),
        (_, Some(digits)) => (digits, Some(HALF_DAY)),
        _ => (typed, None),
    }
}

fn wrong(text: &str) -> Reading<Second> {
    Reading::wrong(say("entry.clock.wrong").text("given", quoted(text)), say("entry.clock.example"))
}

#[cfg(test)]
mod tests {
    use super::clock;
    use crate::entry::Reading;
    use crate::units::Second;

    #[test]
    fn times_of_day_as_people_type_them() {
        for (text, hours) in [
            ("8:30", 8.5),
            ("08.30", 8.5),
            ("8h30", 8.5),
            ("8", 8.0),
            ("8:30 pm", 20.5),
            ("12 am", 0.0),
            ("12:15pm", 12.25),
            ("0:00", 0.0),
            ("23:45", 23.75),
            ("8.30 Uhr", 8.5),
            ("20 Uhr", 20.0),
        ] {
            assert_eq!(clock(text).value(), Some(Second(hours * 3600.0)), "{text}");
        }
    }

    #[test]
    fn half_typed_and_impossible_times() {
        assert!(matches!(clock("8:"), Reading::Incomplete));
        for text in ["24:00", "8:60", "13 pm", "0 am", "soon", "8:3:0", "-1", "8:300"] {
            assert!(matches!(clock(text), Reading::Wrong(_)), "{text}");
        }
    }
}

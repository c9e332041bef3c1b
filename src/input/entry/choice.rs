//! One of a few given words, as from a row of buttons.

use super::Reading;
use super::text::{begins_one, quoted, tidy};
use crate::words::say;

/// Words for yes and for no.
const YES_NO: [(&str, bool); 8] = [
    ("yes", true),
    ("y", true),
    ("ja", true),
    ("true", true),
    ("no", false),
    ("n", false),
    ("nein", false),
    ("false", false),
];

/// Reads one of `options`; capitals do not matter.
///
/// # Errors
/// [`Reading::Wrong`] with the list for any other word.
///
/// ```
/// use quirefit_input::entry;
/// assert_eq!(entry::choice("Square", &["round", "square"]).value(), Some("square"));
/// ```
#[must_use]
pub fn choice(text: &str, options: &[&'static str]) -> Reading<&'static str> {
    let typed = tidy(text).to_lowercase();
    if let Some(option) = options.iter().find(|option| **option == typed) {
        return Reading::Understood(option, say("entry.choice.echo").text("value", *option));
    }
    if typed.is_empty() || begins_one(&typed, options) {
        return Reading::Incomplete;
    }
    Reading::wrong(
        say("entry.choice.wrong").text("given", quoted(text)),
        say("entry.choice.repair").text("options", options.join(" · ")),
    )
}

/// Reads yes or no, in a few forms.
///
/// # Errors
/// [`Reading::Wrong`] for any other word.
///
/// ```
/// use quirefit_input::entry;
/// assert_eq!(entry::yes_no("Yes").value(), Some(true));
/// ```
#[must_use]
pub fn yes_no(text: &str) -> Reading<bool> {
    let typed = tidy(text).to_lowercase();
    match YES_NO.iter().find(|(word, _)| *word == typed) {
        Some((_, answer)) => {
            let option = if *answer { "yes" } else { "no" };
            Reading::Understood(*answer, say("entry.choice.echo").text("value", option))
        }
        None => choice(text, &["yes", "no"]).map(|word| word == "yes"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn choices() {
        let options = &["round", "square"];
        assert_eq!(choice(" Square ", options).value(), Some("square"));
        assert_eq!(choice("squ", options), Reading::Incomplete);
        assert_eq!(choice("", options), Reading::Incomplete);
        assert!(matches!(choice("oval", options), Reading::Wrong(_)));
        assert!(matches!(choice(&"🦆".repeat(5000), options), Reading::Wrong(_)));
    }

    #[test]
    fn yes_and_no() {
        assert_eq!(yes_no("Y").value(), Some(true));
        assert_eq!(yes_no("nein").value(), Some(false));
        assert_eq!(yes_no("ye"), Reading::Incomplete);
        assert!(matches!(yes_no("perhaps"), Reading::Wrong(_)));
    }
}

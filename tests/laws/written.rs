//! A plan written out, and what can be read back from that.

use crate::jobs::{SHOPS, SOME};
use quirefit::plan::{Plan, plan};
use quirefit::units::{Band, Mm};

/// The numbers of every band in a value that was written out: low, nominal, high.
pub fn bands(written: &str) -> Vec<[f64; 3]> {
    let mut found = Vec::new();
    for after in written.split("Band { low: ").skip(1) {
        let number = |text: &str| -> f64 {
            let from = text.find(|c: char| c.is_ascii_digit() || c == '-' || c == 'N' || c == 'i');
            let text = &text[from.unwrap()..];
            let end = text.find([',', ')', ' ', '}']).unwrap_or(text.len());
            text[..end].parse().unwrap_or_else(|_| panic!("no number: {}", &text[..end]))
        };
        let (low, after) = after.split_once("nominal: ").unwrap();
        let (nominal, high) = after.split_once("high: ").unwrap();
        found.push([bare(low), bare(nominal), bare(high)].map(number));
    }
    found
}

/// Behind the names of newtypes: `FlatStack(Mm(1.5))` begins at 1.5.
fn bare(text: &str) -> &str {
    let open = text.find(|c: char| c.is_ascii_digit() || c == '-').unwrap_or(0);
    match (text.find("NaN"), text.find("inf")) {
        (Some(at), _) | (_, Some(at)) if at < open.max(1) => &text[at..],
        _ => &text[open..],
    }
}

/// The whole plan, written out.
pub fn written(plan: &Plan) -> String {
    format!("{plan:?}")
}

pub fn fields<'a>(text: &'a str, of: &str) -> impl Iterator<Item = &'a str> {
    text.split(move |c: char| !(c.is_alphanumeric() || c == '.' || c == '-' || c == '_'))
        .filter(move |word| !word.is_empty())
        .filter({
            let of = of.to_owned();
            move |word| *word == of
        })
}

#[test]
fn the_walk_over_bands_sees_what_it_should() {
    let odd = Band { low: Mm(3.0), nominal: Mm(2.5e-7), high: Mm(-1.0) };
    assert_eq!(bands(&format!("{:?}", Some((odd, 1)))), [[3.0, 2.5e-7, -1.0]]);
    let endless = Band { low: 0.0, nominal: f64::INFINITY, high: f64::NAN };
    let text = format!("{endless:?}");
    assert_eq!(bands(&text)[0][1], f64::INFINITY);
    assert!(fields(&text, "NaN").count() == 1 && fields(&text, "inf").count() == 1);
    let plan = plan(&SOME.0, &SHOPS[0]);
    assert!(bands(&written(&plan)).len() > 50, "the plan holds more bands than that");
}

//! Everything that is written beside the page: text, tables, documents for print.

use crate::printed::Printed;

use quirefit::draft::Draft;
use quirefit::explain::{Case, explain, figures};
use quirefit::job;
use quirefit::plan::Plan;
use quirefit::view::Printer;
use quirefit::view::json::plan_out;

/// The plan as text and as JSON, and every explanation as text.
pub fn texts(
    draft: &Draft,
    job: &job::Job,
    shop: &quirefit::shop::Shop,
    planned: &Plan,
    printer: &Printer,
    printed: &mut Printed,
) {
    let json = serde_json::to_string(&plan_out(job, planned, printer)).unwrap();
    printed.take(&json);
    let told = quirefit::view::text::text(job, shop, planned, printer);
    printed.take(&told);
    printed.take(&quirefit::view::letter::letter(job, shop, planned, printer));
    printed.take(&quirefit::view::xjdf::xjdf(job, planned, printer));
    let advice = quirefit::advise::Advice::at_once(job, shop, planned);
    let (reading, printer) = (quirefit::view::Reading::Floor, *printer);
    let screen = quirefit::view::Screen::default();
    let scene = quirefit::view::html::Scene {
        job,
        shop,
        plan: planned,
        advice: &advice,
        versions: &[],
        ticks: &quirefit::view::Ticks::default(),
        printer,
        reading,
        screen,
    };
    let tables = quirefit::view::csv::tables(&scene);
    printed.take(&quirefit::view::csv::write(&tables, &printer));
    for document in &quirefit::view::pdf::DOCUMENTS {
        let wanted = quirefit::view::pdf::Wanted { scene: &scene, language: "en", code: None };
        if let Some(file) = (document.write)(&wanted) {
            assert!(file.replaced, "the marks of the marked language are in no font");
            printed.take(&unprintable(&file.bytes));
        }
    }
    let printer = &printer;
    let case = Case::new(job, shop, planned);
    for told in figures().filter_map(|figure| explain(&case, figure.id)) {
        for sentence in told.lines.iter().chain([&told.name]).chain(&told.doubt) {
            printed.take(&printer.text(sentence));
        }
    }
    for note in job::read(draft, shop).notes.values() {
        if let job::Note::Echo(echo) = note {
            printed.take(&printer.text(echo));
        }
    }
}

/// The texts of a document for print that no font has: UTF-16 in hexadecimal, line after line.
fn unprintable(bytes: &[u8]) -> String {
    let text = String::from_utf8_lossy(bytes);
    let lines = text.split("<FEFF").skip(1).map(|after| {
        let digits = after.split('>').next().unwrap().as_bytes();
        let unit = |four: &[u8]| u16::from_str_radix(str::from_utf8(four).unwrap(), 16).unwrap();
        String::from_utf16(&digits.chunks(4).map(unit).collect::<Vec<_>>()).unwrap()
    });
    lines.collect::<Vec<_>>().join(" ")
}

//! The job card: everything that is set and looked at, with boxes to tick and room to write, and the
//! code that brings the job back onto a page. No rate, no cost, and no date: that is written by hand.

use super::document::{Document, Type, broken};
use super::notes::{self, BLACK, GREY, LETTER, bar, file, hair, plain, text};
use super::{File, Wanted};
use crate::view::html::Scene;
use crate::view::html::answer::reason;
use crate::view::job_card::{book, found, identity, rests_on, run, shop};
use crate::view::qr::Code;
use crate::view::set_up::{Row, first_book, settings};
use crate::words::say;
use pdf_writer::types::StructRole;

/// Paper round what is printed.
const EDGE: f64 = 12.0;
/// Between the two columns.
const GAP: f64 = 8.0;
/// Room at the foot for cautions, names and the bar.
const FOOT: f64 = 48.0;
/// Side of the code.
const CODE: f64 = 32.0;
/// Side of a box to tick.
const BOX: f64 = 3.6;
/// Room beside a row to write in.
const WRITE: f64 = 18.0;
/// Size of letters, of headings, and from one line to the next.
const SMALL: f64 = 2.9;
/// See [`SMALL`].
const HEAD: f64 = 3.8;
/// See [`SMALL`].
const LINE: f64 = SMALL * super::document::LEADING;
/// Below a row.
const BELOW: f64 = 1.4;

/// Writes the card.
#[must_use]
pub fn card(wanted: &Wanted) -> File {
    let scene = wanted.scene;
    let size = notes::paper(scene);
    let title = notes::title(scene, "card.name");
    let mut document = Document::new(Vec::new());
    document.page(size, None, None);
    let top = head(&mut document, wanted, &title, size.0);
    let mut columns = Columns { size, top, y: top, second: false };
    let case = scene.case();
    columns.heading(&mut document, scene.printer.word("card.set"));
    for row in &settings(&case) {
        columns.row(&mut document, scene, row, false);
    }
    columns.apart();
    columns.heading(&mut document, scene.printer.word("setup.first"));
    for row in &first_book(&case) {
        columns.row(&mut document, scene, row, true);
    }
    columns.sentence(&mut document, scene.printer.word("setup.again"));
    for (heading, told) in [("region.run", run(scene)), ("card.rests-on", rests_on(scene))] {
        columns.heading(&mut document, scene.printer.word(heading));
        for sentence in &told {
            columns.sentence(&mut document, &text(scene, sentence));
        }
    }
    columns.sentence(&mut document, &shop(scene));
    foot(&mut document, scene, size);
    file(document, &title, wanted.language)
}

/// What job it is, whether it fits, and what is worth knowing; gives back where that ends.
fn head(document: &mut Document, wanted: &Wanted, title: &str, wide: f64) -> f64 {
    let scene = wanted.scene;
    let breadth = wide - 2.0 * EDGE - wanted.code.map_or(0.0, |_| CODE + GAP);
    let who = identity(scene).into_iter().map(|(label, text)| format!("{label}: {text}"));
    let verdict = say(format!("answer.{}", scene.plan.verdict.name()));
    let verdict = [verdict, reason(scene)].map(|sentence| text(scene, &sentence)).join(" ");
    let (found, more) = found(scene);
    let found = found.into_iter().chain(more).map(|sentence| text(scene, &sentence));
    let told = [who.collect::<Vec<_>>().join(" · "), text(scene, &book(scene)), verdict];
    let told: Vec<String> = told.into_iter().chain(found).collect();
    let end = notes::told(document, (title, &told), (EDGE, EDGE), breadth);
    if let Some(code) = wanted.code {
        draw_code(document, scene, code, (wide - EDGE - CODE, EDGE));
    }
    let end = wanted.code.map_or(end, |_| end.max(EDGE + CODE));
    document.lines(hair(GREY), &[[EDGE, end + BELOW, wide - EDGE, end + BELOW]]);
    end + LINE + BELOW
}

fn draw_code(document: &mut Document, scene: &Scene, code: &Code, (x, y): (f64, f64)) {
    let module = CODE / f64::from(code.side());
    let place = |at: i32| f64::from(at) * module;
    let runs = code.runs().map(|(column, row, length)| {
        [x + place(column), y + place(row), x + place(column + length), y + place(row + 1)]
    });
    let runs: Vec<_> = runs.collect();
    let label = scene.printer.word("code.label");
    document.figure(label, |document| document.filled(BLACK, &runs));
}

/// Cautions, who has set it up and looked, and the bar.
fn foot(document: &mut Document, scene: &Scene, (wide, high): (f64, f64)) {
    let cautions = ["cautions.machine", "cautions.wire", "cautions.dummy"];
    let cautions = cautions.map(|key| scene.printer.word(key)).join(" ");
    let mut y = high - FOOT + LINE;
    document.part(StructRole::P, |document| {
        y = document.sentence(plain(SMALL * 0.9), (EDGE, y), wide - 2.0 * EDGE, &cautions);
    });
    bar(document, scene, (EDGE, high - EDGE - notes::BAR_HIGH));
    let (left, keys) = (EDGE + 60.0, ["card.set-up-by", "card.checked-by", "card.good-copies"]);
    let each = (wide - EDGE - left) / keys.len() as f64;
    for (at, key) in keys.into_iter().enumerate() {
        let (x, y) = (left + each * at as f64, high - EDGE);
        document.lines(hair(BLACK), &[[x, y - LINE, x + each - GAP, y - LINE]]);
        let style = Type { colour: GREY, ..plain(SMALL * 0.9) };
        let name = scene.printer.word(key);
        document.part(StructRole::P, |document| document.words(style, (x, y), name));
    }
}

/// Two columns, and as many pages as they need.
struct Columns {
    size: (f64, f64),
    top: f64,
    y: f64,
    second: bool,
}

impl Columns {
    fn wide(&self) -> f64 {
        (self.size.0 - 2.0 * EDGE - GAP) / 2.0
    }

    /// Where something so high begins.
    fn room(&mut self, document: &mut Document, high: f64) -> (f64, f64) {
        if self.y + high > self.size.1 - FOOT {
            if self.second {
                document.page(self.size, None, None);
                self.top = EDGE + LINE;
            }
            self.second = !self.second;
            self.y = self.top;
        }
        let x = if self.second { EDGE + self.wide() + GAP } else { EDGE };
        let place = (x, self.y);
        self.y += high;
        place
    }

    /// What follows begins a column, where there is another on this page.
    fn apart(&mut self) {
        if !self.second {
            (self.second, self.y) = (true, self.top);
        }
    }

    /// A heading stays with what follows it.
    fn heading(&mut self, document: &mut Document, told: &str) {
        let kept = 2.0 * LINE;
        let (x, y) = self.room(document, HEAD + BELOW + kept + LINE);
        self.y -= kept;
        document.part(StructRole::H2, |document| {
            document.words(plain(HEAD), (x, y + HEAD / 2.0), told);
        });
    }

    fn sentence(&mut self, document: &mut Document, told: &str) {
        let lines = broken(told, self.wide(), SMALL).len() as f64;
        let place = self.room(document, lines * LINE + BELOW / 2.0);
        let wide = self.wide();
        document.part(StructRole::P, |document| {
            document.sentence(plain(SMALL), place, wide, told);
        });
    }

    /// A box to tick, what is set or looked at, and a line to write on.
    fn row(&mut self, document: &mut Document, scene: &Scene, row: &Row, measured: bool) {
        let told = row.text(&scene.printer);
        let writes = measured && row.value.is_some();
        let wide = self.wide() - BOX - LETTER / 2.0 - if writes { WRITE + 2.0 } else { 0.0 };
        let lines = broken(&told, wide, SMALL).len() as f64;
        let (x, y) = self.room(document, lines * LINE + BELOW);
        let end = x + self.wide();
        document.outline(hair(BLACK), [x, y - BOX * 0.8, x + BOX, y + BOX * 0.2]);
        if writes {
            document.lines(hair(BLACK), &[[end - WRITE, y + 0.6, end, y + 0.6]]);
        }
        document.part(StructRole::P, |document| {
            document.sentence(plain(SMALL), (x + BOX + LETTER / 2.0, y), wide, &told);
        });
    }
}

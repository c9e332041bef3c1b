//! The design's own file: what stands in it, where it and the book differ, its pages as boxes to scale.

use super::Scene;
use super::brought::Brought;
use crate::intake::{
    Assumed, Binding, Damage, Delivery, Edge, Facts, Found, Offered, PageRange, Part, Sort, Source,
    Sources, Unreadable, compare,
};
use crate::job::ImagesMovedBy;
use crate::plan::Folio;
use crate::units::{Measure, Size, fixed, trimmed};
use crate::view::design_pages::{Boxes, worst_first};
use crate::view::{Printer, Reading};
use crate::words::{Say, say};
use maud::{Markup, html};

/// The name of the field for a password.
pub const PASSWORD: &str = "design-password";
/// Pages shown at first, and how many more each time.
pub const SHOWN: usize = 12;

/// What stands there before any file has come.
#[must_use]
pub fn design(printer: &Printer) -> Markup {
    let region = Brought {
        id: "design",
        words: ["design.heading", "design.summary", "design.what", "design.private", "design.open"],
        file: ("design-file", ".pdf,application/pdf"),
    };
    let body = html! { div id="design-state" {} div id="design-found" {} };
    region.region(&html! {}, &body, printer)
}

/// A file that has come.
#[derive(Debug, Clone, Copy)]
pub struct Come<'a> {
    /// Its name.
    pub name: &'a str,
    /// What stands in it.
    pub facts: &'a Facts,
}

/// Both parts, and how they are shown.
#[derive(Debug, Clone, Copy)]
pub struct Shown<'a> {
    /// The inside, perhaps with the cover around it.
    pub inside: Option<Come<'a>>,
    /// The cover as a file of its own.
    pub cover: Option<Come<'a>>,
    /// The edge that is bound.
    pub binding: Binding,
    /// So many pages are drawn.
    pub pages: usize,
}

impl<'a> Shown<'a> {
    /// What can be held against a book.
    #[must_use]
    pub fn delivery(&self) -> Option<Delivery<'a>> {
        let inside = self.inside?.facts;
        Some(Delivery { inside, cover: self.cover.map(|come| come.facts) })
    }
}

/// Work that takes a while: a bar and a button to stop. It stands still while the bar moves.
#[must_use]
pub fn working(told: &Say, printer: &Printer) -> Markup {
    html! {
        p { (printer.html(told)) }
        progress id="design-progress" max="100" aria-label=(printer.text(told)) {}
        p class="files" {
            button type="button" id="act-design-stop" data-act="design-stop" { (printer.word("design.stop")) }
        }
    }
}

/// Why a file was not read. One that is locked asks for its password.
#[must_use]
pub fn refused(name: &str, why: Unreadable, tried: bool, printer: &Printer) -> Markup {
    let case = match why {
        Unreadable::Empty => "empty",
        Unreadable::NoPdf => "no-pdf",
        Unreadable::Password if tried => "password-wrong",
        Unreadable::Password => "password",
        Unreadable::Cipher => "cipher",
        Unreadable::Broken => "broken",
    };
    html! {
        p { (printer.html(&say(format!("design.refused.{case}")).text("name", name))) }
        p { (printer.word(&format!("design.refused.{case}.repair"))) }
        @if why == Unreadable::Password {
            p class="files" {
                label for=(PASSWORD) { (printer.word("design.password")) }
                " " input type="password" id=(PASSWORD) name=(PASSWORD) autocomplete="off";
                " " button type="button" id="act-design-unlock" data-act="design-unlock" { (printer.word("design.unlock")) }
            }
        }
    }
}

/// What has come, without any book beside it.
#[must_use]
pub fn came(shown: &Shown, printer: &Printer) -> Markup {
    html! {
        ul class="facts" {
            @for (part, come) in [("inside", shown.inside), ("cover", shown.cover)] {
                @if let Some(come) = come {
                    li {
                        strong { (printer.text(&say(format!("design.{part}")).text("name", come.name))) } " "
                        @for told in facts(come.facts) { (printer.html(&told)) " " }
                        @if come.facts.encrypted { (printer.word("design.encrypted")) }
                        @for damage in &come.facts.damage { " " (printer.html(&broken(*damage))) }
                    }
                }
            }
        }
        p class="files" {
            button type="button" id="act-design-adopt" data-act="design-adopt" { (printer.word("design.adopt")) }
            button type="button" id="act-design-swap" data-act="design-swap" {
                (printer.word(if shown.cover.is_some() { "design.to-inside" } else { "design.to-cover" }))
            }
            button type="button" id="act-design-close" data-act="design-close" { (printer.word("design.close")) }
        }
    }
}

fn facts(facts: &Facts) -> Vec<Say> {
    let offered = Offered::of(&Delivery { inside: facts, cover: None });
    let pages = say("design.facts").count("pages", Measure::count(offered.pages));
    let size = offered
        .size
        .map(|size| say("design.facts.size").put("width", size.width).put("height", size.height));
    let bleed = offered.bleed.map(|bleed| say("design.facts.bleed").put("bleed", bleed));
    core::iter::once(pages).chain(size).chain(bleed).collect()
}

fn broken(damage: Damage) -> Say {
    match damage {
        Damage::Before(bytes) => say("design.damage.before").put("bytes", Measure::count(bytes)),
        Damage::NoEnd => say("design.damage.end"),
        Damage::Index => say("design.damage.index"),
        Damage::Pages { said, found } => say("design.damage.pages")
            .put("said", Measure::count(said))
            .put("found", Measure::count(found)),
    }
}

/// The file held against the book: what differs, what may be saved, pages as boxes.
#[must_use]
pub fn compared(shown: &Shown, scene: &Scene) -> Markup {
    let Some(delivery) = shown.delivery() else {
        return html! { p { (scene.word("design.inside-missing")) } };
    };
    let found = compare(&delivery, scene.job, scene.plan, shown.binding);
    let sources = Sources::of(&delivery, scene.job, scene.plan, shown.binding);
    html! {
        @if found.iter().all(Found::is_of_cover) {
            @let inside = found.iter().any(|one| matches!(one, Found::CoverMissing));
            p class="fine" { (scene.word(if inside { "design.fine.inside" } else { "design.fine" })) }
        }
        @if !found.is_empty() {
            ul class="found" { @for one in &found { li { (scene.tell(&sentence(one, scene))) } } }
        }
        p class="hint" { (scene.word("design.unseen")) }
        (handed(scene))
        (thumbnails(shown, &delivery, &sources, scene))
    }
}

fn handed(scene: &Scene) -> Markup {
    let makers = scene.reading != Reading::Client;
    let way = scene.plan.results.layout.chosen().filter(|way| way.refusal.is_none());
    html! {
        div class="kind" role="group" aria-labelledby="handed-design" {
            h3 id="handed-design" { (scene.word("handed.pdf")) }
            button type="button" id="act-design-proof" data-act="design-proof" { (scene.word("design.save-proof")) }
            @if makers && way.is_some() {
                button type="button" id="act-design-pairs" data-act="design-pairs" { (scene.word("design.save-pairs")) }
            }
        }
        @if makers {
            p class="hint" {
                @if way.is_none() { (scene.word("design.no-sheet")) " " }
                (scene.word(match scene.job.images {
                    ImagesMovedBy::Shop => "design.moved.shop",
                    ImagesMovedBy::Designer => "design.moved.designer",
                    ImagesMovedBy::Nobody => "design.moved.nobody",
                }))
            }
        }
    }
}

/// One difference in words.
fn sentence(found: &Found, scene: &Scene) -> Say {
    let count = |number: u32| Measure::count(number);
    let job = scene.job.size;
    match found {
        Found::Count(part, came, wanted) => {
            say(format!("design.count.{}", name(*part))).put("came", *came).put("wanted", *wanted)
        }
        Found::CoverWithin => say("design.cover-within"),
        Found::CoverMissing => say("design.cover-missing"),
        Found::CoverUnasked => say("design.cover-unasked"),
        Found::Blanks(first, last) if first == last => {
            say("design.blank").put("page", count(*first))
        }
        Found::Blanks(first, last) => {
            say("design.blanks").put("first", count(*first)).put("last", count(*last))
        }
        Found::Sized(part, sort, size, ranges) => {
            let case = match sort {
                Sort::Turned => "turned",
                Sort::Spread => "spread",
                Sort::Half => "half",
                Sort::Page | Sort::Other => "odd",
            };
            let Size { width, height } = *size;
            say(format!("design.sized.{case}"))
                .say("pages", pages(*part, ranges))
                .put("width", width)
                .put("height", height)
                .put("wanted_width", job.width)
                .put("wanted_height", job.height)
        }
        Found::Mixed(part, sizes) => {
            say(format!("design.mixed.{}", name(*part))).put("sizes", count(*sizes))
        }
        Found::Taken(part, assumed, ranges) => {
            let case = match assumed {
                Assumed::Bled => "bled",
                Assumed::Crop => "crop",
                Assumed::Page | Assumed::Stated => "page",
                Assumed::Nothing => "nothing",
            };
            say(format!("design.taken.{case}")).say("pages", pages(*part, ranges))
        }
        Found::NoBleed(part, edges, ranges) => say("design.no-bleed")
            .say("pages", pages(*part, ranges))
            .text("edges", edge_names(edges, scene)),
        Found::ShortBleed(part, edges, least, wanted, ranges) => say("design.short-bleed")
            .say("pages", pages(*part, ranges))
            .text("edges", edge_names(edges, scene))
            .put("least", *least)
            .put("wanted", *wanted),
    }
}

const fn name(part: Part) -> &'static str {
    match part {
        Part::Inside => "inside",
        Part::Cover => "cover",
    }
}

/// Pages of a file by their numbers in it.
fn pages(part: Part, ranges: &[PageRange]) -> Say {
    let range = |(first, last): &PageRange| {
        if first == last { first.to_string() } else { format!("{first}–{last}") }
    };
    let one = matches!(ranges, [(first, last)] if first == last);
    let key = match (part, one) {
        (Part::Inside, true) => "design.page",
        (Part::Inside, false) => "design.pages",
        (Part::Cover, true) => "design.cover-page",
        (Part::Cover, false) => "design.cover-pages",
    };
    say(key).text("list", ranges.iter().map(range).collect::<Vec<_>>().join(", "))
}

fn edge_names(edges: &[Edge], scene: &Scene) -> String {
    let name = |edge: &Edge| {
        scene.printer.word(match edge {
            Edge::Head => "design.edge.head",
            Edge::Foot => "design.edge.foot",
            Edge::Face => "design.edge.face",
            Edge::Spine => "design.edge.spine",
        })
    };
    edges.iter().map(name).collect::<Vec<_>>().join(", ")
}

fn thumbnails(shown: &Shown, delivery: &Delivery, sources: &Sources, scene: &Scene) -> Markup {
    let pages = worst_first(delivery, sources, shown.binding, scene);
    html! {
        @if !pages.is_empty() {
            p { (scene.word("design.worst")) }
            ol class="boxes" {
                @for page in pages.iter().take(shown.pages) { li { (thumbnail(page, scene)) } }
            }
            @if pages.len() > shown.pages {
                p class="files" {
                    button type="button" id="act-design-more" data-act="design-more" {
                        (scene.tell(&say("design.more").put("shown", Measure::count(shown.pages as u32))
                            .put("all", Measure::count(pages.len() as u32))))
                    }
                }
            }
        }
    }
}

/// A page as boxes: the sheet of the file, the bleed, the cut, and what is safe.
fn thumbnail(page: &Boxes, scene: &Scene) -> Markup {
    let Source { part, page: number, .. } = page.source;
    let whole = page.sheet;
    // Where the file counts as the book does, its number says nothing new.
    let same = page.folio == Folio::Page(number + 1) && part == Part::Inside;
    let label = say(format!("design.thumb.{}", if same { "same" } else { name(part) }))
        .text("folio", scene.folio(page.folio))
        .put("page", Measure::count(number + 1));
    let draw = |class: &str, frame: crate::intake::Frame| {
        html! {
            rect class=(class) x=(number_of(frame.left - whole.left)) y=(number_of(whole.top - frame.top))
                width=(number_of(frame.width())) height=(number_of(frame.height())) {}
        }
    };
    html! {
        figure {
            svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label=(scene.printer.text(&label))
                viewBox={ "-1 -1 " (number_of(whole.width() + 2.0)) " " (number_of(whole.height() + 2.0)) } {
                (draw("sheet", whole))
                (draw("bleed", page.source.reach))
                (draw("cut", page.source.frame))
                @if let Some(safe) = page.safe { (draw("safe", safe)) }
            }
            figcaption { (scene.tell(&label)) }
        }
    }
}

/// Hundredths of a millimetre are finer than any screen.
fn number_of(length: f64) -> String {
    trimmed(fixed(length, 2))
}

//! The draft of a job to a [`Job`], and for every field a note of how it was understood.

use super::assemble::assemble;
use super::fields::SCHEMA;
use super::{Dummy, HeadFoot, Identity, ImagesMovedBy, Job, Pairs, Role, RouteWish, Spine};
use crate::draft::{Draft, Field, FieldError, Group, Kind, Value, read_text};
use crate::entry::{
    Choice, Cover, Fault, LengthUnit, PageCount, Question, Reading, kind_choices, no_paper,
    pages_echo, same_letters,
};
use crate::paper::{Grain, Stock};
use crate::shop::Shop;
use crate::units::{Copies, Gram, Mm, Pages, Second, Size, in_order};
use crate::words::{Say, say};
use std::collections::BTreeMap;

/// What stands beside a field once it has been read.
#[derive(Debug, Clone, PartialEq)]
pub enum Note {
    /// How it was understood.
    Echo(Say),
    /// How it was understood, and what would narrow the doubt.
    Narrow(Say, Vec<Choice>),
    /// It is not complete yet; no fault while somebody types.
    Incomplete,
    /// It can mean two things.
    Ask(Question),
    /// It cannot be right.
    Wrong(Fault),
}

/// A draft, read: the job if it is complete, and a note for each field that has a text.
#[derive(Debug, Clone, PartialEq)]
pub struct JobReading {
    /// The job; nothing while a field that it needs is missing, unclear or wrong.
    pub job: Option<Job>,
    /// Notes by field path.
    pub notes: BTreeMap<String, Note>,
    /// Fields the job cannot do without that still have no text.
    pub missing: Vec<&'static str>,
}

impl JobReading {
    /// Everything that cannot be right or is not clear, as a list for files and embedders.
    #[must_use]
    pub fn errors(&self, draft: &Draft) -> Vec<FieldError> {
        let error = |path: &str, wrong: Say, repair: Say| {
            FieldError::new(path, draft.get(path), wrong, repair)
        };
        let unclear = self.notes.iter().filter_map(|(path, note)| match note {
            Note::Echo(_) | Note::Narrow(..) => None,
            Note::Incomplete if draft.get(path).is_empty() => {
                Some(error(path, say("file.missing"), say("file.missing.repair")))
            }
            Note::Incomplete => {
                Some(error(path, say("file.unclear"), SCHEMA.field(path)?.kind.example()))
            }
            Note::Ask(question) => {
                Some(error(path, question.ask.clone(), say("file.unclear.repair")))
            }
            Note::Wrong(fault) => Some(error(path, fault.wrong.clone(), fault.repair.clone())),
        });
        let missing = self
            .missing
            .iter()
            .map(|path| error(path, say("file.missing"), say("file.missing.repair")));
        let errors: Vec<FieldError> = unclear.chain(missing).collect();
        in_order(&errors, |one, other| place_in_form(&one.path).cmp(&place_in_form(&other.path)))
    }
}

/// Where a field stands in the form: the main ones first, then those of further sections, section by
/// section, then what is rarely needed.
fn place_in_form(path: &str) -> (usize, usize, usize) {
    if let Some((index, id)) = path.strip_prefix("sections.").and_then(|path| path.split_once('.'))
    {
        let fields = SCHEMA.groups.iter().flat_map(|(_, fields)| fields.iter());
        let place = fields.take_while(|field| field.id != id).count();
        return (1, index.parse().unwrap_or(usize::MAX), place);
    }
    let place = SCHEMA.fields.iter().take_while(|field| field.id != path).count();
    let main = SCHEMA.fields.get(place).is_some_and(|field| field.group == Group::Main);
    (if main { 0 } else { 2 }, place, 0)
}

/// Reads a draft against a shop, whose papers and lines it may name.
#[must_use]
pub fn read(draft: &Draft, shop: &Shop) -> JobReading {
    let mut reader = Reader {
        draft,
        shop,
        unit: LengthUnit::of(draft.get("units")),
        notes: BTreeMap::new(),
        missing: Vec::new(),
        broken: false,
    };
    let job = reader.job().filter(|_| !reader.broken);
    JobReading { job, notes: reader.notes, missing: reader.missing }
}

/// Sets of each section that have come in.
struct Supplied {
    inside: Option<u32>,
    cover: Option<u32>,
    inserts: Vec<Option<u32>>,
}

impl Supplied {
    fn put_into(self, job: &mut Job) {
        let mut inserts = self.inserts.into_iter();
        for section in &mut job.sections {
            section.supplied = match section.role {
                Role::Inside => self.inside,
                Role::Cover => self.cover,
                Role::Insert => inserts.next().flatten(),
            };
        }
    }
}

/// Reads field after field, keeping a note of each.
struct Reader<'a> {
    draft: &'a Draft,
    shop: &'a Shop,
    unit: LengthUnit,
    notes: BTreeMap<String, Note>,
    missing: Vec<&'static str>,
    broken: bool,
}

/// A further section as read: pages, paper, and whether it lies around the main section.
pub(super) type Insert = (Pages, Stock, bool);

impl Reader<'_> {
    fn job(&mut self) -> Option<Job> {
        let count = self.pages("pages");
        let size = self.size("size");
        let paper = self.paper("paper", "grain");
        let cover = self.paper("cover", "cover_grain");
        let copies = self.copies("copies");
        let inserts = self.inserts();
        let supplied = self.supplied();
        let line = self.line();
        let defaults = &self.shop.defaults;
        let (bleed, safe) = (self.length("bleed"), self.length("safe"));
        let bleeds = self.yes("bleeds");
        let top_bound = self.choice("bound_edge") == "top";
        let cuts_head_foot = self.shop.lines.get(line).is_some_and(|line| line.cuts_head_foot);
        let head_foot = match self.choice("head_foot") {
            "before" => HeadFoot::Before,
            "after" => HeadFoot::After,
            _ if cuts_head_foot => HeadFoot::OnLine,
            _ => HeadFoot::Before,
        };
        let settings = Job {
            identity: Identity {
                title: self.text("title"),
                customer: self.text("customer"),
                date: self.text("date"),
                by: self.text("by"),
            },
            sections: Vec::new(),
            numbering: super::Numbering::SelfCover,
            size: Size::default(),
            copies: None,
            spine: if self.choice("spine") == "square" { Spine::Square } else { Spine::Round },
            spine_text: self.yes("spine_text"),
            bleed: bleeds.then_some(bleed.unwrap_or(defaults.bleed)),
            safe: safe.unwrap_or(defaults.safe),
            tolerance: self.length("tolerance").unwrap_or(defaults.tolerance),
            images: match self.choice("images") {
                "designer" => ImagesMovedBy::Designer,
                "nobody" => ImagesMovedBy::Nobody,
                _ => ImagesMovedBy::Shop,
            },
            art_face: self.length("art_face"),
            folio_face: self.length("folio_face"),
            face_cut: self.length("face_cut"),
            head_trim: self.length("head_trim").unwrap_or(defaults.head_trim),
            foot_trim: self.length("foot_trim").unwrap_or(defaults.foot_trim),
            gutter: self.length("gutter").unwrap_or(defaults.gutter),
            head_foot,
            wrapper: Gram(self.number("wrapper").unwrap_or_default()),
            press_sheet: self.press_sheet(),
            route: match self.choice("route") {
                "cut" => RouteWish::CutFirst,
                "straight" => RouteWish::Straight,
                _ => RouteWish::Auto,
            },
            pairs: match self.choice("pairs") {
                "head-to-head" => Pairs::HeadToHead,
                _ => Pairs::HeadToFoot,
            },
            copies_up: self.number("copies_up").map_or(1, |up| up as u32),
            stitches: self.whole("stitches"),
            loops: self.yes("loops"),
            start: self.number("start").map(Second),
            line,
            dummy: Dummy {
                closed: self.length("dummy_thickness"),
                push_out: self.length("dummy_push_out"),
                width: None,
            },
            first_off: Dummy {
                closed: self.length("first_thickness"),
                push_out: self.length("first_push_out"),
                width: self.length("first_width"),
            },
        };
        let (count, size, paper) = (count?, size?, paper?);
        self.echo_cover(&count, cover.as_ref());
        let size = if top_bound { size.turned() } else { size };
        let mut job = assemble(settings, &count, size, copies, paper, cover, inserts)?;
        supplied.put_into(&mut job);
        Some(job)
    }

    /// Sets that have come in. Inserts in the order in which they lie in the book.
    fn supplied(&mut self) -> Supplied {
        let mut typed = Vec::new();
        for index in 0..self.draft.members("sections") {
            let around = self.lies_around(index);
            typed.push((around, self.whole(&format!("sections.{index}.supplied"))));
        }
        let lying = |out: bool| typed.iter().filter(move |(around, _)| *around == out);
        Supplied {
            inside: self.whole("supplied_inside"),
            cover: self.whole("supplied_cover"),
            inserts: lying(true).chain(lying(false)).map(|(_, supplied)| *supplied).collect(),
        }
    }

    fn whole(&mut self, path: &str) -> Option<u32> {
        self.number(path).map(|number| number as u32)
    }

    /// Says in words what a cover without a paper means, since it decides the page count.
    fn echo_cover(&mut self, count: &PageCount, cover: Option<&Stock>) {
        if no_paper(self.draft.get("cover")) {
            let key = match count.cover {
                Cover::Plus => "entry.cover.same",
                Cover::Counted | Cover::Unsaid => "entry.cover.self",
            };
            self.notes.insert("cover".to_owned(), Note::Echo(say(key)));
        } else if cover.is_some() && count.cover == Cover::Unsaid {
            let total = count.inside + Pages(crate::units::PAGES_PER_SHEET);
            let echo = match count.inside.blanks() {
                Pages(0) => {
                    say("entry.pages.plus-cover").put("inside", count.inside).put("total", total)
                }
                _ => pages_echo(PageCount { cover: Cover::Plus, ..*count }),
            };
            self.notes.insert("pages".to_owned(), Note::Echo(echo));
        }
    }

    /// Reads a field; its default counts where nothing was typed. Keeps the note.
    fn value(&mut self, path: &str) -> Option<Value> {
        let field: &'static Field = SCHEMA.field(path)?;
        let typed = self.draft.get(path);
        if typed.is_empty()
            && let Kind::Choice(options) = field.kind
        {
            // Nothing to read and nobody to tell: lists of titles are mostly made of these.
            return options
                .iter()
                .find(|option| **option == field.default)
                .map(|word| Value::Choice(word));
        }
        let text = if typed.is_empty() { field.default } else { typed };
        if text.is_empty() {
            return None;
        }
        let reading = read_text(field.kind, text, self.unit);
        self.note(path, reading)
    }

    fn note<T>(&mut self, path: &str, reading: Reading<T>) -> Option<T> {
        let (note, value) = match reading {
            Reading::Understood(value, echo) => (Note::Echo(echo), Some(value)),
            Reading::Incomplete => (Note::Incomplete, None),
            Reading::Ask(question) => (Note::Ask(question), None),
            Reading::Wrong(fault) => (Note::Wrong(fault), None),
        };
        if value.is_none() {
            self.broken = true;
        }
        if !self.draft.get(path).is_empty() {
            self.notes.insert(path.to_owned(), note);
        }
        value
    }

    /// Remembers that a field the job needs has no text.
    fn need<T>(&mut self, path: &'static str, value: Option<T>) -> Option<T> {
        if value.is_none() && self.draft.get(path).trim().is_empty() {
            self.missing.push(path);
        }
        value
    }

    fn pages(&mut self, path: &'static str) -> Option<PageCount> {
        let value = match self.value(path) {
            Some(Value::Pages(count)) => Some(count),
            _ => None,
        };
        self.need(path, value)
    }

    fn size(&mut self, path: &'static str) -> Option<Size> {
        let value = match self.value(path) {
            Some(Value::Size(size)) => Some(size),
            _ => None,
        };
        self.need(path, value)
    }

    /// A paper by the shop's own name, or described.
    fn paper(&mut self, path: &'static str, grain: &str) -> Option<Stock> {
        let grain = match self.choice(grain) {
            "along" => Grain::AlongSpine,
            "across" => Grain::AcrossSpine,
            _ => Grain::Unknown,
        };
        let stock = self.stock(path);
        let stock = if path == "paper" { self.need(path, stock) } else { stock };
        stock.map(|stock| match grain {
            Grain::Unknown => stock,
            said => Stock { grain: said, ..stock },
        })
    }

    fn stock(&mut self, path: &str) -> Option<Stock> {
        let typed = self.draft.get(path).trim();
        let own = self.shop.stocks.iter().find(|stock| same_letters(&stock.name, typed));
        if let Some(stock) = own {
            let echo = say("entry.paper.own").typed("paper", stock.typed.clone());
            return self.note(path, Reading::Understood(stock.clone(), echo));
        }
        if path == "cover" && no_paper(typed) {
            return None;
        }
        let stock = match self.value(path) {
            Some(Value::Paper(stock)) => stock,
            _ => return None,
        };
        let choices = kind_choices(&stock);
        if let Some(note) = self.notes.get_mut(path)
            && let Note::Echo(echo) = note
            && !choices.is_empty()
        {
            *note = Note::Narrow(echo.clone(), choices);
        }
        Some(stock)
    }

    fn copies(&mut self, path: &'static str) -> Option<Copies> {
        match self.value(path) {
            Some(Value::Copies(copies)) => Some(copies),
            _ => None,
        }
    }

    fn line(&mut self) -> usize {
        let name = self.draft.get("line");
        if name.is_empty() {
            return 0;
        }
        let reading = match self.shop.line(name) {
            Some(index) => Reading::Understood(index, say("entry.line.echo").text("line", name)),
            None => Reading::Wrong(Fault {
                wrong: say("entry.line.unknown").text("given", name),
                repair: say("entry.line.repair").text("lines", self.line_names()),
            }),
        };
        self.note("line", reading).unwrap_or_default()
    }

    /// The press sheet asked for, by its name; capitals do not matter.
    fn press_sheet(&mut self) -> Option<usize> {
        let name = self.draft.get("press_sheet").trim();
        if name.is_empty() {
            return None;
        }
        let sheets = &self.shop.press_sheets;
        let known = sheets.iter().position(|sheet| same_letters(&sheet.name, name));
        let reading = match known.and_then(|index| Some((index, sheets.get(index)?))) {
            Some((index, sheet)) => Reading::Understood(
                index,
                say("entry.press_sheet.echo")
                    .put("width", sheet.size.width)
                    .put("height", sheet.size.height),
            ),
            None => {
                let names: Vec<&str> = sheets.iter().map(|sheet| sheet.name.as_str()).collect();
                Reading::Wrong(Fault {
                    wrong: say("entry.press_sheet.unknown").text("given", name),
                    repair: say("entry.press_sheet.repair").text("names", names.join(" · ")),
                })
            }
        };
        self.note("press_sheet", reading)
    }

    fn line_names(&self) -> String {
        let names: Vec<&str> = self.shop.lines.iter().map(|line| &*line.name).collect();
        names.join(" · ")
    }

    fn inserts(&mut self) -> Vec<Insert> {
        let mut inserts = Vec::new();
        for index in 0..self.draft.members("sections") {
            let at = |field: &str| format!("sections.{index}.{field}");
            let around = self.lies_around(index);
            let pages = self.number(&at("pages")).map(|pages| Pages(pages as u32));
            if let Some(pages) = pages {
                self.notes.insert(
                    at("pages"),
                    Note::Echo(pages_echo(PageCount { inside: pages, cover: Cover::Unsaid })),
                );
            }
            match (pages, self.stock(&at("paper"))) {
                (Some(pages), Some(stock)) => inserts.push((pages, stock, around)),
                _ => {
                    for field in ["pages", "paper"] {
                        self.notes.entry(at(field)).or_insert(Note::Incomplete);
                    }
                    self.broken = true;
                }
            }
        }
        inserts
    }

    fn lies_around(&mut self, index: usize) -> bool {
        self.choice(&format!("sections.{index}.place")) == "around"
    }

    fn length(&mut self, path: &str) -> Option<Mm> {
        self.number(path).map(Mm)
    }

    fn number(&mut self, path: &str) -> Option<f64> {
        match self.value(path)? {
            Value::Number(number) => Some(number),
            _ => None,
        }
    }

    fn choice(&mut self, path: &str) -> &'static str {
        match self.value(path) {
            Some(Value::Choice(word)) => word,
            _ => "",
        }
    }

    fn yes(&mut self, path: &str) -> bool {
        self.choice(path) == "yes"
    }

    fn text(&mut self, path: &str) -> String {
        match self.value(path) {
            Some(Value::Text(text)) => text,
            _ => String::new(),
        }
    }
}

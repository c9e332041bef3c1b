//! The job as XJDF 2.2, the open standard by which programs and machines of the trade tell each other
//! what a job is (CIP4, XJDF Specification; names, order and types by its 2.x schema).
//!
//! Lengths are points of 1/72 in, thickness of media is µm, grammage g/m². The markup library escapes
//! whatever comes from outside; with every element closed, what it writes is XML.

use crate::job::{ImagesMovedBy, Job, Role, Section, Spine};
use crate::plan::{Grain, Leaf, Plan};
use crate::units::{Copies, MM_PER_INCH, Mm, POINTS_PER_INCH, Size, fixed, trimmed};
use crate::view::Printer;
use maud::{Markup, html};

/// The namespace of every 2.x version.
const NAMESPACE: &str = "http://www.CIP4.org/JDFSchema_2_0";
/// The version that is written.
const VERSION: &str = "2.2";
/// What is done, in the order of the line.
const TYPES: [&str; 4] = ["Collecting", "Stitching", "Folding", "Trimming"];
/// The catalogue's name for one fold that makes four pages.
const ONE_FOLD: &str = "F4-1";
/// Decimals of a number: a thousandth of a point is less than half a micrometre.
const PLACES: usize = 3;
/// Micrometres in a millimetre.
const MICROMETRES: f64 = 1000.0;

/// The job and its plan as one document.
#[must_use]
pub fn xjdf(job: &Job, plan: &Plan, printer: &Printer) -> String {
    let ticket = Ticket { job, plan };
    let written = html! {
        XJDF xmlns=(NAMESPACE) DescriptiveName=[said(&job.identity.title)]
            JobID=(name(&job.identity.title)) JobPartID="Finishing" Types=(TYPES.join(" ")) Version=(VERSION) {
            Comment { (printer.word("cautions.dummy")) " " (printer.word("cautions.machine")) }
            ProductList {
                (ticket.booklet())
                @if let [_, _, ..] = job.sections.as_slice() { (ticket.parts()) }
            }
            @if !job.identity.customer.is_empty() {
                ResourceSet Name="Contact" Usage="Input" {
                    Resource {
                        Part ContactType="Customer" {}
                        Contact { Company OrganizationName=(plain(&job.identity.customer)) {} }
                    }
                }
            }
            (ticket.assembly())
            (ticket.layout())
            (ticket.stitching())
            (ticket.trimming())
            (ticket.media())
            (ticket.components())
        }
    };
    // A line for each element. Nothing may stand within an empty one, not even the end of a line.
    let lines = written.into_string().replace("><", ">\n<").replace(">\n</", "></");
    format!("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n{lines}\n")
}

/// What the elements are written from.
struct Ticket<'a> {
    job: &'a Job,
    plan: &'a Plan,
}

impl Ticket<'_> {
    /// The whole product. A book bound at the top is told as it lies when the spine is on the left.
    fn booklet(&self) -> Markup {
        let sections = self.job.sections.as_slice();
        let ids: Vec<String> = (0..sections.len()).map(|index| self.id(index)).collect();
        // The standard has no reference to a single part: a book of one section is that section.
        let (refs, alone) = match sections {
            [section] => (None, Some(section)),
            _ => (Some(ids.join(" ")), None),
        };
        html! {
            Product ID="BOOKLET" Amount=[self.job.copies.map(|copies| copies.get())] IsRoot="true" ProductType="Booklet"
                DescriptiveName=[said(&self.job.identity.title)] {
                Intent Name="BindingIntent" {
                    BindingIntent BindingOrder="Collecting" BindingSide="Left"
                        BindingType="SaddleStitch" ChildRefs=[refs] {
                        SaddleStitching StapleShape=(self.staple())
                            StitchNumber=(self.plan.results.stitches.placement.per_copy) {}
                    }
                }
                @if let Some(section) = alone { (self.intents(section)) }
            }
        }
    }

    /// The sections of a product of several.
    fn parts(&self) -> Markup {
        let kind = |section: &Section| match section.role {
            Role::Cover => "Cover",
            Role::Inside => "Body",
            Role::Insert => "Insert",
        };
        html! {
            @for (index, section) in self.job.sections.iter().enumerate() {
                Product ID=(self.id(index)) IsRoot="false" ProductType=(kind(section)) {
                    (self.intents(section))
                }
            }
        }
    }

    /// Pages and paper of a section.
    fn intents(&self, section: &Section) -> Markup {
        let finished = format!("{} 0", pair(self.job.size));
        html! {
            Intent Name="LayoutIntent" {
                LayoutIntent Bleed=[self.job.bleed.map(points)] FinishedDimensions=(finished)
                    Pages=(section.pages.get()) Sides="TwoSidedHeadToHead" {}
            }
            Intent Name="MediaIntent" {
                MediaIntent MediaQuality=[said(&section.stock.typed)] MediaType="Paper"
                    Thickness=(thickness(section)) Weight=[weight(section)] {}
            }
        }
    }

    /// Every folded sheet, outermost first, and how it is folded.
    fn assembly(&self) -> Markup {
        let leaves = &self.plan.results.leaves;
        let all: Vec<String> = leaves.iter().map(sheet).collect();
        html! {
            ResourceSet Name="Assembly" Usage="Input" {
                Resource { Assembly BinderySignatureIDs=(all.join(" ")) Order="Collecting" {} }
            }
            ResourceSet Name="BinderySignature" Usage="Input" {
                @for id in &all {
                    Resource {
                        Part BinderySignatureID=(id) {}
                        BinderySignature BinderySignatureSize=(pair(self.plan.results.trim.flat))
                            BinderySignatureType="Fold" FoldCatalog=(ONE_FOLD) {}
                    }
                }
            }
            ResourceSet Name="FoldingParams" Usage="Input" {
                Resource { FoldingParams FoldCatalog=(ONE_FOLD) {} }
            }
        }
    }

    /// How far pages move toward the fold: the push-out of each section's outermost and innermost
    /// sheet. Nothing where the pictures come moved already, or are to stay.
    fn layout(&self) -> Markup {
        let moves = self.job.images == ImagesMovedBy::Shop;
        let shift = |leaf: Option<&Leaf>| {
            leaf.filter(|_| moves).map_or(Mm::ZERO, |leaf| leaf.push_out.nominal)
        };
        html! {
            ResourceSet Name="Layout" Usage="Input" {
                @for (index, section) in self.job.sections.iter().enumerate() {
                    @let leaves = self.leaves(index);
                    Resource {
                        Part SheetName=(self.id(index)) {}
                        Layout InnermostShingling=(points(shift(leaves.last())))
                            OutermostShingling=(points(shift(leaves.first())))
                            PaperRef=(paper(section)) {
                            @for leaf in leaves { Position BinderySignatureID=(sheet(leaf)) {} }
                        }
                    }
                }
            }
        }
    }

    /// Stitches from the middle of the trimmed spine, a plus towards the head.
    fn stitching(&self) -> Markup {
        let stitches = &self.plan.results.stitches;
        let middle = self.job.size.height / 2.0;
        let first = stitches.placement.stitches.iter().rev().filter(|stitch| stitch.copy == 0);
        let places: Vec<String> = first.map(|stitch| points(middle - stitch.from_head)).collect();
        let back = if self.job.spine == Spine::Square { "Flat" } else { "Round" };
        html! {
            ResourceSet Name="StitchingParams" Usage="Input" {
                Resource {
                    StitchingParams NumberOfStitches=(stitches.placement.per_copy)
                        StapleShape=(self.staple()) StitchOrigin="TrimBoxCenter"
                        StitchPositions=(places.join(" ")) StitchType="Saddle"
                        StitchWidth=(points(stitches.wire.crown)) TightBacking=(back)
                        WireGauge=(points(stitches.wire.diameter)) {}
                }
            }
        }
    }

    fn trimming(&self) -> Markup {
        let Size { width, height } = self.job.size;
        html! {
            ResourceSet Name="TrimmingParams" Usage="Input" {
                Resource { TrimmingParams Height=(points(height)) Width=(points(width)) {} }
            }
        }
    }

    /// Each paper once: on the press sheet that was chosen, else cut to the flat sheet.
    fn media(&self) -> Markup {
        let chosen = self.plan.results.layout.chosen().filter(|way| way.refusal.is_none());
        let size = chosen.map_or(self.plan.results.trim.flat, |way| way.press);
        let lots = self.job.sections.iter().enumerate();
        html! {
            ResourceSet Name="Media" Usage="Input" {
                @for (_, section) in lots.filter(|(index, section)| section.lot == *index) {
                    @let grain = match section.stock.grain {
                        Grain::Unknown => chosen.map_or(Grain::Unknown, |way| way.grain),
                        known => known,
                    };
                    Resource ID=(paper(section)) DescriptiveName=[said(&section.stock.typed)] {
                        Media Dimension=(pair(size)) GrainDirection=[direction(grain)]
                            MediaType="Paper" MediaUnit="Sheet" Thickness=(thickness(section))
                            Weight=[weight(section)] {}
                    }
                }
            }
        }
    }

    /// Flat sheets fed and books that come out, good ones and waste.
    fn components(&self) -> Markup {
        let results = &self.plan.results;
        let quantities = &results.run.quantities;
        let flat = results.trim.flat;
        let out = f64::from(quantities.fed) * f64::from(self.job.copies_up);
        let closed = results.stack.closed.nominal.0;
        html! {
            ResourceSet Name="Component" Usage="Input" {
                @for part in &quantities.components {
                    @if let Some(section) = self.job.sections.get(part.section) {
                        @let sheets = f64::from(part.sheets);
                        @let good = f64::from(quantities.net) * sheets;
                        Resource {
                            @if self.job.copies.is_some() {
                                AmountPool {
                                    PartAmount Amount=(number(good))
                                        Waste=(number(f64::from(part.fed) * sheets - good)) {}
                                }
                            }
                            Part SheetName=(self.id(part.section)) {}
                            Component Dimensions=(solid(flat, section.caliper.value.nominal))
                                MediaRef=(paper(section)) ProductType="FlatSheet" {}
                        }
                    }
                }
            }
            ResourceSet Name="Component" Usage="Output" {
                Resource ResourceWeight=[results.mass.map(|mass| number(mass.book.nominal.get()))] {
                    @if let Some(copies) = self.job.copies.map(Copies::as_f64) {
                        AmountPool { PartAmount Amount=(number(copies)) Waste=(number((out - copies).max(0.0))) {} }
                    }
                    Component Dimensions=(solid(self.job.size, closed)) ProductType="Booklet" {}
                }
            }
        }
    }

    fn staple(&self) -> &'static str {
        if self.job.loops { "Eyelet" } else { "Crown" }
    }

    fn leaves(&self, section: usize) -> &[Leaf] {
        let leaves = &self.plan.results.leaves;
        let begin = leaves.partition_point(|leaf| leaf.section < section);
        let end = leaves.partition_point(|leaf| leaf.section <= section);
        leaves.get(begin..end).unwrap_or_default()
    }

    /// A section's name in the document.
    fn id(&self, index: usize) -> String {
        match self.job.sections.get(index).map(|section| section.role) {
            Some(Role::Cover) => "COVER".to_owned(),
            Some(Role::Inside) => "BODY".to_owned(),
            _ => format!("INSERT-{index}"),
        }
    }
}

/// A paper's name in the document: sections of one paper share it.
fn paper(section: &Section) -> String {
    format!("PAPER-{}", section.lot)
}

/// A folded sheet's name.
fn sheet(leaf: &Leaf) -> String {
    format!("SHEET-{}", leaf.place)
}

fn direction(grain: Grain) -> Option<&'static str> {
    match grain {
        Grain::Unknown => None,
        // Sheets stand with the fold upright.
        Grain::AlongSpine => Some("YDirection"),
        Grain::AcrossSpine => Some("XDirection"),
    }
}

fn thickness(section: &Section) -> String {
    number(section.caliper.value.nominal.get() * MICROMETRES)
}

fn weight(section: &Section) -> Option<String> {
    section.grammage.map(|grammage| number(grammage.nominal.get()))
}

/// A length in points.
fn points(length: Mm) -> String {
    number(length.get() * POINTS_PER_INCH / MM_PER_INCH)
}

fn pair(size: Size) -> String {
    format!("{} {}", points(size.width), points(size.height))
}

fn solid(size: Size, thick: Mm) -> String {
    format!("{} {}", pair(size), points(thick))
}

/// A thousandth at most, without a language's signs.
fn number(value: f64) -> String {
    let text = trimmed(fixed(value, PLACES));
    if text == "-0" { "0".to_owned() } else { text }
}

/// A text without the few characters that XML cannot hold.
fn plain(text: &str) -> String {
    let held = |letter: &char| !letter.is_control() && !matches!(letter, '\u{fffe}' | '\u{ffff}');
    text.chars().filter(held).collect()
}

/// The same, or nothing.
fn said(text: &str) -> Option<String> {
    Some(plain(text)).filter(|text| !text.is_empty())
}

/// A title as the name that the standard asks for: letters, digits and hyphens.
fn name(title: &str) -> String {
    let joined: String = title
        .chars()
        .map(|letter| if letter.is_ascii_alphanumeric() { letter } else { '-' })
        .collect();
    let name = joined.split('-').filter(|word| !word.is_empty()).collect::<Vec<_>>().join("-");
    if name.is_empty() { "Book".to_owned() } else { name }
}

//! Changes as words, and as the texts that make them.

use super::asked::Asked;
use super::change::Change;
use crate::job::{HeadFoot, Spine};
use crate::units::{PAGES_PER_SHEET, Pages, digits};

/// Which wording, and what it changes to.
pub(super) fn words(
    asked: &Asked,
    change: Change,
    changes: &[Change],
) -> Option<(&'static str, String)> {
    let plain = |text: String| Some(("", text));
    match change {
        Change::Line(line) => plain(asked.shop.lines.get(line)?.name.to_string()),
        Change::Paper(index) => plain(asked.papers.get(index)?.text.clone()),
        Change::Cover(index) => plain(asked.covers.get(index)?.text.clone()),
        Change::SelfCover | Change::Pages(_) | Change::Volumes(..) => {
            plain(pages_text(asked, changes)?)
        }
        Change::Spine(spine) => Some((spine_text(spine), String::new())),
        Change::Size(index) => {
            let choice = asked.sizes.get(index)?;
            match choice.field {
                "size" => plain(choice.text.clone()),
                _ => Some((if choice.text == "top" { "top" } else { "left" }, String::new())),
            }
        }
        Change::FaceCut(None) => Some(("auto", String::new())),
        Change::FaceCut(Some(cut)) => plain(format!("{} mm", digits(cut.get()))),
        Change::HeadFoot(head_foot) => Some((head_foot_text(head_foot), String::new())),
        Change::CopiesUp(copies) => plain(copies.to_string()),
        Change::ByRule(field) => Some((field.name(), String::new())),
    }
}

const fn spine_text(spine: Spine) -> &'static str {
    match spine {
        Spine::Round => "round",
        Spine::Square => "square",
    }
}

const fn head_foot_text(head_foot: HeadFoot) -> &'static str {
    match head_foot {
        HeadFoot::OnLine => "auto",
        HeadFoot::Before => "before",
        HeadFoot::After => "after",
    }
}

/// Whether the book has a separate cover once these changes are made.
pub(super) fn separate(asked: &Asked, changes: &[Change]) -> bool {
    asked.job.cover().is_some() && !changes.contains(&Change::SelfCover)
}

pub(super) fn pages(inside: Pages, separate: bool) -> String {
    if separate {
        format!("{} + {PAGES_PER_SHEET}", inside.get())
    } else {
        inside.get().to_string()
    }
}

/// The page count once these changes are made.
fn pages_text(asked: &Asked, changes: &[Change]) -> Option<String> {
    let main = asked.job.main_section()?;
    let inside = changes.iter().find_map(|change| match change {
        Change::Pages(pages) | Change::Volumes(pages, _) => Some(*pages),
        _ => None,
    });
    let counted_in = asked.job.cover().is_some() && !separate(asked, changes);
    let on_top = Pages(if counted_in { PAGES_PER_SHEET } else { 0 });
    Some(pages(inside.unwrap_or(main.pages) + on_top, separate(asked, changes)))
}

/// What to type for these changes.
pub(super) fn edits(asked: &Asked, changes: &[Change]) -> Vec<(String, String)> {
    let mut out: Vec<(String, String)> = Vec::new();
    let mut put = |path: &str, text: String| {
        if asked.draft.get(path) != text {
            out.retain(|(known, _)| known != path);
            out.push((path.to_owned(), text));
        }
    };
    for change in changes {
        match *change {
            Change::Line(line) => {
                let name = asked.shop.lines.get(line).map(|line| line.name.to_string());
                put("line", name.unwrap_or_default());
            }
            Change::Paper(index) => {
                let text = asked.papers.get(index).map(|choice| choice.text.clone());
                put("paper", text.unwrap_or_default());
            }
            Change::Cover(index) => {
                let text = asked.covers.get(index).map(|choice| choice.text.clone());
                put("cover", text.unwrap_or_default());
            }
            Change::SelfCover | Change::Pages(_) | Change::Volumes(..) => {
                if *change == Change::SelfCover {
                    put("cover", String::new());
                }
                put("pages", pages_text(asked, changes).unwrap_or_default());
            }
            Change::Spine(spine) => {
                put("spine", spine_text(spine).to_owned());
                put("dummy_push_out", String::new());
            }
            Change::Size(index) => {
                if let Some(choice) = asked.sizes.get(index) {
                    put(choice.field, choice.text.clone());
                }
            }
            Change::FaceCut(cut) => {
                put(
                    "face_cut",
                    cut.map(|cut| format!("{} mm", digits(cut.get()))).unwrap_or_default(),
                );
            }
            Change::HeadFoot(head_foot) => put("head_foot", head_foot_text(head_foot).to_owned()),
            Change::CopiesUp(copies) => put("copies_up", copies.to_string()),
            Change::ByRule(field) => put(field.name(), String::new()),
        }
        if change.is_other_thickness() {
            put("dummy_thickness", String::new());
            put("dummy_push_out", String::new());
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::edits;
    use crate::advise::change::Change;
    use crate::advise::offer::offer;
    use crate::advise::search::{Search, Tried};
    use crate::draft::Draft;
    use crate::{job, plan, shop};

    /// What is set in place and what is typed are the same book: the verdict on every single change
    /// agrees with reading its texts.
    #[test]
    fn a_change_in_place_is_what_its_texts_say() {
        let shop = shop::demo();
        let books: [&[(&str, &str)]; 4] = [
            &[
                ("pages", "96 + 4"),
                ("size", "A4"),
                ("paper", "120 gsm silk"),
                ("cover", "250 gsm silk cover"),
            ],
            &[
                ("pages", "62"),
                ("size", "170 x 240"),
                ("paper", "100 lb gloss text"),
                ("units", "in"),
            ],
            &[
                ("pages", "80 + 4"),
                ("size", "A5 landscape"),
                ("paper", "Pond Silk 115"),
                ("line", "Line H"),
            ],
            &[
                ("pages", "90 self cover"),
                ("size", "Letter"),
                ("paper", "80 gsm copier 0.1 mm"),
                ("bound_edge", "top"),
                ("grain", "along"),
                ("face_cut", "3 mm"),
                ("stitches", "7"),
                ("route", "straight"),
                ("press_sheet", "SRA2"),
                ("sections.0.pages", "8"),
                ("sections.0.paper", "130 gsm silk"),
            ],
        ];
        for book in books {
            let draft = Draft::of(book);
            let job = job::read(&draft, &shop).job.unwrap();
            let mut search = Search::new(&draft, &job, &shop);
            let singles: Vec<Tried> = search.singles().to_vec();
            assert!(singles.len() > 60, "{book:?}: {}", singles.len());
            for tried in singles {
                let change = tried.first.change;
                // Of two volumes the thicker is typed.
                let judged = match change {
                    Change::Volumes(thicker, _) => Change::Pages(thicker),
                    change => change,
                };
                let verdict = search.scratch.judge(&search.asked, &[judged]);
                let texts = edits(&search.asked, &[change]);
                let mut typed = draft.clone();
                for (path, text) in &texts {
                    typed.set(path, text);
                }
                let again = job::read(&typed, &shop).job.unwrap_or_else(|| panic!("{texts:?}"));
                assert_eq!(plan::plan(&again, &shop).verdict, verdict, "{book:?} {texts:?}");
                let offered = offer(&search.asked, &Tried { verdict, ..tried });
                assert!(offered.is_some(), "{texts:?}");
            }
        }
    }
}

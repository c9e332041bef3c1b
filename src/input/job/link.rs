//! A job on its way to another page: behind an address, or as a code for scanners that type.
//!
//! Both hold the draft and nothing else: no limit, no rate, no cost of the shop goes along.

use super::envelope::{Broken, Script, open, seal};
use super::fields::SCHEMA;
use super::link_v1::LinkV1;
use crate::draft::{Draft, FieldError, Tree, from_tree, to_tree};
use crate::units::Measure;
use crate::words::say;

/// What stands between a page's address and the letters of a link.
pub const LINK_MARK: &str = "#book=";
/// What a code begins with. No book is described with these letters.
pub const CODE_MARK: &str = "QF";
/// Letters of the longest link that mail and chat programs leave whole; common practice.
pub const LINK_MOST: usize = 4000;
/// Letters of the longest code: more is beyond a picture that a scanner reads from paper.
pub const CODE_MOST: usize = 1000;

/// The form in which links are written.
const FORM: u8 = 1;

/// The draft as the end of an address: the mark and letters.
///
/// ```
/// use quirefit_input::{draft::Draft, job};
/// let draft = Draft::of(&[("pages", "60 + 4"), ("size", "A5")]);
/// let link = job::to_link(&draft)?;
/// let opened = job::read_link(&format!("https://a.page/planner.html{link}")).unwrap()?;
/// assert_eq!(opened, draft);
/// # Ok::<(), Vec<quirefit_input::draft::FieldError>>(())
/// ```
///
/// # Errors
/// The job is too long; a file holds it.
pub fn to_link(draft: &Draft) -> Result<String, Vec<FieldError>> {
    written(draft, Script::Address, LINK_MARK, LINK_MOST)
}

/// The draft as a code in capitals and digits.
///
/// # Errors
/// The job is too long; a file holds it.
pub fn to_code(draft: &Draft) -> Result<String, Vec<FieldError>> {
    written(draft, Script::Keys, CODE_MARK, CODE_MOST)
}

fn written(
    draft: &Draft,
    script: Script,
    mark: &str,
    most: usize,
) -> Result<String, Vec<FieldError>> {
    let tree = to_tree(draft, &SCHEMA);
    // What would not open is not handed out: a text longer than a file may hold, say.
    from_tree(&tree, &SCHEMA)?;
    let letters = LinkV1::of(&tree)
        .and_then(|link| postcard::to_allocvec(&link).ok())
        .and_then(|content| seal(FORM, &content, script))
        .filter(|letters| letters.len() <= most);
    letters.map(|letters| format!("{mark}{letters}")).ok_or_else(|| {
        vec![FieldError::repaired(
            "",
            "",
            say("link.long").put("most", Measure::count(most as u32)),
        )]
    })
}

/// The draft of a link or a code, wherever in a text the link stands; nothing when the text is
/// neither.
#[must_use]
pub fn read_link(text: &str) -> Option<Result<Draft, Vec<FieldError>>> {
    let text = text.trim();
    let (script, letters) = if let Some((_, letters)) = text.split_once(LINK_MARK) {
        (Script::Address, letters)
    } else if let Some(letters) = code(text) {
        (Script::Keys, letters)
    } else if ["http:", "https:", "file:"].iter().any(|start| text.starts_with(start)) {
        return Some(Err(vec![FieldError::repaired("", text, say("link.foreign"))]));
    } else {
        return None;
    };
    let tree =
        opened(letters, script).map_err(|wrong| vec![FieldError::repaired("", text, say(wrong))]);
    Some(tree.and_then(|tree| from_tree(&tree, &SCHEMA)))
}

/// The tree in an envelope, or the key of what is wrong with it.
fn opened(letters: &str, script: Script) -> Result<Tree, &'static str> {
    let (form, content) = open(letters, script).map_err(|broken| match broken {
        Broken::Cut => "link.cut",
        Broken::Altered => "link.altered",
    })?;
    let link = postcard::take_from_bytes::<LinkV1>(&content)
        .ok()
        .filter(|(_, rest)| form == FORM && rest.is_empty());
    link.and_then(|(link, _)| link.tree(SCHEMA.format, SCHEMA.version)).ok_or("link.newer")
}

/// The letters of a code; nothing when a text does not begin like one.
fn code(text: &str) -> Option<&str> {
    let (mark, letters) = text.split_at_checked(CODE_MARK.len())?;
    mark.eq_ignore_ascii_case(CODE_MARK).then_some(letters)
}

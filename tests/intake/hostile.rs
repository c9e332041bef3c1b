//! Files that are made to stop their reader: circles, chains, towers. Each is read or refused, and whatever
//! can be read is written, within seconds and in a worker's small stack.

use crate::written::sound;
use quirefit::intake::{Desk, Frame, Matrix, Order, OrderPage, Part, Placed};
use std::time::{Duration, Instant};
use std::{fs, thread};

/// The stack that a module in a browser has, half of it: native frames are the larger ones.
const STACK: usize = 1 << 20;
/// More work than any of these takes.
const PATIENCE: Duration = Duration::from_secs(20);
/// How often something is repeated that nobody would repeat.
const MANY: usize = 20_000;

/// Reads a file and writes its first pages. Gives back how many pages it has and what was written, if it is
/// one.
fn taken_and_written(bytes: Vec<u8>) -> Option<(usize, Vec<u8>)> {
    let mut desk = Desk::default();
    let pages = desk.arrive(bytes, "").ok()?.pages.len();
    desk.place(Part::Inside);
    let clip = Frame { left: 0.0, bottom: 0.0, right: 100.0, top: 100.0 };
    let page = |page| {
        let placed = Placed { part: Part::Inside, page, matrix: Matrix::shift(0.0, 0.0), clip };
        OrderPage { size: (100.0, 100.0), turned: 0, placed: vec![placed], marks: Vec::new() }
    };
    let [title, language, layer] = [String::new(), String::new(), String::new()];
    desk.begin(Order { title, language, layer, pages: (0..20).map(page).collect() });
    while let (made, all) = desk.go_on()
        && made < all
    {}
    Some((pages, desk.written()))
}

/// How long this thread has had a processor, where the system tells: a machine that is busy with other things
/// takes longer.
fn worked() -> Option<Duration> {
    let told = fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    told.split(' ').next()?.parse().ok().map(Duration::from_nanos)
}

/// A file of these objects, without any list of them: whoever reads it has to search.
fn file(objects: &[String]) -> Vec<u8> {
    let numbered =
        objects.iter().zip(1..).map(|(object, at)| format!("{at} 0 obj\n{object}\nendobj\n"));
    format!("%PDF-1.7\n{}trailer\n<</Root 1 0 R>>\n%%EOF\n", numbered.collect::<String>())
        .into_bytes()
}

/// The same with a page, object 3, that has these entries more.
fn page(entries: &str, more: &[String]) -> Vec<u8> {
    let whole = [
        "<</Type/Catalog/Pages 2 0 R>>".to_owned(),
        "<</Type/Pages/Kids[3 0 R]/Count 1>>".to_owned(),
        format!("<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]{entries}>>"),
    ];
    file(&[&whole, more].concat())
}

#[test]
fn nothing_made_to_stop_the_reader_does() {
    let deep = |open: &str, close: &str| open.repeat(MANY) + &close.repeat(MANY);
    let stream = |entries: &str, data: &str| {
        format!("<</Length {}{entries}>>\nstream\n{data}\nendstream", data.len())
    };
    let tree = |kids: &str| {
        let catalog = "<</Type/Catalog/Pages 2 0 R>>".to_owned();
        file(&[catalog, format!("<</Type/Pages/Kids[{kids}]/Count 1>>")])
    };
    let chain =
        (2..MANY).map(|at| format!("<</Type/Pages/Parent {} 0 R/Kids[{} 0 R]>>", at - 1, at + 1));
    let chain = [vec!["<</Type/Catalog/Pages 2 0 R>>".to_owned()], chain.collect()].concat();
    let last = format!("<</Type/Page/Parent {} 0 R>>", MANY - 1);
    let forms = (4..MANY).map(|at| {
        stream(&format!("/Subtype/Form/Resources<</XObject<</X {} 0 R>>>>", at + 1), "/X Do")
    });
    let cases: Vec<(&str, Vec<u8>, Option<usize>)> = vec![
        ("a tree that is its own branch", tree("2 0 R 2 0 R"), None),
        ("a tree whose root is the catalogue", tree("1 0 R 2 0 R"), None),
        ("branches without end", file(&[&chain[..], &[last]].concat()), Some(1)),
        ("a page twenty thousand times", tree(&"<</Type/Page>>".repeat(MANY)), Some(MANY)),
        (
            "a reference to itself",
            page("/Contents 4 0 R/Resources 4 0 R", &["4 0 R".into()]),
            Some(1),
        ),
        (
            "references in a circle",
            page("/Contents 4 0 R/Resources 5 0 R", &["5 0 R".into(), "4 0 R".into()]),
            Some(1),
        ),
        ("content of itself", page("/Contents 4 0 R", &["[4 0 R 4 0 R]".into()]), Some(1)),
        (
            "a length that is the stream's",
            page("/Contents 4 0 R", &["<</Length 4 0 R>>\nstream\n0 g\nendstream".into()]),
            Some(1),
        ),
        ("lists in lists", page(&format!("/Resources<</Font {}>>", deep("[", "]")), &[]), None),
        ("tables in tables", page("/Resources 4 0 R", &[deep("<</A ", ">>")]), None),
        ("brackets that never close", page("/Resources 4 0 R", &["[".repeat(MANY)]), None),
        ("tables that never close", page("/Resources 4 0 R", &["<</A".repeat(MANY)]), None),
        ("words in words", page("/Contents 4 0 R", &[deep("(", ")")]), None),
        (
            "packed a thousand times",
            page(
                "/Contents 4 0 R",
                &[stream(&format!("/Filter[{}]", "/ASCIIHexDecode".repeat(1000)), ">")],
            ),
            Some(1),
        ),
        (
            "forms in a circle",
            page(
                "/Resources<</XObject<</X 4 0 R>>>>",
                &[stream("/Subtype/Form/Resources<</XObject<</X 4 0 R>>>>", "/X Do")],
            ),
            Some(1),
        ),
        (
            "forms without end",
            page("/Resources<</XObject<</X 4 0 R>>>>", &forms.collect::<Vec<_>>()),
            Some(1),
        ),
        (
            "numbers without end",
            page(&format!("/MediaBox[0 0 {0} {0}]/UserUnit {0}", "9".repeat(5000)), &[]),
            None,
        ),
        (
            "an object in itself",
            page(
                "/Contents 5 0 R",
                &[stream("/Type/ObjStm/N 2/First 9", "4 0 5 5 [4 0 R][5 0 R]")],
            ),
            None,
        ),
        (
            // Such a name is one (ISO 32000-1, 7.3.5).
            "names without letters",
            page("/Resources<</ExtGState<</G<</ 7/A/ /B[/ 1]/ 4 0 R>>>>>>", &["[/ /]".into()]),
            Some(1),
        ),
        (
            "parents in a circle",
            file(&[
                "<</Type/Catalog/Pages 2 0 R>>".into(),
                "<</Type/Pages/Kids[3 0 R]/Parent 3 0 R>>".into(),
                "<</Type/Page/Parent 2 0 R>>".into(),
            ]),
            Some(1),
        ),
    ];
    for (name, bytes, pages) in cases {
        let began = Instant::now();
        let work = move || (taken_and_written(bytes), worked());
        let work = thread::Builder::new().stack_size(STACK).spawn(work).unwrap();
        let (read, worked) = work.join().unwrap_or_else(|_| panic!("{name}: stopped"));
        let took = worked.unwrap_or_else(|| began.elapsed());
        assert!(took < PATIENCE, "{name}: took {took:?}");
        let Some((found, made)) = read else {
            assert_eq!(pages, None, "{name}: refused");
            continue;
        };
        assert!(pages.is_none_or(|pages| pages == found), "{name}: {found} pages");
        sound("hostile", &made);
    }
}

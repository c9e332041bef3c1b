//! Rust source cut up, far enough to search code without meeting remarks, strings or test modules.

/// Folders of `src` that are packages of their own: no modules.
const FLOORS: [&str; 2] = ["input/", "planning/"];

/// One file of `src`.
#[derive(Debug, Clone)]
pub struct Source {
    /// Its path from the top, such as `src/planning/book/fold.rs`.
    pub path: String,
    /// The whole text.
    pub text: String,
    /// The text with remarks, the content of strings, and modules for tests blanked out; line ends
    /// stay where they are.
    pub code: String,
    /// Every string literal outside remarks and test modules.
    pub strings: Vec<Literal>,
}

/// A string literal.
#[derive(Debug, Clone)]
pub struct Literal {
    /// Its content as written, escapes and all.
    pub text: String,
    /// Where it begins in the file.
    pub at: usize,
}

impl Source {
    /// The line of an offset, counted from 1.
    pub fn line(&self, at: usize) -> usize {
        self.text[..at].matches('\n').count() + 1
    }
    /// The text of that line.
    pub fn line_text(&self, at: usize) -> &str {
        let from = self.text[..at].rfind('\n').map_or(0, |end| end + 1);
        self.text[from..].lines().next().unwrap_or_default().trim()
    }
    /// The module's path: `src/planning/book/fold.rs` is `book`, `fold`.
    pub fn modules(&self) -> Vec<&str> {
        let inside = self.path.trim_start_matches("src/");
        let inner = FLOORS.iter().find_map(|floor| inside.strip_prefix(floor)).unwrap_or(inside);
        let inner = inner.trim_end_matches(".rs");
        let mut modules: Vec<&str> = inner.split('/').collect();
        if modules.last() == Some(&"mod") {
            modules.pop();
        }
        modules
    }
}

/// One file of code.
pub fn source(path: &str) -> Source {
    let text = super::text_of(path);
    let (code, strings) = cut(&text);
    Source { path: path.to_owned(), text, code, strings }
}

/// All of `src` except files that hold only tests.
pub fn sources() -> Vec<Source> {
    let paths: Vec<String> =
        super::files("src").into_iter().filter(|path| path.ends_with(".rs")).collect();
    let mut tests = Vec::new();
    let mut found = Vec::new();
    for path in paths {
        let text = super::text_of(&path);
        let (code, strings) = cut(&text);
        let folder = path.trim_end_matches("mod.rs").trim_end_matches(".rs").trim_end_matches('/');
        tests.extend(test_files(&code).map(|name| format!("{folder}/{name}.rs")));
        let (code, strings) = without_test_modules(code, strings);
        found.push(Source { path, text, code, strings });
    }
    found.retain(|source| !tests.contains(&source.path));
    found
}

const FOR_TESTS: &str = "#[cfg(test)]";

/// Names of modules that are declared for tests only and stand in files of their own.
fn test_files(code: &str) -> impl Iterator<Item = &str> {
    code.split(FOR_TESTS).skip(1).filter_map(|after| {
        let (name, _) = after.trim_start().strip_prefix("mod ")?.split_once([';', '{'])?;
        after
            .trim_start()
            .strip_prefix("mod ")?
            .strip_prefix(name)?
            .starts_with(';')
            .then_some(name)
    })
}

/// Blanks modules for tests that stand inside a file.
fn without_test_modules(code: String, mut strings: Vec<Literal>) -> (String, Vec<Literal>) {
    let mut code: Vec<u8> = code.into_bytes();
    let mut from = 0;
    while let Some(found) = find(&code[from..], FOR_TESTS.as_bytes()) {
        let start = from + found;
        from = start + FOR_TESTS.len();
        let Some(open) = code[from..].iter().position(|byte| matches!(byte, b'{' | b';')) else {
            break;
        };
        let open = from + open;
        if code[open] == b';' {
            continue;
        }
        let mut depth = 0;
        let end = code[open..].iter().position(|byte| {
            depth += i32::from(*byte == b'{') - i32::from(*byte == b'}');
            depth == 0
        });
        let end = open + end.expect("a module ends");
        strings.retain(|string| string.at < start || string.at > end);
        blank(&mut code[start..=end]);
        from = end;
    }
    (String::from_utf8(code).unwrap(), strings)
}

fn find(within: &[u8], what: &[u8]) -> Option<usize> {
    within.windows(what.len()).position(|window| window == what)
}

fn blank(bytes: &mut [u8]) {
    for byte in bytes {
        if *byte != b'\n' {
            *byte = b' ';
        }
    }
}

/// Blanks remarks and the content of strings and characters; the strings come back apart.
pub fn cut(text: &str) -> (String, Vec<Literal>) {
    let bytes = text.as_bytes();
    let mut code = bytes.to_vec();
    let mut strings = Vec::new();
    let mut at = 0;
    while at < bytes.len() {
        let rest = &bytes[at..];
        let end = if rest.starts_with(b"//") {
            let end = rest.iter().position(|byte| *byte == b'\n').unwrap_or(rest.len());
            blank(&mut code[at..at + end]);
            at + end
        } else if rest.starts_with(b"/*") {
            let end = find(rest, b"*/").map_or(rest.len(), |end| end + 2);
            blank(&mut code[at..at + end]);
            at + end
        } else if let Some(hashes) = raw_string(bytes, at) {
            let open = at + 1 + hashes + 1;
            let close: Vec<u8> = [b"\"".as_slice(), &vec![b'#'; hashes]].concat();
            let length = find(&bytes[open..], &close).expect("a raw string ends");
            strings.push(Literal { text: text[open..open + length].to_owned(), at });
            blank(&mut code[open..open + length]);
            open + length + close.len()
        } else if rest[0] == b'"' {
            let mut length = 1;
            while rest[length] != b'"' {
                length += if rest[length] == b'\\' { 2 } else { 1 };
            }
            strings.push(Literal { text: text[at + 1..at + length].to_owned(), at });
            blank(&mut code[at + 1..at + length]);
            at + length + 1
        } else if rest[0] == b'\'' {
            let end = at + character(rest);
            if end > at + 1 {
                blank(&mut code[at + 1..end - 1]);
            }
            end
        } else {
            at + 1
        };
        at = end;
    }
    (String::from_utf8(code).expect("whole characters are blanked"), strings)
}

/// The number of hash signs when a raw string begins here.
fn raw_string(bytes: &[u8], at: usize) -> Option<usize> {
    let named = at > 0 && (bytes[at - 1].is_ascii_alphanumeric() || bytes[at - 1] == b'_');
    if bytes[at] != b'r' || (named && bytes[at - 1] != b'b') {
        return None;
    }
    let hashes = bytes[at + 1..].iter().take_while(|byte| **byte == b'#').count();
    (bytes.get(at + 1 + hashes) == Some(&b'"')).then_some(hashes)
}

/// How long a character literal is; 1 when the sign begins a lifetime.
fn character(rest: &[u8]) -> usize {
    if rest.get(1) == Some(&b'\\') {
        return 3 + rest[3..].iter().position(|byte| *byte == b'\'').unwrap_or_default();
    }
    let width = rest.get(1).map_or(1, |first| match first {
        0..=0x7f => 1,
        0xc0..=0xdf => 2,
        0xe0..=0xef => 3,
        _ => 4,
    });
    if rest.get(1 + width) == Some(&b'\'') { width + 2 } else { 1 }
}

/// Words of code: names and numbers, each with its place.
pub fn words(code: &str) -> impl Iterator<Item = (usize, &str)> {
    let part = |letter: char| letter.is_alphanumeric() || letter == '_';
    let mut at = 0;
    code.split(move |letter: char| !part(letter)).filter_map(move |word| {
        let here = at;
        // Every separator is one character of the text.
        at = here + word.len() + code[here + word.len()..].chars().next().map_or(0, char::len_utf8);
        (!word.is_empty()).then_some((here, word))
    })
}

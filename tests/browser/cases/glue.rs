//! The script alone, with a session that says what the test wants: events in, patches out.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::page::Page;
use fantoccini::key::Key;
use serde_json::{Value, json};

cases! { "glue":
    setup_brings_words_and_languages;
    what_is_done_before_the_start_is_told_after_it;
    notice_stands_only_where_nothing_starts;
    events_name_what_was_done;
    the_width_is_told_when_it_changes;
    values_reach_every_kind_of_control;
    swap_keeps_what_the_reader_did;
    equal_html_is_left_alone;
    attributes_and_text;
    unknown_place_stops_nothing;
    rest_comes_after_the_paint;
    last_announcement_wins;
    trap_replays_the_last_draft;
    poisoned_draft_does_not_lock_the_page;
    refused_storage_is_told;
    what_another_page_keeps_is_told_and_not_overwritten;
    files_come_in;
    a_picture_that_cannot_be_made_is_saved_as_drawn;
}

/// The page of `tests/browser/glue/`, which `pkg-scripts/test` gives its script. A mark in its
/// address decides how it starts.
fn address(mark: &str) -> String {
    format!("file://{}/tests/browser/glue/page.html{mark}", env!("CARGO_MANIFEST_DIR"))
}

/// What the session is told first: where the page lies.
fn start(mark: &str) -> String {
    format!("start  {}", address(mark))
}

/// Opens it, started.
async fn open(page: &Page<'_>) -> Outcome {
    page.open(&address("")).await
}

/// From now on, events of this kind are answered so.
async fn answer(page: &Page<'_>, kind: &str, patches: Value) -> Outcome {
    let set = "window.answers[arguments[0]] = arguments[1]";
    page.script(set, vec![json!(kind), patches]).await.map(drop)
}

/// A click that the session answers so.
async fn patch(page: &Page<'_>, patches: Value) -> Outcome {
    answer(page, "act", patches).await?;
    page.script("document.getElementById('press').click()", vec![]).await.map(drop)
}

/// Everything the session was told since this was last asked, as "kind id value".
async fn all_told(page: &Page<'_>) -> Outcome<Vec<String>> {
    let lines =
        "return window.events.splice(0).map(({ kind, id, value }) => `${kind} ${id} ${value}`)";
    Ok(serde_json::from_value(page.script(lines, vec![]).await?)?)
}

/// The same without the page's width, which is told whenever the browser has laid it out.
async fn told(page: &Page<'_>) -> Outcome<Vec<String>> {
    let mut lines = all_told(page).await?;
    lines.retain(|line| !line.starts_with("width "));
    Ok(lines)
}

async fn setup_brings_words_and_languages(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let setup = page.script("return window.setups[0]", vec![]).await?;
    assert_eq!(setup["words"], json!({ "en": "key = word", "en-GB": "key = wörd" }));
    assert_eq!(setup["saved"], Value::Null);
    assert_eq!(setup["languages"], page.script("return [...navigator.languages]", vec![]).await?);
    assert_eq!(told(page).await?, [start("")]);
    Ok(())
}

async fn what_is_done_before_the_start_is_told_after_it(page: &Page<'_>) -> Outcome {
    page.visit(&address("?held")).await?;
    page.type_on("word", "abc").await?;
    page.click("#sure").await?;
    page.choose("size", "b").await?;
    page.click("#inner").await?;
    page.type_on("word", &format!("{}{}", char::from(Key::Left), "d")).await?;
    assert_eq!(told(page).await?, [""; 0], "nothing has started yet");
    // The start fills the form with the example, and draws the options of the list anew.
    let example = json!([
        { "op": "html", "id": "size", "html": "<option value=c>c</option><option value=b>b</option>" },
        { "op": "value", "id": "word", "text": "example" },
        { "op": "value", "id": "side", "text": "right" },
        { "op": "value", "id": "sure", "text": "" },
        { "op": "value", "id": "size", "text": "c" },
    ]);
    answer(page, "start", example).await?;
    page.script("window.release()", vec![]).await?;
    page.started().await?;
    let now = "const at = (id) => document.getElementById(id); return [at('word').value, \
        at('word').selectionStart, at('right').checked, at('sure').checked, at('size').value]";
    assert_eq!(page.script(now, vec![]).await?, json!(["abdc", 3, true, true, "b"]));
    let started = start("?held");
    let expected = [
        &*started,
        "input word a",
        "input word ab",
        "input word abc",
        "leave word abc",
        "change sure yes",
        "change size b",
        "act press hard",
        "input word abdc",
    ];
    assert_eq!(told(page).await?, expected);
    Ok(())
}

async fn notice_stands_only_where_nothing_starts(page: &Page<'_>) -> Outcome {
    let hidden = "return document.getElementById('notice').hidden";
    page.visit(&address("?held")).await?;
    assert_eq!(page.script(hidden, vec![]).await?, json!(true), "it may still start");
    open(page).await?;
    assert_eq!(page.script(hidden, vec![]).await?, json!(true), "it has started");
    // Nothing starts where the module may not compile, or the browser cannot unpack it.
    for mark in ["?refused", "?packed"] {
        page.visit(&address(mark)).await?;
        page.settle().await?;
        assert_eq!(page.script(hidden, vec![]).await?, json!(false), "{mark}");
        let lines = page.complaints().await?;
        // The others hand over nothing that a page's own script says while it loads.
        let heard = page.browser.engine == Engine::Chromium;
        assert!(!lines.is_empty() || !heard, "nobody was told");
    }
    Ok(())
}

async fn events_name_what_was_done(page: &Page<'_>) -> Outcome {
    open(page).await?;
    told(page).await?;
    page.type_on("word", "ab").await?;
    assert_eq!(told(page).await?, ["input word a", "input word ab"]);
    page.click("#right").await?;
    assert_eq!(told(page).await?, ["leave word ab", "change side right"]);
    page.click("#sure").await?;
    page.click("#sure").await?;
    assert_eq!(told(page).await?, ["change sure yes", "change sure "]);
    page.click("#inner").await?;
    assert_eq!(told(page).await?, ["act press hard"]);
    page.click("#more-summary").await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["toggle more open"]);
    page.click("#more-summary").await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["toggle more closed"]);
    page.choose("size", "b").await?;
    assert_eq!(told(page).await?, ["change size b"]);
    Ok(())
}

async fn values_reach_every_kind_of_control(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let values = [("word", "four"), ("side", "right"), ("sure", "yes"), ("size", "b")];
    patch(
        page,
        values.iter().map(|(id, text)| json!({ "op": "value", "id": id, "text": text })).collect(),
    )
    .await?;
    let now = "const at = (id) => document.getElementById(id); \
        return [at('word').value, at('left').checked, at('right').checked, at('sure').checked, at('size').value]";
    assert_eq!(page.script(now, vec![]).await?, json!(["four", false, true, true, "b"]));
    Ok(())
}

async fn swap_keeps_what_the_reader_did(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let html = |words: &str| {
        let lines = "<br>line".repeat(50);
        json!([{ "op": "html", "id": "region", "html": format!(
            "<p>{words}</p><details id=inside><summary id=inside-summary>in</summary>text</details>\
             <input type=text id=held value=abcdef><div id=box>{lines}</div>"
        ) }])
    };
    patch(page, html("first")).await?;
    page.click("#inside-summary").await?;
    let touch = "const box = document.getElementById('box'); \
        box.style.height = '40px'; box.style.overflow = 'auto'; box.scrollTop = 30; \
        const held = document.getElementById('held'); held.focus(); held.setSelectionRange(2, 4);";
    page.script(touch, vec![]).await?;
    page.settle().await?;
    told(page).await?;
    // The new box is given its height by a style that was there before it.
    let style = "document.head.insertAdjacentHTML('beforeend', '<style>#box { height: 40px; overflow: auto }</style>')";
    page.script(style, vec![]).await?;
    patch(page, html("second")).await?;
    page.settle().await?;
    let now = "const held = document.activeElement, at = (id) => document.getElementById(id); \
        return [at('region').firstChild.textContent, at('inside').open, held.id, \
            held.selectionStart, held.selectionEnd, at('box').scrollTop]";
    assert_eq!(page.script(now, vec![]).await?, json!(["second", true, "held", 2, 4, 30]));
    assert_eq!(told(page).await?, ["act press hard"], "the swap itself is no event");
    Ok(())
}

async fn equal_html_is_left_alone(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let html = json!([{ "op": "html", "id": "region", "html": "<p>same</p>" }]);
    patch(page, html.clone()).await?;
    page.script("document.getElementById('region').firstChild.mark = 1", vec![]).await?;
    patch(page, html).await?;
    let mark =
        page.script("return document.getElementById('region').firstChild.mark", vec![]).await?;
    assert_eq!(mark, json!(1), "the same HTML was swapped in again");
    // What stands in a fresh element is not what stood in the one of that id before.
    let outer = |note: &str| json!({ "op": "html", "id": "region", "html": format!("<i>{note}</i><p id=slot></p>") });
    let slot = json!({ "op": "html", "id": "slot", "html": "filled" });
    patch(page, json!([outer("one"), slot])).await?;
    patch(page, json!([outer("two"), slot])).await?;
    assert_eq!(page.text("slot").await?, "filled");
    Ok(())
}

async fn the_width_is_told_when_it_changes(page: &Page<'_>) -> Outcome {
    open(page).await?;
    page.settle().await?;
    let wide = "return `width  ${Math.round(document.getElementById('page').clientWidth)}`";
    let lines = all_told(page).await?;
    let now = page.script(wide, vec![]).await?;
    assert_eq!(lines.last().map(|line| json!(line)), Some(now));
    page.script("document.getElementById('page').style.width = '400px'", vec![]).await?;
    page.settle().await?;
    assert_eq!(all_told(page).await?, ["width  400"]);
    page.script("document.getElementById('page').style.color = 'green'", vec![]).await?;
    page.settle().await?;
    assert!(all_told(page).await?.is_empty(), "it is as wide as before");
    Ok(())
}

async fn attributes_and_text(page: &Page<'_>) -> Outcome {
    open(page).await?;
    told(page).await?;
    patch(
        page,
        json!([
            { "op": "attr", "id": "line", "name": "class", "value": "stale" },
            { "op": "attr", "id": "press", "name": "data-value", "value": null },
            { "op": "attr", "id": "more", "name": "open", "value": "" },
            { "op": "text", "id": "line", "text": "<b> is text" },
            { "op": "title", "text": "new" },
            { "op": "focus", "id": "word" },
        ]),
    )
    .await?;
    page.settle().await?;
    let now = "const at = (id) => document.getElementById(id); return [at('line').className, \
        at('press').dataset.value ?? 'none', at('more').open, document.title, document.activeElement.id]";
    assert_eq!(page.script(now, vec![]).await?, json!(["stale", "none", true, "new", "word"]));
    assert_eq!(page.text("line").await?, "<b> is text");
    assert_eq!(told(page).await?, ["act press hard"], "what a patch opens is no event");
    Ok(())
}

async fn unknown_place_stops_nothing(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let html = |id: &str| json!({ "op": "text", "id": id, "text": "here" });
    patch(page, json!([html("nowhere"), html("line")])).await?;
    assert_eq!(page.text("line").await?, "here");
    let lines = page.complaints().await?;
    assert!(lines.iter().any(|line| line.contains("nowhere")), "nobody was told: {lines:?}");
    Ok(())
}

async fn rest_comes_after_the_paint(page: &Page<'_>) -> Outcome {
    open(page).await?;
    told(page).await?;
    answer(page, "input", json!([{ "op": "later" }])).await?;
    // Two keys before a paint: the rest is done once, after both.
    let keys = "const word = document.getElementById('word'); \
        for (const text of ['a', 'ab']) { word.value = text; word.dispatchEvent(new Event('input', { bubbles: true })); } \
        return window.events.filter(({ kind }) => kind !== 'width').length";
    assert_eq!(page.script(keys, vec![]).await?, json!(2), "the rest did not wait");
    page.settle().await?;
    assert_eq!(told(page).await?, ["input word a", "input word ab", "rest  "]);
    // An event that asks for nothing puts the rest off, and does not lose it.
    let mixed = "const word = document.getElementById('word'); \
        word.dispatchEvent(new Event('input', { bubbles: true })); \
        document.getElementById('press').click()";
    page.script(mixed, vec![]).await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["input word ab", "act press hard", "rest  "]);
    Ok(())
}

async fn last_announcement_wins(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let say = |text: &str| json!([{ "op": "announce", "text": text }]);
    patch(page, say("yes")).await?;
    patch(page, say("no")).await?;
    let status = "return document.querySelector('[role=status]').textContent";
    assert_eq!(page.script(status, vec![]).await?, json!(""), "no pause before it is said");
    tokio::time::sleep(std::time::Duration::from_millis(900)).await;
    assert_eq!(page.script(status, vec![]).await?, json!("no"));
    Ok(())
}

async fn trap_replays_the_last_draft(page: &Page<'_>) -> Outcome {
    open(page).await?;
    patch(page, json!([{ "op": "store", "text": "the draft" }])).await?;
    told(page).await?;
    answer(page, "start", json!([{ "op": "text", "id": "line", "text": "again" }])).await?;
    answer(page, "input", json!("trap")).await?;
    page.type_on("word", "x").await?;
    let events = told(page).await?;
    assert_eq!(events.first().map(String::as_str), Some("input word x"));
    assert_eq!(events.get(1), Some(&start("")));
    assert!(
        events.get(2).is_some_and(|event| event.starts_with("trap  RuntimeError")),
        "{events:?}"
    );
    let saved = page.script("return window.setups.map((setup) => setup.saved)", vec![]).await?;
    assert_eq!(saved, json!([null, "the draft"]));
    assert_eq!(page.text("line").await?, "again");
    assert_eq!(page.value("word").await?, "x", "what was typed is gone");
    Ok(())
}

async fn poisoned_draft_does_not_lock_the_page(page: &Page<'_>) -> Outcome {
    open(page).await?;
    page.script("localStorage.setItem('quirefit.job', 'poison')", vec![]).await?;
    open(page).await?;
    let saved = page.script("return window.setups.map((setup) => setup.saved)", vec![]).await?;
    page.script("localStorage.clear()", vec![]).await?;
    assert_eq!(saved, json!(["poison", null]));
    let events = told(page).await?;
    assert!(events.iter().any(|event| event.starts_with("trap")), "nobody was told: {events:?}");
    Ok(())
}

async fn refused_storage_is_told(page: &Page<'_>) -> Outcome {
    open(page).await?;
    told(page).await?;
    let refuse = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError') }";
    page.script(refuse, vec![]).await?;
    patch(page, json!([{ "op": "store", "text": "x" }])).await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["act press hard", "storage  none"]);
    Ok(())
}

async fn what_another_page_keeps_is_told_and_not_overwritten(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let store = |text: &str| json!([{ "op": "store", "text": text }]);
    patch(page, store("mine")).await?;
    page.script("localStorage.setItem('quirefit.job', 'theirs')", vec![]).await?;
    told(page).await?;
    patch(page, store("mine again")).await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["act press hard", "elsewhere  theirs"]);
    let kept = "return localStorage.getItem('quirefit.job')";
    assert_eq!(page.script(kept, vec![]).await?, json!("theirs"));
    // Once told, the session has it in what it stores.
    patch(page, store("both")).await?;
    assert_eq!(page.script(kept, vec![]).await?, json!("both"));
    page.script("localStorage.clear()", vec![]).await.map(drop)
}

async fn files_come_in(page: &Page<'_>) -> Outcome {
    open(page).await?;
    told(page).await?;
    let path = page.apart("chosen.txt")?;
    std::fs::write(&path, "{\"chosen\":1}")?;
    page.field("file").await?.send_keys(&path.display().to_string()).await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["file chosen.txt {\"chosen\":1}"]);
    let drop = "const data = new DataTransfer(); \
        data.items.add(new File(['dropped'], 'dropped.json')); \
        document.body.dispatchEvent(new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: data }))";
    page.script(drop, vec![]).await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["file dropped.json dropped"]);
    let paste = "const data = new DataTransfer(); data.setData('text/plain', 'pasted'); \
        const paste = () => new ClipboardEvent('paste', { bubbles: true, clipboardData: data, \
            data: 'pasted', dataType: 'text/plain' }); \
        document.getElementById('word').dispatchEvent(paste()); document.body.dispatchEvent(paste())";
    page.script(paste, vec![]).await?;
    page.settle().await?;
    assert_eq!(told(page).await?, ["file  pasted"], "a paste into a field stays there");
    // A job's own text is opened, wherever it is pasted.
    let job = "{\n  \"format\": \"quirefit-job\"\n}";
    let paste = "const data = new DataTransfer(); data.setData('text/plain', arguments[0]); \
        const paste = new ClipboardEvent('paste', { bubbles: true, cancelable: true, clipboardData: data, \
            data: arguments[0], dataType: 'text/plain' }); \
        document.getElementById('word').dispatchEvent(paste); return paste.defaultPrevented";
    assert_eq!(page.script(paste, vec![json!(job)]).await?, json!(true));
    page.settle().await?;
    assert_eq!(told(page).await?, [format!("file  {job}")]);
    assert_eq!(page.script(paste, vec![json!("{ 60 }")]).await?, json!(false));
    Ok(())
}

/// Where no picture can be made of a drawing, the drawing itself is saved.
async fn a_picture_that_cannot_be_made_is_saved_as_drawn(page: &Page<'_>) -> Outcome {
    open(page).await?;
    let watch = "window.names = []; \
        HTMLAnchorElement.prototype.click = function () { window.names.push(this.download) }";
    page.script(watch, vec![]).await?;
    let whole = "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'/>";
    let none = "HTMLCanvasElement.prototype.toBlob = function (take) { take(null) }";
    for (svg, before) in [("no drawing", ""), (whole, none)] {
        page.script(before, vec![]).await?;
        let picture =
            json!([{ "op": "picture", "name": "a.png", "svg": svg, "width": "9", "height": "9" }]);
        patch(page, picture).await?;
        let saved = "const done = arguments[0]; const look = () => \
            names.length ? done(names.splice(0)) : setTimeout(look, 20); look()";
        assert_eq!(page.script_later(saved, vec![]).await?, json!(["a.svg"]));
    }
    Ok(())
}

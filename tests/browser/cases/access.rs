//! Anybody can use it: every state audited in both themes, by keyboard alone, in narrow windows and
//! with large text, with few colours, without motion.

use crate::case::Outcome;
use crate::cases;
use crate::engine::Engine;
use crate::look::accessible;
use crate::page::Page;
use fantoccini::actions::{InputSource, KeyAction, KeyActions};
use fantoccini::key::Key;
use serde_json::{Value, json};
use std::time::Duration;

const CHROMIUM: &[Engine] = &[Engine::Chromium];
const WITH_KEYS: &[Engine] = &[Engine::Chromium, Engine::Firefox];

cases! { "access":
    a_clients_states_are_clean in CHROMIUM;
    a_designers_states_are_clean in CHROMIUM;
    an_operators_states_are_clean in CHROMIUM;
    a_clients_states_are_clean_in_the_dark in CHROMIUM => Dark;
    a_designers_states_are_clean_in_the_dark in CHROMIUM => Dark;
    an_operators_states_are_clean_in_the_dark in CHROMIUM => Dark;
    what_most_people_see_is_clean;
    what_most_people_see_is_clean_in_the_dark => Dark;
    the_keyboard_reaches_everything_and_shows_where_it_is in WITH_KEYS;
    an_explanation_opens_where_it_was_asked_and_gives_the_focus_back;
    the_same_figure_twice_gives_back_its_own_focus;
    a_figure_in_a_table_is_explained_below_its_row in CHROMIUM;
    targets_are_large_enough;
    a_narrow_window_scrolls_one_way;
    spaced_text_is_not_cut_off in CHROMIUM;
    nothing_moves_for_those_who_asked_for_none in CHROMIUM;
    few_colours_hide_nothing in CHROMIUM;
    fields_stand_still_while_one_types;
    a_verdict_is_told_once_after_a_pause;
}

/// States of the page, and what brings them about.
const STATES: [&str; 9] = [
    "example",
    "empty",
    "incomplete",
    "marginal",
    "unlikely",
    "no",
    "fault",
    "regions",
    "explained",
];

const OPEN_ALL: &str = "for (const one of document.querySelectorAll('details')) \
    if (one.checkVisibility() && !one.open) one.querySelector('summary').click()";

async fn reach(page: &Page<'_>, state: &str) -> Outcome {
    match state {
        "empty" => page.click("#act-new").await?,
        "incomplete" => page.type_into("pages", "60 +").await?,
        "marginal" => page.type_into("pages", "112 + 4").await?,
        "unlikely" => page.type_into("pages", "128 + 4").await?,
        "no" => page.type_into("pages", "400 + 4").await?,
        "fault" => {
            page.type_into("pages", "three score").await?;
            page.type_into("paper", "80 lb").await?;
        }
        "regions" => page.script(OPEN_ALL, vec![]).await.map(drop)?,
        "explained" => {
            page.script(OPEN_ALL, vec![]).await?;
            page.settle().await?;
            page.click("#body-trim .figure").await?;
        }
        _ => {}
    }
    page.settle().await?;
    // What is pinned covers what has scrolled under it: nothing is, at the top.
    page.script("scrollTo(0, 0)", vec![]).await.map(drop)
}

async fn clean(page: &Page<'_>, reading: &str, states: &[&str]) -> Outcome {
    for state in states {
        page.fresh().await?;
        page.click(&format!("#reading-{reading}")).await?;
        reach(page, state).await?;
        accessible(page).await.map_err(|fault| format!("{reading}, {state}: {fault}"))?;
    }
    Ok(())
}

async fn a_clients_states_are_clean(page: &Page<'_>) -> Outcome {
    clean(page, "client", &STATES).await
}

async fn a_designers_states_are_clean(page: &Page<'_>) -> Outcome {
    clean(page, "design", &STATES).await
}

async fn an_operators_states_are_clean(page: &Page<'_>) -> Outcome {
    clean(page, "floor", &STATES).await
}

async fn a_clients_states_are_clean_in_the_dark(page: &Page<'_>) -> Outcome {
    clean(page, "client", &STATES).await
}

async fn a_designers_states_are_clean_in_the_dark(page: &Page<'_>) -> Outcome {
    clean(page, "design", &STATES).await
}

async fn an_operators_states_are_clean_in_the_dark(page: &Page<'_>) -> Outcome {
    clean(page, "floor", &STATES).await
}

async fn what_most_people_see_is_clean(page: &Page<'_>) -> Outcome {
    clean(page, "design", &["example", "no", "explained"]).await?;
    // The question whether to go on with the job of last time.
    page.type_into("pages", "48 + 4").await?;
    page.settle().await?;
    page.reload().await?;
    page.find("#restore-yes").await?;
    accessible(page).await
}

async fn what_most_people_see_is_clean_in_the_dark(page: &Page<'_>) -> Outcome {
    what_most_people_see_is_clean(page).await
}

/// Presses a key wherever the focus is. On the keyboard itself: what is sent to a file input is taken for
/// a file's name.
async fn press(page: &Page<'_>, key: Key) -> Outcome {
    let value = char::from(key);
    let keys = KeyActions::new("keyboard".to_owned())
        .then(KeyAction::Down { value })
        .then(KeyAction::Up { value });
    Ok(page.browser.client.perform_actions(keys).await?)
}

/// What has the focus, and how it is marked: its id or text, and the width of its outline.
const HELD: &str = "const held = document.activeElement; if (held === document.body) return null; \
    const drawn = held.matches('input[type=radio]') ? held.nextElementSibling \
        : held.matches('input[type=file]') ? held.closest('label') : held; \
    const style = getComputedStyle(drawn), box = drawn.getBoundingClientRect(); \
    const seen = document.elementFromPoint(box.x + box.width / 2, box.y + Math.min(box.height / 2, 20)); \
    return { id: held.id || held.className || held.textContent.slice(0, 30), \
        ring: style.outlineStyle === 'none' ? 0 : parseFloat(style.outlineWidth), \
        seen: box.bottom > 0 && box.top < innerHeight && !!seen && (drawn.contains(seen) || seen.contains(drawn) || held === seen) };";

/// Everything that the keyboard must reach, in the order of the page; of radio buttons the chosen one.
const REACHABLE: &str = "return [...document.querySelectorAll('a[href], button, input, select, summary, [tabindex=\"0\"]')] \
    .filter((one) => one.checkVisibility({ visibilityProperty: true }) && one.tabIndex >= 0 && !one.disabled \
        && (one.type !== 'radio' || one.checked)) \
    .map((one) => one.id || one.className || one.textContent.slice(0, 30))";

async fn the_keyboard_reaches_everything_and_shows_where_it_is(page: &Page<'_>) -> Outcome {
    let wanted: Vec<String> = serde_json::from_value(page.script(REACHABLE, vec![]).await?)?;
    assert!(wanted.len() > 40, "{wanted:?}");
    let mut reached: Vec<String> = Vec::new();
    page.script("document.body.tabIndex = -1; document.body.focus()", vec![]).await?;
    for _ in 0..=wanted.len() {
        press(page, Key::Tab).await?;
        let held = page.script(HELD, vec![]).await?;
        let Some(id) = held["id"].as_str() else { break };
        if reached.first().is_some_and(|first| first == id) {
            break;
        }
        assert!(
            held["ring"].as_f64() >= Some(2.0),
            "nothing shows that {id} has the focus: {held}"
        );
        assert_eq!(held["seen"], json!(true), "{id} is focused where nobody sees it");
        reached.push(id.to_owned());
    }
    assert_eq!(reached, wanted, "reached by Tab, and there to be reached");
    Ok(())
}

/// The key of that name, as a driver is told of it.
const ENTER: &str = "\u{e007}";

/// By Enter, by Space; closed by Escape, by the figure itself, by its button.
async fn an_explanation_opens_where_it_was_asked_and_gives_the_focus_back(
    page: &Page<'_>,
) -> Outcome {
    let focus = |id: &'static str| async move {
        page.script("document.getElementById(arguments[0]).focus()", vec![json!(id)]).await
    };
    let held = || async { page.script("return document.activeElement.id", vec![]).await };
    for (id, open, by_escape) in [
        ("ask-spine-0-answer", ENTER, true),
        ("ask-push_out-0-answer", " ", true),
        ("ask-mass-0-answer", ENTER, false),
    ] {
        focus(id).await?;
        page.browser.client.active_element().await?.send_keys(open).await?;
        page.until("explanation", |text| text.contains("Where it comes from")).await?;
        assert_eq!(held().await?, json!("explanation-title"));
        let after = "const note = document.getElementById('explanation'); \
            return note.previousElementSibling.contains(document.getElementById(arguments[0]))";
        assert_eq!(page.script(after, vec![json!(id)]).await?, json!(true), "{id}: far away");
        if by_escape {
            press(page, Key::Escape).await?;
        } else {
            press(page, Key::Tab).await?;
            assert_eq!(held().await?, json!("explanation-close"), "{id}");
            press(page, Key::Enter).await?;
        }
        assert_eq!(held().await?, json!(id), "the focus is lost");
        assert_eq!(page.text("explanation").await?, "");
    }
    page.click("#ask-spine-0-answer").await?;
    page.until("explanation", |text| !text.is_empty()).await?;
    page.click("#ask-spine-0-answer").await?;
    assert_eq!(page.text("explanation").await?, "", "tapped again it closes");
    Ok(())
}

async fn the_same_figure_twice_gives_back_its_own_focus(page: &Page<'_>) -> Outcome {
    page.click("#summary-cover").await?;
    page.settle().await?;
    for id in ["ask-spine-0-body-cover", "ask-spine-0-answer"] {
        page.click(&format!("#{id}")).await?;
        page.until("explanation", |text| !text.is_empty()).await?;
        let near = "const note = document.getElementById('explanation'), one = document.getElementById(arguments[0]); \
            const apart = note.getBoundingClientRect().top - one.getBoundingClientRect().bottom; \
            return [apart >= 0 && apart < 200, one.getAttribute('aria-expanded'), \
                document.querySelectorAll('[aria-expanded=true]').length]";
        assert_eq!(page.script(near, vec![json!(id)]).await?, json!([true, "true", 1]), "{id}");
        press(page, Key::Escape).await?;
        let held = page.script("return document.activeElement.id", vec![]).await?;
        assert_eq!(held, json!(id));
    }
    Ok(())
}

async fn a_figure_in_a_table_is_explained_below_its_row(page: &Page<'_>) -> Outcome {
    page.width(390).await?;
    page.click("#summary-inside").await?;
    page.settle().await?;
    page.click("#ask-leaf_length-3-body-inside").await?;
    page.until("explanation", |text| text.contains("Sheet 3")).await?;
    let place = "const note = document.getElementById('explanation'), row = note.closest('tr'); \
        return [row.previousElementSibling.querySelector('th').textContent, \
            document.querySelectorAll('tr.noted').length]";
    assert_eq!(page.script(place, vec![]).await?, json!(["3", 1]));
    // It outlives the table's next printing, and follows it.
    page.type_into("size", "A6").await?;
    page.settle().await?;
    assert_eq!(page.script(place, vec![]).await?, json!(["3", 1]));
    page.click("#explanation-close").await?;
    let rows = "return document.querySelectorAll('tr.noted').length";
    assert_eq!(page.script(rows, vec![]).await?, json!(0));
    Ok(())
}

/// Controls smaller than they should be: 44 pixels for what matters, 24 for all others, except a
/// figure in a sentence, which the sentence's line holds in place.
const SMALL: &str = "const main = '.button, .history button, .files button, .question button, .fix, \
        #readings button, .field > input:not([type=file]), .field > select, .options label, .tick, \
        .figures .figure, .more > summary, .region details[id^=open-] > summary, #explanation-close'; \
    const found = []; \
    for (const one of document.querySelectorAll('a[href], button, input, select, summary, label:has(> input)')) { \
        if (!one.checkVisibility() || one.matches('label input, [aria-hidden=true]')) continue; \
        const line = one.matches('.figure') && one.closest('p, li') && !one.closest('.figures, td, dd'); \
        const least = one.matches(main) ? 44 : 24, box = one.getBoundingClientRect(); \
        if (!line && (box.height < least - 0.5 || box.width < 23.5)) \
            found.push(`${one.id || one.className} ${box.width} × ${box.height}`); \
    } return found";

async fn targets_are_large_enough(page: &Page<'_>) -> Outcome {
    for reading in ["client", "design", "floor"] {
        page.click(&format!("#reading-{reading}")).await?;
        page.settle().await?;
        page.script(OPEN_ALL, vec![]).await?;
        page.settle().await?;
        let small = page.script(SMALL, vec![]).await?;
        assert_eq!(small, json!([]), "{reading}");
    }
    Ok(())
}

/// What sticks out of the page sideways.
const WIDE: &str = "return document.documentElement.scrollWidth <= innerWidth ? [] \
    : [...document.querySelectorAll('.page *')].filter((one) => one.checkVisibility() \
        && one.getBoundingClientRect().right > innerWidth + 1 && !one.closest('.scroll, svg')) \
        .slice(0, 5).map((one) => one.id || one.className || one.localName)";

/// Types the pages without keys.
const TYPED: &str = "const pages = document.querySelector('[name=pages]'); pages.value = arguments[0]; \
    pages.dispatchEvent(new Event('input', { bubbles: true }))";

/// 320 pixels is also a window of 1280 at four times the size, 640 at twice.
async fn a_narrow_window_scrolls_one_way(page: &Page<'_>) -> Outcome {
    for width in [320, 640] {
        page.width(width).await?;
        // The longest answer. WebKit's driver does not type into a frame.
        page.script(TYPED, vec![json!("128 + 4")]).await?;
        page.settle().await?;
        assert!(page.text("verdict").await?.contains("Probably not"), "{width}");
        for reading in ["client", "design", "floor"] {
            page.click(&format!("#reading-{reading}")).await?;
            page.settle().await?;
            page.script(OPEN_ALL, vec![]).await?;
            page.settle().await?;
            assert_eq!(page.script(WIDE, vec![]).await?, json!([]), "{reading} at {width}");
        }
    }
    Ok(())
}

/// Lines, words and letters as far apart as a reader may set them (WCAG 1.4.12).
async fn spaced_text_is_not_cut_off(page: &Page<'_>) -> Outcome {
    page.width(390).await?;
    page.script(OPEN_ALL, vec![]).await?;
    let spaced = "const sheet = new CSSStyleSheet(); sheet.replaceSync('* { line-height: 1.5 !important; \
        letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }'); \
        document.adoptedStyleSheets = [sheet]";
    page.script(spaced, vec![]).await?;
    page.settle().await?;
    assert_eq!(page.script(WIDE, vec![]).await?, json!([]), "spaced text is wider than the window");
    let cut = "return [...document.querySelectorAll('button, summary, label, legend, h2, .echo, .hint')] \
        .filter((one) => one.checkVisibility() && !one.closest('.quiet, .pin') && getComputedStyle(one).overflow !== 'visible' \
            && (one.scrollHeight > one.clientHeight + 1 || one.scrollWidth > one.clientWidth + 1)) \
        .map((one) => one.id || one.className)";
    assert_eq!(page.script(cut, vec![]).await?, json!([]), "text is cut off");
    Ok(())
}

async fn media(page: &Page<'_>, name: &str, value: &str) -> Outcome {
    let features = json!([{ "name": name, "value": value }]);
    page.browser
        .devtools("Emulation.setEmulatedMedia", json!({ "features": features }))
        .await
        .map(drop)
}

async fn nothing_moves_for_those_who_asked_for_none(page: &Page<'_>) -> Outcome {
    let moving = "return [...document.querySelectorAll('.page, .page *')].flatMap((one) => \
        [null, '::after'].map((part) => getComputedStyle(one, part))) \
        .filter((style) => style.transitionDuration.split(', ').some((time) => parseFloat(time) > 0) \
            || style.animationDuration.split(', ').some((time) => parseFloat(time) > 0)).length";
    media(page, "prefers-reduced-motion", "reduce").await?;
    assert_eq!(page.script(moving, vec![]).await?, json!(0));
    // Without the wish something does, or this would show nothing.
    media(page, "prefers-reduced-motion", "no-preference").await?;
    assert_ne!(page.script(moving, vec![]).await?, json!(0));
    media(page, "prefers-color-scheme", "light").await
}

async fn few_colours_hide_nothing(page: &Page<'_>) -> Outcome {
    media(page, "forced-colors", "active").await?;
    let drawn = "const canvas = getComputedStyle(document.body).backgroundColor; \
        const seen = (css, of) => { const one = document.querySelector(css); \
            return !!one && ![canvas, 'none', 'rgba(0, 0, 0, 0)'].includes(getComputedStyle(one)[of]) }; \
        document.querySelector('#ask-spine-0-answer').focus(); \
        return [matchMedia('(forced-colors: active)').matches, seen('.verdict .mark', 'stroke'), \
            seen('.verdict', 'color'), seen('#picture text', 'fill'), seen('#picture .cut:not(text)', 'stroke'), \
            seen('#picture .hair:not(text)', 'stroke'), seen(':focus', 'outlineColor'), \
            seen('.figure', 'borderBottomColor'), seen('.options :checked ~ span', 'borderBottomColor')]";
    let found = page.script(drawn, vec![]).await?;
    assert_eq!(
        found,
        Value::Array(vec![json!(true); 9]),
        "forced, mark, word, text, cut, hair, focus, figure, choice"
    );
    media(page, "prefers-color-scheme", "light").await
}

/// What is understood, asked or found wrong appears in a place that is kept free: fields below do not
/// move. A question brings its answers with it, once.
async fn fields_stand_still_while_one_types(page: &Page<'_>) -> Outcome {
    let place = "return ['size', 'paper', 'copies'].map((name) => Math.round( \
        document.querySelector(`[name=${name}]`).getBoundingClientRect().top + scrollY))";
    let question = "return !!document.querySelector(`#echo-${arguments[0]} button`)";
    page.click("#act-new").await?;
    let before = page.script(place, vec![]).await?;
    for (field, texts) in [
        ("pages", ["6", "60 +", "60 + 4", "three score"]),
        ("size", ["A", "A5", "3 x 4 mm", "large"]),
        ("paper", ["13", "130", "130 silk", "90 gsm 112 µm"]),
    ] {
        for text in texts {
            page.type_into(field, text).await?;
            page.settle().await?;
            let now = page.script(place, vec![]).await?;
            let asked = page.script(question, vec![json!(field)]).await? == json!(true);
            assert_eq!(asked, text == "130", "“{text}” as {field}: a question");
            // The answers to a question take their place below it, and nowhere above.
            let last = if asked { 2 } else { 3 };
            let places = |all: &Value| all.as_array().map(|all| all[..last].to_vec());
            assert_eq!(places(&now), places(&before), "“{text}” as {field} moved the fields below");
        }
    }
    Ok(())
}

async fn a_verdict_is_told_once_after_a_pause(page: &Page<'_>) -> Outcome {
    tokio::time::sleep(Duration::from_millis(900)).await;
    let watch = "window.told = []; new MutationObserver(() => told.push( \
        document.querySelector('[role=status]').textContent)).observe( \
        document.querySelector('[role=status]'), { childList: true, characterData: true, subtree: true })";
    page.script(watch, vec![]).await?;
    page.type_into("pages", "400 + 4").await?;
    page.settle().await?;
    tokio::time::sleep(Duration::from_millis(1200)).await;
    page.type_on("pages", " ").await?;
    tokio::time::sleep(Duration::from_millis(1200)).await;
    assert_eq!(page.script("return told", vec![]).await?, json!(["No."]));
    Ok(())
}

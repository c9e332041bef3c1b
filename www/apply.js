// Events in, patches out: tells the session what happened, moves into the page what it answers.

import { copy, download, paint } from "./files.js";
import { decode } from "./packed.js";

// Keys that may be meant for the page, wherever, and for a list of suggestions.
const EVERYWHERE = /^(Ctrl\+(Shift\+)?z|Ctrl\+y|Enter)$/;
const IN_A_LIST = /^(Arrow(Up|Down)|Escape|Home|End)$/;
const PAUSE = 700; // ms of quiet before a changed verdict is read aloud, so that typing is not

/**
 * Listens in `root`. `ask` turns an event into patches; `keep` stores a text, false if it cannot;
 * `beside` passes a question on to whoever works beside the page.
 */
export function attach(root, ask, keep, beside) {
  const shown = new WeakMap(); // element → the HTML it was given last
  const open = new Map(); // id of a details → whether it stands open
  const scrolled = new Map(); // id → [left, top]
  let applying = false;
  let taken; // the last key was meant for the page
  let resting; // what is left for after the next paint
  let speaking;

  const named = (name) => root.querySelectorAll(`[name="${CSS.escape(name)}"]`);
  const picked = (control) => /^(radio|checkbox|select-one)$/.test(control.type);
  const ticks = (control) => /^(radio|checkbox)$/.test(control.type);
  const suggests = (control) => control.matches?.("[role=combobox]");
  const typed = (control) => control.name && !picked(control) && control.type !== "file";

  let note; // what stands behind the figure of this id, and the figure as it was found
  let noted = "";
  let figure;
  let reader; // what had the focus in the note while it was away
  const home = document.createComment("");

  // Puts the note behind the paragraph, line, or row of a table that its figure stands in.
  const place = () => {
    const now = noted ? root.getElementById(noted) : null;
    if (!note || (now === figure && note.isConnected && (!now || now.isConnected))) return;
    figure?.removeAttribute("aria-expanded");
    const row = note.closest("tr.noted");
    const block = now && now.closest("tr, li, dd, p");
    if (!block) home.after(note);
    else if (block.localName === "tr") {
      block.insertAdjacentHTML("afterend", '<tr class="noted"><td colspan="99"></td></tr>');
      block.nextSibling.firstChild.append(note);
    } else if (block.localName === "p") block.after(note);
    else block.append(note);
    row?.remove();
    now?.setAttribute("aria-expanded", "true");
    figure = now;
    reader?.focus({ preventScroll: true });
    reader = null;
  };

  // Open disclosures, focus, caret and scroll outlive the swap.
  const swap = (element, html) => {
    if (shown.get(element) === html) return;
    shown.set(element, html);
    if (note && element !== note && element.contains(note)) {
      reader = note.contains(root.activeElement) ? root.activeElement : null;
      home.after(note); // it would go with what is swapped; it comes back when all is patched
    }
    const held = root.activeElement;
    const inside = held && held !== element && element.contains(held);
    const caret = inside && Number.isInteger(held.selectionEnd) && [held.selectionStart, held.selectionEnd];
    element.innerHTML = html;
    for (const details of element.querySelectorAll("details[id]")) {
      if (open.has(details.id)) details.open = open.get(details.id);
      open.set(details.id, details.open);
    }
    for (const [id, place] of scrolled) {
      const box = root.getElementById(id);
      if (box && box !== element && element.contains(box)) box.scrollTo(...place);
    }
    const heir = inside && held.id && root.getElementById(held.id);
    if (!heir) return;
    heir.focus({ preventScroll: true });
    if (caret) heir.setSelectionRange(...caret);
  };

  const speaker = () => root.host ?? root.documentElement;

  const fill = (control, text) => {
    if (ticks(control)) control.checked = control.value === text;
    else if (control.value !== text) control.value = text;
  };

  const set = (element, name, value) => {
    if (value === null || value === undefined) element.removeAttribute(name);
    else element.setAttribute(name, value);
    if (name === "open") open.set(element.id, element.open);
  };

  // A task after the next paint. Any event before that puts it off.
  const rest = () => {
    resting = undefined;
    tell("rest");
  };
  const later = () => {
    const mine = (resting = {});
    requestAnimationFrame(() => setTimeout(() => resting === mine && rest()));
  };
  // A page that goes out of sight is painted no more, and may be closed: what is left is done at once.
  addEventListener("visibilitychange", () => document.hidden && resting && rest(), true);

  const announce = (text) => {
    clearTimeout(speaking);
    speaking = setTimeout(() => (root.querySelector("[role=status]").textContent = text), PAUSE);
  };

  const at = (work) => (patch) => {
    const element = root.getElementById(patch.id);
    if (element) work(element, patch);
    else console.error(`${patch.op}: nothing has the id ${patch.id}`);
  };
  const work = {
    html: at((element, { html }) => swap(element, html)),
    text: at((element, { text }) => element.textContent === text || (element.textContent = text)),
    value: ({ id, text }) => named(id).forEach((control) => fill(control, text)),
    attr: at((element, { name, value }) => set(element, name, value)),
    place: at((element, { at }) => {
      if (note !== element) element.before(home);
      [note, noted] = [element, at];
      place();
    }),
    focus: at((element) => element.focus()),
    near: at((element) => element.scrollIntoView({ block: "nearest" })),
    taken: () => (taken = true),
    store: ({ text }) => keep(text) || setTimeout(tell, 0, "storage", "", "none"),
    language: ({ tag }) => (speaker().lang = tag),
    title: ({ text }) => root === document && (document.title = text),
    address: ({ text }) => root === document && history.replaceState(null, "", text),
    download: ({ name, text }) => download(name, text),
    save: ({ name, base64 }) => download(name, decode(base64)),
    picture: ({ name, svg, width, height }) => paint(name, svg, width, height),
    copy: ({ text }) => copy(text),
    announce: ({ text }) => announce(text),
    print: () => {
      const now = new Intl.DateTimeFormat(speaker().lang, { dateStyle: "long", timeStyle: "short" }).format();
      root.querySelectorAll("[data-now]").forEach((element) => (element.textContent = now));
      setTimeout(print); // the window it opens holds the script up
    },
    ...beside,
    later,
  };

  const run = (patches) => {
    applying = true;
    try {
      for (const patch of patches) work[patch.op](patch);
      place();
    } finally {
      applying = false;
    }
  };
  const tell = (kind, id = "", value = "") => {
    if (resting) later();
    run(ask(kind, id, value));
  };

  // Captured, since toggle and scroll do not bubble. What a swap itself sets off (Chromium's
  // focusout, say) is no news to the session.
  const on = (kind, hear) =>
    root.addEventListener(kind, (event) => applying || hear(event, event.target), true);

  on("input", (_, control) => typed(control) && tell("input", control.name, control.value));
  on("change", (_, control) => {
    if (!control.name || !picked(control)) return;
    tell("change", control.name, control.type === "checkbox" && !control.checked ? "" : control.value);
  });
  on("focusout", (_, control) => typed(control) && tell("leave", control.name, control.value));
  on("click", (_, target) => {
    const control = target.closest("[data-act]");
    if (control) tell("act", control.dataset.act, control.dataset.value ?? control.id);
    else if (suggests(target)) tell("tap", target.name);
  });
  // A tap on a suggestion leaves the focus in the field.
  on("mousedown", (event, target) => target.closest("[role=listbox]") && event.preventDefault());
  on("keydown", (event, target) => {
    const held = (event.ctrlKey || event.metaKey ? "Ctrl+" : "") + (event.shiftKey ? "Shift+" : "");
    const key = held ? held + event.key.toLowerCase() : event.key;
    if (event.isComposing || event.altKey) return;
    if (!EVERYWHERE.test(key) && !(suggests(target) && IN_A_LIST.test(key))) return;
    taken = false;
    tell("key", target.name, key);
    if (taken) event.preventDefault();
  });
  on("keydown", ({ key, defaultPrevented }) => {
    if (key === "Escape" && noted && !defaultPrevented) tell("act", "explain");
  });
  on("submit", (event) => event.preventDefault());
  on("scroll", (_, box) => box.id && scrolled.set(box.id, [box.scrollLeft, box.scrollTop]));
  on("toggle", (_, details) => {
    // Silence for what a patch opened or closed; the event comes a task later than the change.
    if (!details.id || open.get(details.id) === details.open) return;
    open.set(details.id, details.open);
    tell("toggle", details.id, details.open ? "open" : "closed");
  });
  addEventListener("beforeprint", () => tell("print"));
  addEventListener("afterprint", () => tell("printed"));

  root.querySelectorAll("details[id]").forEach((details) => open.set(details.id, details.open));
  return { on, run, tell, root };
}

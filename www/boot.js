// Starts the planner in one root: the page's document here, a shadow root where it is embedded.
// Everything is held per root; two planners in one page know nothing of each other.

import { bindings } from "bindings"; // what wasm-bindgen wrote, in a function; see pkg-scripts/page
import { attach } from "./apply.js";
import { designs } from "./design.js";
import { drags } from "./drag.js";
import { listen, recall, remember } from "./files.js";
import { lists } from "./titles.js";
import { hire } from "./worker.js";

/**
 * `planner` promises the module and `words` the language files by language, none where the module brings
 * its own; `reader` gives a promise of the module that reads PDF, once it is wanted; `source` is the text
 * of this script, where a helper may be started from it; `kept` hears what would be kept for next time
 * where this root keeps nothing. Done when the planner has answered for the first time; gives back what
 * tells the session.
 */
export async function boot(root, { planner, words, reader, source, kept }) {
  // Storage and address belong to the page itself, not to a page it stands in.
  const own = root === document;
  let saved = own ? recall() : null;
  let module;
  let texts;
  let session;
  const early = []; // what was done before the planner had started

  const begin = (draft) => {
    // Bindings of its own each time: an instance that has trapped cannot be mended.
    const { initSync, Session } = bindings();
    initSync({ module });
    const built = document.querySelector('meta[name="built-from"]')?.content;
    const languages = [...navigator.languages];
    session = new Session({ words: texts, languages, saved: draft, built });
    return session.handle({ kind: "start", id: "", value: own ? location.href : "" });
  };

  // After a trap the last draft is replayed; if that is what traps, the page starts without it.
  const start = (trap) => {
    for (const draft of saved === null ? [null] : [saved, null]) {
      try {
        const patches = begin(draft);
        if (!trap) return patches;
        return [...patches, ...session.handle({ kind: "trap", id: "", value: trap })];
      } catch (error) {
        trap = String(error);
      }
    }
    throw new Error(trap);
  };

  const ask = (kind, id, value) => {
    if (!module) {
      early.push([kind, id, value]);
      return [];
    }
    try {
      return session.handle({ kind, id, value });
    } catch (error) {
      return start(String(error));
    }
  };
  // Another page of this file keeps its state in the same place: the session hears of it first, and
  // stores both.
  let seen = saved;
  const keep = (text) => {
    saved = text || null;
    if (!own) {
      kept?.(text);
      return true;
    }
    const there = recall();
    if (there && there !== seen) {
      seen = there;
      setTimeout(page.tell, 0, "elsewhere", "", there);
      return true;
    }
    const stored = remember(text);
    if (stored) seen = saved;
    return stored;
  };

  let seek = () => {};
  let list = () => {};
  let design = () => {};
  const beside = {
    search: (question) => seek(question),
    list: (question) => list(question),
    design: (question) => design(question),
  };
  const page = attach(root, ask, keep, beside);
  const opened = listen(page);
  drags(page);

  [module, texts] = await Promise.all([planner, words]);

  // No event comes between here and the end. What was typed before stays in the form as it is, and
  // all that was done is told in its order.
  const touched = early.filter(([kind]) => kind === "input" || kind === "change");
  const held = new Map(touched.map(([, id, text]) => [id, text]));
  page.run(start().filter(({ op, id }) => op !== "value" || !held.has(id)));
  page.run([...held].map(([id, text]) => ({ op: "value", id, text })));
  for (const event of early) page.tell(...event);
  performance.mark("started"); // for whoever measures: pkg-scripts/bench

  // How wide the page stands, now and whenever that changes. In a frame of its own, since what the
  // patches change may bring a scroll bar and with it another width.
  const width = ([{ contentRect }]) =>
    requestAnimationFrame(() => page.tell("width", "", String(Math.round(contentRect.width))));
  new ResizeObserver(width).observe(root.getElementById("page"));
  if (own) addEventListener("hashchange", () => page.tell("address", "", location.href));
  list = lists(source, module, texts, opened, page.tell);
  design = designs(source, reader, opened, page.tell);
  if (source) seek = hire(source, module, page.tell);
  // Writing back what is there shows whether anything can be kept at all.
  if (own && !remember(recall() ?? "")) page.tell("storage", "", "none");
  return page.tell;
}

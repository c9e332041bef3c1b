// Starts the planner in one root: the page's document here, a shadow root where it is embedded.
// Everything is held per root; two planners in one page know nothing of each other.

import { bindings } from "bindings"; // what wasm-bindgen wrote, in a function; see pkg-scripts/page
import { attach } from "./apply.js";
import { listen, recall, remember } from "./files.js";
import { hire } from "./worker.js";

const decode = (text) =>
  Uint8Array.fromBase64
    ? Uint8Array.fromBase64(text)
    : Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

/**
 * `planner` is the module in base64, `words` the language files by language; `source` the text of
 * this script, where a helper may be started from it.
 */
export function boot(root, planner, words, source) {
  const module = new WebAssembly.Module(decode(planner));
  const own = root === document; // storage belongs to the page itself, not to a page it stands in
  let saved = own ? recall() : null;
  let session;

  const begin = (draft) => {
    // Bindings of its own each time: an instance that has trapped cannot be mended.
    const { initSync, Session } = bindings();
    initSync({ module });
    session = new Session({ words, languages: [...navigator.languages], saved: draft });
    return session.handle({ kind: "start", id: "", value: "" });
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
    try {
      return session.handle({ kind, id, value });
    } catch (error) {
      return start(String(error));
    }
  };
  const keep = (text) => {
    saved = text || null;
    return !own || remember(text);
  };

  const first = start();
  let seek = () => {};
  const page = attach(root, ask, keep, (question) => seek(question));
  listen(page);
  page.run(first);
  if (source) seek = hire(source, module, page.tell);
  // Writing back what is there shows whether anything can be kept at all.
  if (own && !remember(saved || "")) page.tell("storage", "", "none");
}

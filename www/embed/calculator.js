// The whole calculator in an element: the planner's own page in a shadow root. It is loaded by the first
// element that wants it.

import { boot } from "../boot.js";
import { tidings } from "./tidings.js";
import frame from "frame.html";
import page from "page.css";

const style = new CSSStyleSheet();
style.replaceSync(page);
// Helpers beside the page start from a text of their own, where the page around allows that.
const source = fetch(new URL("./beside.js", import.meta.url)).then((answer) => answer.text());
const compiled = (name) => WebAssembly.compileStreaming(fetch(new URL(name, import.meta.url)));

/**
 * Starts in an element's shadow root, with the planner's module. `changed` hears of the job and the shop as
 * their files hold them, and of who reads. Gives back what takes the element's attributes: see `tidings`.
 */
export async function calculator(root, module, changed) {
  root.adoptedStyleSheets = [style];
  root.innerHTML = frame;
  root.getElementById("notice").hidden = true;
  // What the frame shows at first is not for every reader.
  const body = root.getElementById("page");
  body.hidden = true;
  const tell = await boot(root, {
    planner: module,
    words: {},
    reader: () => compiled("./reader_bg.wasm"),
    source: await source.catch(() => ""),
    kept: (text) => {
      const { job, shop, reading } = JSON.parse(text || "{}");
      if (job) changed(job, shop ?? null, reading);
    },
  });
  const told = tidings(tell);
  return (attributes) => {
    told(attributes);
    body.hidden = false;
  };
}

// A second instance of the planner beside the page: it searches for what would make a book fit while
// the page answers the next key. It is this same script, started once more from a blob.

import { bindings } from "bindings";
import { design } from "./design.js";
import { helper } from "./desk.js";
import { titles } from "./titles.js";

const PATIENCE = 5000; // ms until a helper that says nothing counts as lost
const DESKS = { titles, design };

/** In a helper: takes the module, then questions; answers each with its number. Or is a desk. */
export function serve() {
  let search;
  let shop = "";
  onmessage = ({ data }) => {
    if (data.desk) {
      const say = (what, text, bytes) => postMessage([what, text, bytes], bytes ? [bytes.buffer] : []);
      const work = DESKS[data.desk](say, setTimeout);
      onmessage = ({ data }) => work(data);
      return;
    }
    if (data.module) {
      const planner = bindings();
      planner.initSync({ module: data.module });
      search = planner.search;
      postMessage({});
      return;
    }
    shop = data.shop ?? shop;
    postMessage({ number: data.number, found: search(data.job, shop) });
  };
}

/**
 * On the page: starts a helper from the text of the page's script. Gives back what takes a question;
 * while one is being worked on, only the latest of those that come is kept. Where no helper can be
 * had, the session is told, and searches by itself.
 */
export function hire(source, module, tell) {
  let held;
  let busy = true; // until it has taken the module
  let waiting;
  let watch;

  const lost = () => {
    clearTimeout(watch);
    held?.end();
    held = undefined;
    tell("helper", "", "none");
  };
  const send = (message) => {
    busy = true;
    watch = setTimeout(lost, PATIENCE);
    held.worker.postMessage(message);
  };
  try {
    held = helper(source);
    const { worker } = held;
    worker.onerror = lost;
    worker.onmessageerror = lost;
    worker.onmessage = ({ data: { number, found } }) => {
      clearTimeout(watch);
      busy = false;
      const next = waiting;
      waiting = undefined;
      if (next) send(next);
      if (number === undefined) tell("helper", "", "ready");
      else if (!next) tell("found", number, found);
    };
    send({ module });
  } catch {
    lost();
  }
  return ({ number, job, shop }) => {
    if (!held) return setTimeout(tell, 0, "helper", "", "none");
    const message = { number, job, shop: shop ?? waiting?.shop };
    if (busy) waiting = message;
    else send(message);
  };
}

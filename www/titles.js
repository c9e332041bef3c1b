// Lists of titles: a planner of their own, in a worker where one can be had, else here between events.

import { bindings } from "bindings";
import { desk } from "./desk.js";

const FIRST = 100; // rows until the table shows for the first time
const SLICE = 500; // rows between two looks at what else is asked

/** Works at one list. Takes `{ module, words }`, then questions; `say(what, text)` answers. */
export function titles(say, later) {
  const { initSync, Titles } = bindings();
  let words;
  let list;
  let stopped = false;

  const go = (rows) => {
    if (stopped) return;
    const told = list.go_on(rows);
    say("progress", told);
    // A task of its own: a question may have come meanwhile.
    if (told.endsWith("more")) later(() => go(SLICE));
  };
  const does = {
    begin: ({ language, units, shop, bytes }) => {
      try {
        list = new Titles({ words }, language, units, shop, bytes);
      } catch (fault) {
        if (typeof fault !== "string") throw fault;
        return say("fault", fault);
      }
      go(FIRST);
    },
    stop: () => (stopped = true),
    show: ({ language, units, text }) => say("table", list.table(language, units, text)),
    save: () => say("csv", list.csv()),
    take: ({ text }) => say("job", list.job(text)),
  };
  return (message) => {
    if (message.module) {
      initSync({ module: message.module });
      words = message.words;
    } else if (list || message.ask === "begin") does[message.ask](message);
  };
}

/** On the page: gives back what takes the session's questions. Each list has a desk of its own. */
export function lists(source, module, words, opened, tell) {
  let held;
  let turn = 0; // which list is meant: what an earlier one still has to say is no longer wanted

  return async (question) => {
    if (question.ask !== "begin") return held?.send(question);
    held?.end();
    held = undefined;
    const mine = (turn += 1);
    const bytes = new Uint8Array(await opened().arrayBuffer());
    if (mine !== turn) return;
    held = desk(source, "titles", titles, (what, text) => mine === turn && tell("list", what, text));
    held.send({ module, words });
    held.send({ ...question, bytes }, [bytes.buffer]);
  };
}

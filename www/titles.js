// Lists of titles: a planner of their own, in a worker where one can be had, else here between events.

import { bindings } from "bindings";

const FIRST = 100; // rows until the table shows for the first time
const SLICE = 500; // rows between two looks at what else is asked

/** Works at one list. Takes `{ module, words }`, then questions; `say(what, text)` answers. */
export function desk(say) {
  const { initSync, Titles } = bindings();
  let words;
  let titles;
  let stopped = false;

  const go = (rows) => {
    if (stopped) return;
    const told = titles.go_on(rows);
    say("progress", told);
    // A task of its own: a question may have come meanwhile.
    if (told.endsWith("more")) setTimeout(go, 0, SLICE);
  };
  const does = {
    begin: ({ language, units, shop, bytes }) => {
      try {
        titles = new Titles({ words }, language, units, shop, bytes);
      } catch (fault) {
        if (typeof fault !== "string") throw fault;
        return say("fault", fault);
      }
      go(FIRST);
    },
    stop: () => (stopped = true),
    show: ({ language, units, text }) => say("table", titles.table(language, units, text)),
    save: () => say("csv", titles.csv()),
    take: ({ text }) => say("job", titles.job(text)),
  };
  return (message) => {
    if (message.module) {
      initSync({ module: message.module });
      words = message.words;
    } else if (titles || message.ask === "begin") does[message.ask](message);
  };
}

/** On the page: gives back what takes the session's questions. Each list has a desk of its own. */
export function desks(source, module, words, opened, tell) {
  let post = () => {};
  let close = () => {};

  const hire = (say) => {
    const url = URL.createObjectURL(new Blob([source], { type: "text/javascript" }));
    const worker = new Worker(url);
    worker.onmessage = ({ data: [what, text] }) => say(what, text);
    worker.onerror = () => say("lost", "");
    close = () => {
      worker.terminate();
      URL.revokeObjectURL(url);
    };
    return (message) => worker.postMessage(message);
  };
  const here = (say) => {
    const work = desk(say);
    close = () => work({ ask: "stop" });
    return (message) => {
      try {
        work(message);
      } catch (error) {
        console.error(error);
        say("lost", "");
      }
    };
  };
  return async (question) => {
    if (question.ask !== "begin") return post(question);
    close();
    // What an earlier list still has to say is no longer wanted.
    const mine = {};
    post = mine.post = () => {};
    const say = (what, text) => setTimeout(() => post === mine.post && tell("list", what, text));
    const bytes = new Uint8Array(await opened().arrayBuffer());
    if (post !== mine.post) return;
    let send;
    try {
      send = hire(say);
    } catch {
      send = here(say);
    }
    post = mine.post = send;
    send({ module, words, list: true });
    send({ ...question, bytes });
  };
}

// The design's own PDF: read and written by a module of its own, which the page holds packed until the
// first file comes. It works beside the page, and a file that breaks it takes nothing else with it.

import { readers } from "bindings";
import { desk } from "./desk.js";
import { download } from "./files.js";

const TURN = 50; // ms of writing between two looks at what else is asked

/** Works at files. Takes `{ module }`, then questions; `say(what, text, bytes)` answers. */
export function design(say, later) {
  const { initSync, Reader } = readers();
  let reader;
  let writing;

  const go = (name) => {
    if (writing !== name) return;
    const began = performance.now();
    let share = 0;
    while (share < 1 && performance.now() - began < TURN) share = reader.go_on();
    say("progress", String(Math.floor(share * 100)));
    if (share < 1) return later(() => go(name));
    writing = undefined;
    say("written", name, reader.written());
  };
  const does = {
    arrive: ({ text, bytes }) => say("facts", reader.arrive(bytes, text)),
    place: ({ text }) => reader.place(text === "cover"),
    swap: () => reader.swap(),
    write: ({ name, text }) => {
      if (!reader.begin(text)) throw new Error("no order");
      writing = name;
      later(() => go(name));
    },
    stop: () => {
      writing = undefined;
      reader.stop();
    },
  };
  return (message) => {
    if (message.module) {
      initSync({ module: message.module });
      reader = new Reader();
    } else does[message.ask](message);
  };
}

/** On the page: gives back what takes the session's questions. `load` gives a promise of the module. */
export function designs(source, load, opened, tell) {
  let module; // as it was compiled, once
  let held; // the desk, while files are open
  let file; // the last that came: one that is locked is read again
  let turn = 0; // which desk is meant

  const end = () => {
    turn += 1;
    held?.end();
    held = file = undefined;
  };
  const start = () => {
    const mine = turn;
    const say = (what, text, bytes) => {
      if (mine !== turn) return;
      if (what === "lost") end();
      if (bytes) download(text, bytes);
      tell("design", what, text);
    };
    held = desk(source, "design", design, say);
    held.send({ module });
  };
  const arrive = async (question) => {
    // A locked file comes again with its password; any other is the latest.
    file = question.text ? file : opened();
    const mine = turn;
    const [ready, bytes] = await Promise.all([module ?? load(), file.arrayBuffer()]);
    if (mine !== turn) return;
    module = ready;
    if (!held) start();
    held.send({ ...question, bytes: new Uint8Array(bytes) }, [bytes]);
  };

  return (question) => {
    if (question.ask === "end") return end();
    if (question.ask !== "arrive") return held?.send(question);
    arrive(question).catch((error) => {
      console.error(error);
      end();
      tell("design", "lost", "");
    });
  };
}

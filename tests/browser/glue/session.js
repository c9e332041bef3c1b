// Stands in for the planner's module, so that the script around it can be tried alone. What it is
// told is kept in `events`; what it answers stands in `answers`, by the event's kind.

window.events = [];
window.setups = [];
window.answers = {};

class Session {
  constructor(setup) {
    window.setups.push(setup);
    this.poisoned = setup.saved === "poison";
  }

  handle(event) {
    window.events.push(event);
    const answer = window.answers[event.kind];
    if (this.poisoned || answer === "trap") throw new WebAssembly.RuntimeError("unreachable");
    return answer || [];
  }
}

class Titles {}

class Reader {}

export const readers = () => ({ initSync() {}, Reader });
export const bindings = () => ({ initSync() {}, Session, Titles });

// Work beside the page: in a worker started from this script's own text, else here between events.

/** A worker started from a script's text, and what ends it. Throws where none can be had. */
export function helper(source) {
  if (!source) throw new Error("no text to start from");
  const url = URL.createObjectURL(new Blob([source], { type: "text/javascript" }));
  const worker = new Worker(url);
  const end = () => {
    worker.terminate();
    URL.revokeObjectURL(url);
  };
  return { worker, end };
}

/**
 * Starts a desk of a kind, see `serve` in worker.js; `work` makes the same here. `say(what, text, bytes)`
 * takes its answers, and "lost" where it broke. Gives back what sends to it and what ends it.
 */
export function desk(source, kind, work, say) {
  try {
    const { worker, end } = helper(source);
    worker.onmessage = ({ data }) => say(...data);
    worker.onerror = () => say("lost", "");
    worker.postMessage({ desk: kind });
    return { send: (message, moved = []) => worker.postMessage(message, moved), end };
  } catch {
    let ended = false;
    const lost = (error) => {
      console.error(error);
      say("lost", "");
    };
    // A task later, as a worker would; whatever breaks then is told as well.
    const later = (task) =>
      setTimeout(() => {
        try {
          if (!ended) task();
        } catch (error) {
          lost(error);
        }
      });
    const here = work(say, later);
    return { send: (message) => later(() => here(message)), end: () => (ended = true) };
  }
}

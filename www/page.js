// The page's own script: finds the data blocks, then starts the planner in this document. The
// notice stands in the page for whoever cannot run this at all; it goes while the planner starts,
// and comes back where that fails. Then the console says why.

import { boot } from "./boot.js";
import { unpack } from "./packed.js";
import { serve } from "./worker.js";

async function start() {
  const at = (id) => document.getElementById(id);
  const notice = at("notice");
  const own = document.currentScript.textContent;
  notice.hidden = true;
  try {
    const block = (id) => unpack(at(id).textContent);
    const compiled = (id) => block(id).arrayBuffer().then(WebAssembly.compile);
    const [planner, words] = [compiled("planner"), block("words").json()];
    await boot(document, { planner, words, reader: () => compiled("reader"), source: own });
    performance.mark("started");
  } catch (error) {
    notice.hidden = false;
    throw error;
  }
}

// The same text once more, without a page: the helper that searches.
if (self.document) start().catch(console.error);
else serve();

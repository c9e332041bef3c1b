// The page's own script: finds the data blocks, then starts the planner in this document. Where
// that fails, the notice that stands in the page stays, and the console says why.

import { boot } from "./boot.js";
import { serve } from "./worker.js";

function start() {
  const words = {};
  for (const block of document.querySelectorAll("script[data-words]")) {
    words[block.dataset.words] = block.textContent;
  }
  const own = document.currentScript.textContent;
  boot(document, document.getElementById("planner").textContent, words, own);
}

try {
  // The same text once more, without a page: the helper that searches.
  if (self.document) start();
  else serve();
} catch (error) {
  console.error(error);
}

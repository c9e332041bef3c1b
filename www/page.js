// The page's own script: finds the data blocks, then starts the planner in this document. Where
// that fails, the notice that stands in the page stays, and the console says why.

import { boot } from "./boot.js";

try {
  const words = {};
  for (const block of document.querySelectorAll("script[data-words]")) {
    words[block.dataset.words] = block.textContent;
  }
  boot(document, document.getElementById("planner").textContent, words);
} catch (error) {
  console.error(error);
}

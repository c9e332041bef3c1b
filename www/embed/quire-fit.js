// <quire-fit>: the planner's answer, or the whole planner, as an element of any page. Its attributes may
// change at any time.

import { answer, initSync, plan } from "./quirefit.js";
import tokens from "../css/tokens.css";
import result from "../css/result.css";
import own from "./quire-fit.css";
import lost from "lost.json"; // what is said where nothing can start, by language

const FIELDS = ["pages", "size", "paper", "cover", "copies", "spine", "line"];

const EMPTY = '<div id="answer" aria-live="polite"></div>';

const style = new CSSStyleSheet();
style.replaceSync(tokens + result + own);
// The module, once for all elements of a page.
let compiled;
const start = () =>
  (compiled ??= WebAssembly.compileStreaming(fetch(new URL("./quirefit_bg.wasm", import.meta.url))).then(
    (module) => {
      initSync({ module });
      return module;
    },
  ));

export class QuireFit extends HTMLElement {
  static observedAttributes = [...FIELDS, "job", "shop", "reading", "units", "lang"];
  #shop = null;
  #due = false;
  #whole; // what takes the attributes, once the calculator has started

  constructor() {
    super();
    const shadow = this.attachShadow({ mode: "open" });
    shadow.adoptedStyleSheets = [style];
    shadow.innerHTML = EMPTY;
  }

  /** The content of a shop file; null for the demo shop. The attribute of that name holds it as JSON. */
  get shop() {
    return this.#shop ?? this.#file("shop");
  }
  set shop(shop) {
    this.#shop = shop;
    this.#change();
  }

  /** The job that the attributes describe, as a job file holds it: `job` as JSON, then field by field. */
  get job() {
    const given = FIELDS.filter((field) => this.hasAttribute(field));
    const texts = given.map((field) => [field, this.getAttribute(field)]);
    const units = this.hasAttribute("units") ? { units: this.getAttribute("units") } : {};
    const job = { format: "quirefit-job", version: 1, ...this.#file("job"), ...units };
    return { ...job, ...Object.fromEntries(texts) };
  }

  connectedCallback() {
    this.#change();
  }
  attributeChangedCallback() {
    this.#change();
  }

  // What is no JSON goes on as the text it is: the planner says that it is no file.
  #file(name) {
    const text = this.getAttribute(name);
    if (!text) return null;
    try {
      return JSON.parse(text);
    } catch {
      return text;
    }
  }

  // However much changes at once, there is one answer.
  async #change() {
    if (this.#due || !this.isConnected) return;
    this.#due = true;
    try {
      const module = await start();
      if (this.hasAttribute("whole")) await this.#begin(module);
    } catch (error) {
      // Said where it should have stood; the page around may try once more.
      compiled = undefined;
      this.shadowRoot.innerHTML = EMPTY;
      this.shadowRoot.firstChild.textContent = lost[this.#language().slice(0, 2).toLowerCase()] ?? lost.en;
      this.dispatchEvent(new CustomEvent("lost", { detail: error, bubbles: true, composed: true }));
      return;
    } finally {
      this.#due = false;
    }
    if (!this.isConnected) return;
    if (this.#whole) this.#whole(this.#asked());
    else this.#show();
  }

  async #begin(module) {
    if (this.#whole) return;
    const { calculator } = await import("./calculator.js");
    const changed = (...told) => this.#tell(plan(...told));
    this.#whole = await calculator(this.shadowRoot, module, changed);
  }

  // A job is told where there is one: a calculator without begins with its example.
  #asked() {
    const given = this.hasAttribute("job") || FIELDS.some((field) => this.hasAttribute(field));
    const [reading, units] = ["reading", "units"].map((name) => this.getAttribute(name));
    return { job: given ? this.job : null, shop: this.shop, reading, units };
  }

  #language() {
    return this.closest("[lang]")?.lang || navigator.language;
  }

  #show() {
    const reading = this.getAttribute("reading") ?? "design";
    const { html, ...told } = answer(this.job, this.shop, this.#language(), reading);
    const box = this.shadowRoot.getElementById("answer");
    box.innerHTML = html;
    // Only the whole planner can explain a figure.
    for (const button of box.querySelectorAll("button")) {
      const figure = document.createElement("b");
      figure.className = button.className;
      figure.append(...button.childNodes);
      button.replaceWith(figure);
    }
    this.#tell(told);
  }

  #tell({ plan, errors }) {
    const [kind, detail] = plan ? ["plan", plan] : ["faults", errors];
    this.dispatchEvent(new CustomEvent(kind, { detail, bubbles: true, composed: true }));
  }
}

customElements.define("quire-fit", QuireFit);

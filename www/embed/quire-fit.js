// <quire-fit>: the planner's answer as an element of any page. Its attributes are fields of a job, as a
// person types them; they may change at any time.

import init, { answer } from "./quirefit.js";
import tokens from "../css/tokens.css";
import result from "../css/result.css";
import own from "./quire-fit.css";

const FIELDS = ["pages", "size", "paper", "cover", "copies", "spine", "line"];

const style = new CSSStyleSheet();
style.replaceSync(tokens + result + own);
let started; // the module, once for all elements

export class QuireFit extends HTMLElement {
  static observedAttributes = [...FIELDS, "lang"];
  #shop = null;
  #due = false;

  constructor() {
    super();
    const shadow = this.attachShadow({ mode: "open" });
    shadow.adoptedStyleSheets = [style];
    shadow.innerHTML = '<div id="answer" aria-live="polite"></div>';
  }

  /** The content of a shop file; null for the demo shop. */
  get shop() {
    return this.#shop;
  }
  set shop(shop) {
    this.#shop = shop;
    this.#change();
  }

  /** The job that the attributes describe, as a job file holds it. */
  get job() {
    const given = FIELDS.filter((field) => this.hasAttribute(field));
    const texts = given.map((field) => [field, this.getAttribute(field)]);
    return { format: "quirefit-job", version: 1, ...Object.fromEntries(texts) };
  }

  connectedCallback() {
    this.#change();
  }
  attributeChangedCallback() {
    this.#change();
  }

  // However much changes at once, there is one answer.
  async #change() {
    if (this.#due || !this.isConnected) return;
    this.#due = true;
    try {
      await (started ??= init());
    } finally {
      this.#due = false;
    }
    if (this.isConnected) this.#show();
  }

  #show() {
    const language = this.closest("[lang]")?.lang || navigator.language;
    const { html, plan, errors } = answer(this.job, this.#shop, language);
    const box = this.shadowRoot.getElementById("answer");
    box.innerHTML = html;
    // Only the planner's own page can explain a figure.
    for (const button of box.querySelectorAll("button")) {
      const figure = document.createElement("b");
      figure.className = button.className;
      figure.append(...button.childNodes);
      button.replaceWith(figure);
    }
    const [kind, detail] = plan ? ["plan", plan] : ["faults", errors];
    this.dispatchEvent(new CustomEvent(kind, { detail, bubbles: true, composed: true }));
  }
}

customElements.define("quire-fit", QuireFit);

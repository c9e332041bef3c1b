import type { ErrorOut, PlanOut, QuirefitFile } from "./quirefit.js";

/**
 * The planner's answer. Attributes: `pages`, `size`, `paper`, `cover`, `copies`, `spine`, `line`, as a
 * person types them, and `lang`. After each answer it fires `plan`, or `faults` where something given
 * cannot be right; both bubble.
 */
export class QuireFit extends HTMLElement {
  /** The content of a shop file; null for the demo shop. */
  shop: QuirefitFile | null;
  /** The job that the attributes describe, as a job file holds it. */
  readonly job: QuirefitFile;
}

declare global {
  interface HTMLElementTagNameMap {
    "quire-fit": QuireFit;
  }
  interface HTMLElementEventMap {
    plan: CustomEvent<PlanOut>;
    faults: CustomEvent<ErrorOut[]>;
  }
}

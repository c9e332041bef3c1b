import type { BookOut, ErrorOut, PlanOut, QuirefitFile } from "./quirefit.js";

/**
 * The planner's answer; with the attribute `whole` the whole planner. Attributes: `pages`, `size`, `paper`,
 * `cover`, `copies`, `spine`, `line`, as a person types them; `job` and `shop`, contents of files as JSON;
 * `reading`: "client", "design" or "floor"; `units`: "mm" or "in"; `lang`. After each answer it fires
 * `plan`, `faults` where something given cannot be right, or `lost` where it cannot start; all bubble.
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
    plan: CustomEvent<BookOut & Partial<PlanOut>>;
    faults: CustomEvent<ErrorOut[]>;
    lost: CustomEvent<Error>;
  }
}

/**
 * Which of the three steps is on screen: the tape at the thumb moves between them, the browser's Back
 * does too, and each stretch of the tape carries what is known so far.
 */

import { nameScreen } from "./title.js";

/** @typedef {"measure" | "yarn" | "counts"} StepName */
const STEPS = /** @type {StepName[]} */ (["measure", "yarn", "counts"]);

/** Fires "step" (detail: StepName) after every move. */
export class StepsNav extends EventTarget {
  /** @type {StepName} */
  step = "measure";
  /** A plan's link that stays in the address while its plan is looked at ("" for none). */
  link = "";

  /** @param {import("./dialogs.js").Dialogs} dialogs */
  constructor(dialogs) {
    super();
    this.dialogs = dialogs;
    document.addEventListener("click", (event) => {
      const to = event.target instanceof Element && event.target.closest("a[data-to]");
      if (!to) return;
      event.preventDefault();
      this.go(/** @type {StepName} */ (/** @type {HTMLElement} */ (to).dataset.to));
    });
    addEventListener("popstate", () => this.#show(this.#fromAddress()));
    this.#show(this.#fromAddress());
  }

  /** @returns {StepName} */
  #fromAddress() {
    return stepOf(history.state?.step ?? location.hash.slice(1));
  }

  /** @param {StepName} step */
  go(step) {
    this.dialogs.after(() => this.#go(step));
  }

  /** @param {StepName} step */
  #go(step) {
    const address = this.link || `#${step}`;
    const { book } = history.state ?? {};
    // Back leads to the book, not to a label that is given already.
    if (book?.name === "new") history.replaceState({ step }, "", address);
    else if (step !== this.step || book) history.pushState({ step }, "", address);
    this.#show(step);
    scrollTo({ top: 0, behavior: "instant" });
    document.getElementById(`${step}-title`)?.focus({ preventScroll: true });
  }

  /** Begin at a step that the address does not name. @param {string} step */
  begin(step) {
    this.#show(stepOf(step));
    this.settle();
  }

  /** Put the present step and link into the address without a new entry for Back. */
  settle() {
    this.dialogs.after(() =>
      history.replaceState({ step: this.step }, "", this.link || `#${this.step}`),
    );
  }

  /** @param {StepName} step */
  #show(step) {
    this.step = step;
    document.documentElement.dataset.step = step;
    const at = STEPS.indexOf(step);
    STEPS.forEach((name, index) => {
      const stretch = document.querySelector(`.tape a[data-to="${name}"]`);
      stretch?.classList.toggle("reached", index <= at);
      if (index === at) stretch?.setAttribute("aria-current", "step");
      else stretch?.removeAttribute("aria-current");
    });
    nameScreen();
    this.dispatchEvent(new CustomEvent("step", { detail: step }));
  }

  /** @param {StepName} step @param {string} text */
  mark(step, text) {
    const place = document.getElementById(`so-far-${step}`);
    if (place) place.textContent = text;
  }
}

/** The step of that name, else the first. @param {string} name @returns {StepName} */
function stepOf(name) {
  return STEPS.find((step) => step === name) ?? "measure";
}

/** Tell whether an address' fragment is meant as a plan's link. @param {string} hash */
export function isLink(hash) {
  return hash.length > 1 && ![...STEPS, "knit", "book"].includes(hash.slice(1));
}

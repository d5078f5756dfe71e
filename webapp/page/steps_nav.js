/**
 * Which of the three steps is on screen: the tape at the thumb moves between them, the browser's Back
 * does too, and each stretch of the tape carries what is known so far.
 */

import { isShown } from "./seen.js";
import { nameScreen } from "./title.js";

/** @typedef {"measure" | "yarn" | "counts"} Three */
/** @typedef {Three | "made" | "shelf" | "settings"} StepName the last are pages behind the three */
const STEPS = /** @type {StepName[]} */ (["measure", "yarn", "counts"]);
/** A page behind them by the step that it is part of; of the settings it is the one that was shown. */
const BEHIND = /** @type {const} */ ({ made: "yarn", shelf: "yarn", settings: "measure" });

/**
 * Fires "step" (detail: StepName) after every move. A page behind the steps fills the screen like a step of
 * its own; Back leads to what it was opened over.
 */
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
      const target = event.target instanceof Element ? event.target : null;
      if (target?.closest("[data-leaves]")) return this.leave();
      const to = target?.closest("[data-to]");
      if (!to) return;
      event.preventDefault();
      this.go(/** @type {StepName} */ (/** @type {HTMLElement} */ (to).dataset.to));
    });
    document.addEventListener("keydown", ({ key }) => {
      if (key === "Escape" && isBehind(this.step) && !document.querySelector("dialog[open]"))
        this.leave();
    });
    addEventListener("popstate", () => {
      const was = this.step;
      this.#show(this.#fromAddress());
      if (!isBehind(was) || was === this.step) return;
      // The browser, which goes to the part that the address names, would take the focus away again.
      const back = () => waysTo(was).find(isShown)?.focus();
      requestAnimationFrame(() => requestAnimationFrame(back));
    });
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
    else if (step !== this.step || book) {
      const over = isBehind(step) ? { over: this.#over } : {};
      history.pushState({ step, ...over }, "", address);
    }
    this.#show(step);
    scrollTo({ top: 0, behavior: "instant" });
    document.getElementById(`${step}-title`)?.focus({ preventScroll: true });
  }

  /** The step that is shown, or lies under the page that is. @returns {StepName} */
  get #over() {
    if (!isBehind(this.step)) return this.step;
    return history.state?.over ?? BEHIND[this.step];
  }

  /** Close a page that lies over a step. */
  leave() {
    this.dialogs.after(() => {
      if (history.state?.over) history.back();
      else this.#go(this.#over);
    });
  }

  /** Begin at a step that the address does not name. @param {string} step */
  begin(step) {
    this.#show(stepOf(step));
    this.settle();
  }

  /** Put the present step and link into the address without a new entry for Back. */
  settle() {
    this.dialogs.after(() =>
      history.replaceState(
        { step: this.step, ...(history.state?.over && { over: history.state.over }) },
        "",
        this.link || `#${this.step}`,
      ),
    );
  }

  /** @param {StepName} step */
  #show(step) {
    this.step = step;
    document.documentElement.dataset.step = step;
    const at = STEPS.indexOf(this.#over);
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

/** Whatever leads there. @param {StepName} step @returns {HTMLElement[]} */
function waysTo(step) {
  /** @type {NodeListOf<HTMLElement>} */
  const ways = document.querySelectorAll(`[data-to="${step}"]`);
  return [...ways];
}

/** @param {string} step @returns {step is keyof typeof BEHIND} */
export function isBehind(step) {
  return Object.hasOwn(BEHIND, step);
}

/** The step on the tape of a page or a step. @param {StepName | undefined} step @returns {Three | undefined} */
export function onTape(step) {
  return step && isBehind(step) ? BEHIND[step] : step;
}

/** The step of that name, else the first. @param {string} name @returns {StepName} */
function stepOf(name) {
  return isBehind(name) ? name : (STEPS.find((step) => step === name) ?? "measure");
}

/** Tell whether an address' fragment is meant as a plan's link. @param {string} hash */
export function isLink(hash) {
  return (
    hash.length > 1 && ![...STEPS, ...Object.keys(BEHIND), "knit", "book"].includes(hash.slice(1))
  );
}

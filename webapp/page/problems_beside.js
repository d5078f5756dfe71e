/**
 * The problems, each beside the field it speaks of, with what could be written instead at one tap.
 * @import {Problem} from "./types"
 * @import {Form} from "./form.js"
 */
import { html, nothing, render } from "lit-html";
import { placeOf } from "./place_of.js";
import { within } from "./within.js";

export const AFTER_TAP_MS = 250;

/** Fires "told" (detail: the problems that stand beside their fields) whenever they may have changed. */
export class ProblemsBeside extends EventTarget {
  /** @type {Set<string>} fields she has been in; a blank one that was never touched is not scolded */
  #touched = new Set();
  /** @type {Problem[]} */
  #problems = [];
  /** True once she has asked for the counts: from then on what is missing is said everywhere. */
  asked = false;

  /** @param {Form} form */
  constructor(form) {
    super();
    this.form = form;
    form.element.addEventListener("focusout", (event) => {
      this.#touched.add(/** @type {HTMLInputElement} */ (event.target).name);
      // Not at once: words that appear under a finger would move the very thing it taps.
      setTimeout(() => this.#draw(), AFTER_TAP_MS);
    });
    form.addEventListener("change", (event) => {
      const name = /** @type {CustomEvent} */ (event).detail;
      if (name === "") this.#afresh();
      this.#problems = this.#problems.filter(({ field }) => field !== name);
    });
  }

  /** She asked for the counts: say all that is missing, wherever it is. */
  ask() {
    this.asked = true;
    this.#draw();
  }

  /** Speak of these too, though she has not been in them. @param {string[]} names */
  touch(names) {
    for (const name of names) this.#touched.add(name);
  }

  /** @param {Problem[]} problems */
  show(problems) {
    this.#problems = problems;
    this.#draw();
  }

  /** Another sheet lies on the table: nobody has been in its fields yet. */
  #afresh() {
    this.#touched.clear();
    this.asked = false;
    this.show([]);
  }

  /** @param {Problem} problem @returns {boolean} whether it would be too soon to speak of it */
  #early({ field }) {
    const input = this.form.input(field);
    const blank = input ? input.value.trim() === "" : true;
    const typing = input !== null && input === document.activeElement;
    // Sock one and stock are asked for by nobody: never scolded before she has been there.
    const asked = this.asked && !within(field, "first_sock", "stock");
    return !asked && ((blank && !this.#touched.has(field)) || typing);
  }

  #draw() {
    /** @type {Map<Element, Problem[]>} */
    const said = new Map();
    const invalid = new Set();
    const told = this.#problems.filter((problem) => !this.#early(problem));
    for (const problem of told) {
      const place = placeOf(problem.field);
      if (!place) continue;
      said.set(place, [...(said.get(place) ?? []), problem]);
      invalid.add(this.form.input(problem.field));
    }
    for (const place of this.form.element.querySelectorAll(".error")) {
      const problems = said.get(place);
      render(
        problems?.map((problem) => this.#words(problem)) ?? nothing,
        /** @type {HTMLElement} */ (place),
      );
    }
    for (const input of this.form.element.elements) {
      if (invalid.has(input)) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
    this.dispatchEvent(new CustomEvent("told", { detail: told }));
  }

  /** @param {Problem} problem */
  #words({ field, message, way_out, offers = [] }) {
    const take = (/** @type {string} */ offer) => {
      this.form.set(field, offer);
      this.form.input(field)?.focus();
    };
    return html`${message} ${way_out} ${offers.map(
      (offer) =>
        html`<button type="button" class="offer" @click=${() => take(offer)}>${offer}</button>`,
    )}`;
  }
}

/**
 * The problems, each beside the field it speaks of, with what could be written instead at one tap.
 * @import {Problem} from "./types"
 * @import {Form} from "./form.js"
 */
import { html, nothing, render } from "lit-html";
import { AtRest } from "./at_rest.js";
import { FOLLOWED } from "./form.js";
import { placeOf } from "./place_of.js";
import { within } from "./within.js";

export const AFTER_TAP_MS = 250;

/** Fires "told" (detail: the problems that stand beside their fields) whenever they may have changed. */
export class ProblemsBeside extends EventTarget {
  /** @type {Set<string>} fields she has been in; a blank one that was never touched is not scolded */
  #touched = new Set();
  /** @type {Problem[]} */
  #problems = [];
  /** True once she has asked for the counts, until she types again: all that is missing then is said. */
  asked = false;
  /** @type {Set<string>} the fields whose problems stand there */
  #told = new Set();
  /** The field in hand whose text has changed since it was come to. */
  #typed = "";

  /** @param {Form} form */
  constructor(form) {
    super();
    this.form = form;
    this.rest = new AtRest(form.element);
    form.element.addEventListener("focusout", (event) => {
      const { name = "" } = /** @type {HTMLInputElement} */ (event.target); // a summary has none
      this.#touched.add(name);
      this.#typed = "";
      // Not at once: words that appear under a finger would move the very thing it taps.
      setTimeout(() => this.#left(name), AFTER_TAP_MS);
    });
    form.addEventListener("change", (event) => {
      const name = /** @type {CustomEvent} */ (event).detail;
      if (name === "") this.#afresh();
      else if (name !== FOLLOWED) this.#types(name);
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

  /** What was said stays; what comes of it in fields that she has not reached waits. @param {string} name */
  #types(name) {
    this.#typed = name;
    if (!this.asked) return;
    this.touch(this.#problems.map(({ field }) => field));
    this.asked = false;
  }

  /** With the last field of a piece of fabric she has left all of it. @param {string} name */
  #left(name) {
    const now = /** @type {HTMLInputElement | null} */ (document.activeElement)?.name;
    const group = groupOf(name);
    if (within(name, "fabric") && now && groupOf(now) !== group) {
      const all = [.../** @type {Iterable<HTMLInputElement>} */ (this.form.element.elements)];
      this.touch(all.map((input) => input.name).filter((one) => groupOf(one) === group));
    }
    this.#draw();
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
    const blank = input ? this.form.value(/** @type {any} */ (field)).trim() === "" : true;
    // A choice is made with its tap; text may go on.
    const typing =
      input?.type !== "radio" && this.#typed === field && input === document.activeElement;
    // Sock one and stock are asked for by nobody: never scolded before she has been there.
    const asked = this.asked && !within(field, "first_sock", "stock");
    const soon = this.#goesOn || (field === "fabric.yarn" && this.#isIn("band")); // its weight
    const moves = soon && !this.asked && !this.#told.has(field);
    return typing || moves || (!asked && blank && !this.#touched.has(field));
  }

  /** @param {string} name */
  #isIn(name) {
    return this.form.input(name) === document.activeElement;
  }

  /** Whether more is being typed into the field in hand. */
  get #goesOn() {
    return this.#typed !== "" && this.rest.typing;
  }

  #draw() {
    /** @type {Map<Element, Problem[]>} */
    const said = new Map();
    const invalid = new Set();
    const told = this.#problems.filter((problem) => !this.#early(problem));
    this.#told = new Set(told.map(({ field }) => field));
    if (told.length < this.#problems.length && this.#goesOn) this.rest.once(() => this.#draw());
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

/** What a field is asked together with. @param {string} name */
function groupOf(name) {
  return name.slice(0, Math.max(name.lastIndexOf("."), 0));
}

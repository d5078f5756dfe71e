/**
 * The words beside the fields: the same length in the other system, the guess for what is left out,
 * notes, and problems, each next to the field it speaks of.
 * @import {Answer, Plan, Problem, Readings} from "./types"
 * @import {Form} from "./form.js"
 */
import { SOCK_TWO } from "./first_sock.js";

const AFTER_TAP_MS = 250;
const METRIC = /\d\s*(mm|cm|dm|m)\b|met(re|er)/i;
const INCHES = /\d\s*(in|ft)\b|inch|foot|feet|["'″”′’]/i;

export class WordsBeside {
  /** @type {Set<string>} fields she has been in; a blank one that was never touched is not scolded */
  #touched = new Set();
  /** @type {Problem[]} */
  problems = [];
  /** True once she has asked for the counts: from then on what is missing is said everywhere. */
  asked = false;

  /** @param {Form} form */
  constructor(form) {
    this.form = form;
    form.element.addEventListener("focusout", (event) => {
      this.#touched.add(/** @type {HTMLInputElement} */ (event.target).name);
      // Not at once: words that appear under a finger would move the very thing it taps.
      setTimeout(() => this.#showProblems(), AFTER_TAP_MS);
    });
    form.addEventListener("change", (event) => {
      const name = /** @type {CustomEvent} */ (event).detail;
      this.problems = this.problems.filter(({ field }) => field !== name);
    });
  }

  /** She asked for the counts: say all that is missing, wherever it is. */
  ask() {
    this.asked = true;
    this.#showProblems();
  }

  /** What was typed in centimetres is shown in inches, and the other way. @param {Readings} answer */
  showReadings({ readings }) {
    const metric = this.form.units === "cm";
    for (const place of this.form.element.querySelectorAll("[data-field] .other")) {
      const name = place.closest("[data-field]")?.getAttribute("data-field") ?? "";
      if (name === "fabric.stitches" || name === "fabric.rounds") continue; // said with the plan
      const typed = this.form.input(name)?.value ?? "";
      const away = metric ? INCHES.test(typed) : METRIC.test(typed);
      const reading = readings[name];
      place.textContent = (reading && (away ? reading.text : reading.other)) ?? "";
    }
  }

  /** @param {Answer} answer */
  show(answer) {
    if (answer.plan) {
      this.#showGuesses(answer.plan);
      this.#showNotes(answer.plan);
      this.#showGauge(answer.plan);
    }
    this.problems = answer.errors ?? [];
    this.#showProblems();
  }

  /** @param {Plan} plan */
  #showGuesses(plan) {
    const whence = new Set();
    for (const [measure, found] of Object.entries(plan.measures)) {
      const place = document.getElementById(`foot-${measure}-estimate`);
      if (!place) continue;
      const guessed = found.from === "estimated";
      place.textContent = guessed
        ? `Left out: we take about ${found.text} (${found.range_text})`
        : "";
      if (guessed) whence.add(found.words);
    }
    const words = document.getElementById("guess-words");
    if (words)
      words.textContent = whence.size ? `About the guesses: ${[...whence].join("; ")}.` : "";
  }

  /** @param {Plan} plan */
  #showGauge({ fabric }) {
    const stated = fabric.from === "gauge";
    for (const name of /** @type {const} */ (["stitches", "rounds"])) {
      const place = document.getElementById(`fabric-${name}-other`);
      if (place) place.textContent = (stated && fabric[name].other) || "";
    }
  }

  /** @param {Plan} plan */
  #showNotes(plan) {
    for (const place of this.form.element.querySelectorAll("[data-field] .note"))
      place.textContent = "";
    for (const { field, text } of plan.notes) {
      if (field === SOCK_TWO) continue; // said large, by the counts
      const place = field && document.getElementById(`${idOf(field)}-note`);
      if (place) place.textContent = `${place.textContent} ${text}`.trim();
    }
  }

  #showProblems() {
    /** @type {Map<Element, string[]>} */
    const said = new Map();
    const invalid = new Set();
    for (const { field, message, way_out } of this.problems) {
      const input = this.form.input(field);
      const blank = input ? input.value.trim() === "" : true;
      const typing = input !== null && input === document.activeElement;
      // Sock one is asked for by nobody: it is never scolded before she has been there.
      const asked = this.asked && !field.startsWith("first_sock.");
      if (!asked && ((blank && !this.#touched.has(field)) || typing)) continue;
      const place = placeOf(field);
      if (!place) continue;
      said.set(place, [...(said.get(place) ?? []), `${message} ${way_out}`.trim()]);
      if (input) invalid.add(input);
    }
    for (const place of this.form.element.querySelectorAll(".error")) {
      place.textContent = said.get(place)?.join(" ") ?? "";
    }
    for (const input of this.form.element.elements) {
      if (invalid.has(input)) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
  }
}

/** @param {string} field */
function idOf(field) {
  return field.replaceAll(".", "-");
}

/**
 * Where a problem's words stand: at its field, else at the nearest group round it.
 * @param {string} field
 * @returns {Element | null}
 */
export function placeOf(field) {
  const parts = field.split(".");
  while (parts.length && parts[0]) {
    const place = document.getElementById(`${parts.join("-")}-error`);
    if (place) return place;
    parts.pop();
  }
  return null;
}

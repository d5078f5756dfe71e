/**
 * The words beside the fields: the same length in the other system, the guess for what is left out,
 * and notes, each next to the field it speaks of.
 * @import {Answer, FootAlone, Plan, Readings} from "./types"
 * @import {Form} from "./form.js"
 */
import * as say from "words/page";
import { AtRest } from "./at_rest.js";
import { SOCK_TWO } from "./first_sock.js";
import { idOf } from "./place_of.js";

const METRIC = /\d\s*(mm|cm|dm|m|k?g)\b|met(re|er)|gram/i;
const INCHES = /\d\s*(in|ft|yds?|oz|lb)\b|inch|yard|ounce|foot|feet|["'″”′’]/i;

export class WordsBeside {
  /** @param {Form} form */
  constructor(form) {
    this.form = form;
    this.rest = new AtRest(form.element);
    form.addEventListener("change", (event) => {
      if (/** @type {CustomEvent} */ (event).detail === "") this.#clear();
    });
  }

  /** What was typed is said as it was read, in the unit it was typed in, then in the other. @param {Readings} answer */
  showReadings({ readings }) {
    const inches = this.form.units === "in";
    for (const place of this.form.element.querySelectorAll("[data-field] .other")) {
      const name = place.closest("[data-field]")?.getAttribute("data-field") ?? "";
      if (name === "fabric.stitches" || name === "fabric.rounds") continue; // said with the plan
      const typed = this.form.input(name)?.value ?? "";
      const { text = "", other = "", unit = "" } = readings[name] ?? {};
      const both = unit === "g" || !inches ? [text, other] : [other, text]; // metric first
      const typedIn = INCHES.test(typed) ? "in" : METRIC.test(typed) ? "cm" : "";
      const imperial = typedIn ? typedIn === "in" : inches && unit !== "g";
      place.textContent = (imperial ? both.reverse() : both).filter(Boolean).join(" · ");
    }
  }

  /** @param {Answer} answer */
  show(answer) {
    const known = answer.plan ?? answer.foot;
    if (!known) return this.#clear();
    this.#showGuesses(known);
    this.rest.once(() => this.#showNotes(known));
    if (answer.plan) this.#showGauge(answer.plan);
  }

  /** Without a length nothing is guessed; words that stood there would speak of another foot. */
  #clear() {
    // While a field is being typed in, the words under it stay, so that nothing moves at every key.
    const typing = document.activeElement;
    if (typing instanceof HTMLInputElement && typing.form === this.form.element && typing.value) {
      return;
    }
    this.rest.once(() => {
      for (const place of this.form.element.querySelectorAll(".estimate, [data-field] .note")) {
        place.textContent = "";
      }
    });
    for (const field of this.form.element.querySelectorAll("[name^='foot.'][placeholder]")) {
      field.removeAttribute("placeholder");
    }
  }

  /** @param {FootAlone} plan */
  #showGuesses(plan) {
    for (const [measure, found] of Object.entries(plan.measures)) {
      const place = document.getElementById(`foot-${measure}-estimate`);
      if (!place) continue;
      const guessed = found.from === "estimated";
      place.textContent = guessed
        ? `${say.guessed({ size: found.text, range: found.range_text })} ${found.words}`
        : "";
      const field = this.form.input(`foot.${measure}`);
      if (field) field.placeholder = guessed ? say.guessedSize({ size: found.text }) : "";
    }
  }

  /** @param {Plan} plan */
  #showGauge({ fabric }) {
    for (const name of /** @type {const} */ (["stitches", "rounds"])) {
      const place = document.getElementById(`fabric-${name}-other`);
      const typed = this.form.input(`fabric.${name}`)?.value.trim();
      if (place) place.textContent = (typed && fabric.from === "gauge" && fabric[name].other) || "";
    }
  }

  /** @param {FootAlone} plan */
  #showNotes(plan) {
    const places = "[data-field] .note, [data-field^='fabric.'] .estimate";
    for (const place of this.form.element.querySelectorAll(places)) place.textContent = "";
    for (const { field, text } of plan.notes) {
      if (!field || field === SOCK_TWO) continue; // sock two is said large, by the counts
      // What the fabric lacks is a guess, and looks like one.
      const guess = field.startsWith("fabric.") && !this.form.input(field)?.value.trim();
      const place = document.getElementById(`${idOf(field)}-${guess ? "estimate" : "note"}`);
      if (place) place.textContent = `${place.textContent} ${text}`.trim();
    }
  }
}

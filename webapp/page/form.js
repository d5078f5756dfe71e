/**
 * A form, of the three steps or of the table: reads and fills its fields by name, and says when they change.
 * @import {Values} from "./types"
 * @import {Place} from "./within.js"
 */
import { enterGoesOn } from "./enter_key.js";
import { asKept, inGrams, isBare, spelled } from "./spelled.js";
import { inputOf, withItsUnit } from "./units_beside.js";
import { within } from "./within.js";

/** Fields that come behind the first screen (webapp/behind). @type {Place[]} */
const LATER = [
  "sock.cuff",
  "sock.leg",
  "sock.heel",
  "sock.toe",
  "sock.end",
  "sock.colors",
  "sock.string",
  "cylinder.spring",
  "cylinder.thread",
  "cylinder.ribber",
  "cylinder.weights",
  "sock.closeness",
  "sock.length_ease",
  "sock.foot_length_of_sock",
];

/** @typedef {{ title: string, before: string, now: string }} Replaced */

/** In place of a field's name: another tab typed it, or the database has it from before. */
export const FOLLOWED = "*";

/**
 * Fires "change" (detail: the field's name, "" where all are another sheet's, or FOLLOWED) whenever what
 * stands in the fields has changed; "fill" (detail: the values) before another sheet is put into them, and
 * "grow" (detail likewise) before any are filled, for lists to grow; "replaced" (detail: title, before and
 * now of each) where what another tab typed has taken the place of something.
 * "asked" when what comes of it is to be shown: it is worked out as one types, and nothing is ever sent.
 */
export class Form extends EventTarget {
  /** What is to stand in the field in hand once it is left. @type {Map<string, string>} */
  #behind = new Map();
  /** What stands in fields that are still to come. @type {Values} */
  #waiting = {};
  #whole = false;

  /** @param {HTMLFormElement} element */
  constructor(element) {
    super();
    this.element = element;
    this.units = this.value("units") || (document.documentElement.dataset.units ?? "cm");
    element.addEventListener("submit", (event) => {
      event.preventDefault();
      this.dispatchEvent(new Event("asked"));
    });
    for (const kind of ["input", "change"]) {
      element.addEventListener(kind, (event) => this.#typed(event));
    }
    enterGoesOn(element, "input");
    element.addEventListener("focusout", () => this.#catchUp());
    this.#showUnits();
    /** What stands in fields that nobody has touched. @type {Values} */
    this.usual = { ...this.#usual(), units: this.units };
  }

  /** @param {string} name @returns {string} */
  value(name) {
    return String(new FormData(this.element).get(name) ?? this.#waiting[name] ?? "");
  }

  /** @returns {Values} every field's value by its name, and the units that bare numbers are in */
  values() {
    /** @type {Values} */
    const values = { ...this.#waiting, units: this.units };
    for (const [name, value] of new FormData(this.element)) {
      values[name] = inGrams(name, String(value), this.units);
    }
    return values;
  }

  /**
   * What the sheet holds by now: what is typed, what another tab typed into the field in hand, and as it was
   * before what this form has no field for: another version has.
   * @param {Values} before @returns {Values}
   */
  over(before) {
    const values = { ...this.values(), ...Object.fromEntries(this.#behind) };
    const others = Object.entries(before).filter(([name]) => !(name in values || inputOf(name)));
    return { ...Object.fromEntries(others), ...values };
  }

  /** @param {string} name @returns {HTMLInputElement | null} the field an error's path names */
  input(name) {
    return this.element.querySelector(
      `input[name="${CSS.escape(name)}"], select[name="${CSS.escape(name)}"]`,
    );
  }

  /**
   * Put values into all fields; fields not named become blank.
   * @param {Values} values
   */
  fill(values) {
    /** @type {Values} */
    const filled = { ...this.usual, units: this.units, ...values };
    this.#behind.clear();
    this.dispatchEvent(new CustomEvent("fill", { detail: values }));
    this.dispatchEvent(new CustomEvent("grow", { detail: values }));
    this.#put(this.element.elements, values, filled);
    this.#wait(values);
    if (/^(cm|in)$/.test(filled.units)) this.units = filled.units;
    this.#showUnits();
    this.#changed("");
  }

  /**
   * @param {Iterable<Element>} fields @param {Values} values
   * @param {Values} filled those, over what is usual
   */
  #put(fields, values, filled) {
    for (const field of fields) {
      if (field instanceof HTMLInputElement && !field.name) continue; // the shown link
      if (field instanceof HTMLInputElement && field.type === "radio") {
        field.checked = field.value === (filled[field.name] ?? "");
      } else if (field instanceof HTMLInputElement) {
        field.value = asKept(field.name, values[field.name] ?? "", filled.units);
      } else if (field instanceof HTMLSelectElement) {
        field.value = filled[field.name] || first(field);
      }
    }
  }

  /** Keep what no field has yet. @param {Values} values */
  #wait(values) {
    if (this.#whole) return;
    const later = Object.entries(values).filter(([name]) => within(name, ...LATER));
    this.#waiting = Object.fromEntries(later);
  }

  /** The fields that were still to come are here, and take what was kept for them. @param {Element} place */
  whole(place) {
    const waiting = this.#waiting;
    this.#waiting = {};
    this.#whole = true;
    this.usual = { ...this.#usual(), units: this.usual.units };
    this.dispatchEvent(new CustomEvent("grow", { detail: waiting }));
    const filled = { ...this.usual, ...waiting, units: this.units };
    this.#put(place.querySelectorAll("input, select"), waiting, filled);
    this.#changed(FOLLOWED);
  }

  /**
   * The same sheet has other texts by now, from elsewhere. The field in hand stays as it is until it is left.
   * @param {Values} values @param {boolean} [quietly] it was only the first guess that stood here
   */
  follow(values, quietly) {
    /** @type {Replaced[]} */
    const replaced = [];
    this.dispatchEvent(new CustomEvent("grow", { detail: values }));
    const { activeElement: hand } = document;
    const units = values.units || this.units;
    // What is in hand keeps meaning what it meant.
    if (hand instanceof HTMLInputElement && hand.form === this.element) this.#spell(hand, units);
    if (/^(cm|in)$/.test(units)) this.units = units;
    for (const field of this.element.elements) {
      if (!(field instanceof HTMLInputElement || field instanceof HTMLSelectElement)) continue;
      if (!field.name) continue;
      const usual = field instanceof HTMLSelectElement ? first(field) : this.usual[field.name];
      const text = asKept(field.name, values[field.name] ?? usual ?? "", units);
      const shown = inGrams(field.name, field.value, this.units);
      if (field instanceof HTMLInputElement && field.type === "radio") {
        field.checked = field.value === text;
      } else if (field === hand && shown !== text) {
        this.#behind.set(field.name, text);
      } else {
        this.#behind.delete(field.name);
        if (shown !== text) replaced.push(...this.#replace(field, text));
      }
    }
    this.#wait(values);
    this.#showUnits();
    this.#changed(FOLLOWED);
    if (!quietly) this.#tell(replaced);
  }

  /** The field is left. */
  #catchUp() {
    if (!this.#behind.size) return;
    const replaced = [...this.#behind].flatMap(([name, text]) => {
      const field = this.input(name);
      return field ? this.#replace(field, text) : [];
    });
    this.#behind.clear();
    this.#changed(FOLLOWED);
    this.#tell(replaced);
  }

  /** @param {HTMLInputElement | HTMLSelectElement} field @param {string} now @returns {Replaced[]} none where nothing stood there */
  #replace(field, now) {
    const before = field.value;
    field.value = now;
    const title = field.labels?.[0]?.textContent ?? "";
    return before.trim() ? [{ title, before, now }] : [];
  }

  /** @param {Replaced[]} detail */
  #tell(detail) {
    if (detail.length) this.dispatchEvent(new CustomEvent("replaced", { detail }));
  }

  /**
   * Set one field as if it had been typed.
   * @param {string} name @param {string} value
   */
  set(name, value) {
    const fields = this.element.querySelectorAll(`[name="${CSS.escape(name)}"]`);
    const one = this.input(name);
    if (one?.type === "radio") this.#put(fields, {}, { [name]: value });
    else if (one) one.value = value;
    else if (within(name, ...LATER) && !this.#whole) this.#waiting[name] = value;
    else return;
    this.#changed(name);
  }

  /** @param {Event} event */
  #typed(event) {
    const field = /** @type {HTMLInputElement} */ (event.target);
    // Later than what came from elsewhere; a "change" tells only that it is left.
    if (event.type === "input") this.#behind.delete(field.name);
    if (field.name === "units" && field.value !== this.units) this.showIn(field.value);
    if (event.type === "input" || field instanceof HTMLSelectElement) this.#changed(field.name);
  }

  /**
   * Numbers typed without a unit keep meaning what they meant: the old unit is written after them.
   * @param {string} units
   */
  showIn(units) {
    if (units === this.units) return;
    for (const input of this.#withUnit()) this.#spell(input, units);
    for (const [name, text] of Object.entries(this.#waiting)) {
      this.#waiting[name] = withItsUnit(name, text, this.units);
    }
    this.units = units;
    this.#showUnits();
  }

  /** With the unit it was written in, where that is another by now. @param {HTMLInputElement} input @param {string} units */
  #spell(input, units) {
    if (units === this.units || !input.closest(".with-unit")) return;
    const unit = input.parentElement?.querySelector(`[data-units="${this.units}"]`)?.textContent;
    input.value = spelled(input.value, unit ?? "");
  }

  /** @returns {Values} */
  #usual() {
    /** @type {Values} */
    const values = {};
    for (const field of this.element.elements) {
      if (field instanceof HTMLSelectElement) {
        values[field.name] = first(field);
      } else if (field instanceof HTMLInputElement && field.defaultChecked) {
        values[field.name] = field.value;
      }
    }
    return values;
  }

  #showUnits() {
    if (this.value("units")) document.documentElement.dataset.units = this.units;
  }

  /** @returns {NodeListOf<HTMLInputElement>} */
  #withUnit() {
    return this.element.querySelectorAll(".with-unit input");
  }

  /** @param {string} name */
  #changed(name) {
    for (const input of this.#withUnit()) {
      const own = input.value.trim() !== "" && !isBare(input.value);
      input.parentElement?.classList.toggle("own-unit", own);
    }
    this.dispatchEvent(new CustomEvent("change", { detail: name }));
  }
}

/** What is chosen until something else is. @param {HTMLSelectElement} field */
function first({ options }) {
  return ([...options].find((one) => one.defaultSelected) ?? options[0]).value;
}

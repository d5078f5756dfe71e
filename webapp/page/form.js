/**
 * A form, of the three steps or of the table: reads and fills its fields by name, and says when they change.
 * @import {Values} from "./types"
 */
import { enterGoesOn } from "./enter_key.js";
import { asKept, inGrams, isBare, spelled } from "./spelled.js";

/**
 * Fires "change" (detail: the field's name) whenever what is typed has changed, and "fill" (detail: the
 * values) before fields are filled, for lists to grow. "asked" when what comes of it is to be shown: it
 * is worked out as one types, and nothing is ever sent.
 */
export class Form extends EventTarget {
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
    enterGoesOn(element);
    this.#showUnits();
  }

  /** @param {string} name @returns {string} */
  value(name) {
    return String(new FormData(this.element).get(name) ?? "");
  }

  /** @returns {Values} every field's value by its name, and the units that bare numbers are in */
  values() {
    /** @type {Values} */
    const values = { units: this.units };
    for (const [name, value] of new FormData(this.element)) {
      values[name] = inGrams(name, String(value), this.units);
    }
    return values;
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
    const filled = { units: this.units, way: "swatch", who: "", "sock.cuff.kind": "", ...values };
    this.dispatchEvent(new CustomEvent("fill", { detail: values }));
    for (const field of this.element.elements) {
      if (field instanceof HTMLInputElement && !field.name) continue; // the shown link
      if (field instanceof HTMLInputElement && field.type === "radio") {
        field.checked =
          field.value === (filled[/** @type {keyof typeof filled} */ (field.name)] ?? "");
      } else if (field instanceof HTMLInputElement) {
        field.value = asKept(field.name, values[field.name] ?? "", filled.units);
      } else if (field instanceof HTMLSelectElement) {
        field.value = values[field.name] || field.options[0].value;
      }
    }
    if (/^(cm|in)$/.test(filled.units)) this.units = filled.units;
    this.#showUnits();
    this.#changed("");
  }

  /**
   * Set one field as if it had been typed.
   * @param {string} name @param {string} value
   */
  set(name, value) {
    const input = this.input(name);
    if (!input) return;
    input.value = value;
    this.#changed(name);
  }

  /** @param {Event} event */
  #typed(event) {
    const field = /** @type {HTMLInputElement} */ (event.target);
    if (field.name === "units" && field.value !== this.units) this.showIn(field.value);
    if (event.type === "input" || field instanceof HTMLSelectElement) this.#changed(field.name);
  }

  /**
   * Numbers typed without a unit keep meaning what they meant: the old unit is written after them.
   * @param {string} units
   */
  showIn(units) {
    if (units === this.units) return;
    for (const input of this.#withUnit()) {
      const unit = input.parentElement?.querySelector(`[data-units="${this.units}"]`)?.textContent;
      input.value = spelled(input.value, unit ?? "");
    }
    this.units = units;
    this.#showUnits();
  }

  #showUnits() {
    if (this.value("units")) document.documentElement.dataset.units = this.units;
    // A phone's decimal keys have no space and no slash, and 9 3/8 needs both.
    /** @type {NodeListOf<HTMLInputElement>} */
    const onTape = this.element.querySelectorAll("[data-tape]");
    for (const input of onTape) input.inputMode = this.units === "cm" ? "decimal" : "text";
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

/**
 * Lists that grow: swatches, yarns, girths up a leg. One row's fields stand in a template of the page,
 * named with ROW where the row's number goes ("fabric.swatches.ROW.needles").
 *
 * <div data-rows="fabric.swatches" data-most="12"><div class="rows"></div><template>one element</template>
 *   <button type="button" class="add">Another swatch</button></div>
 *
 * A row holds a button.remove if it can be taken away, and may hold a .number that counts from 1. What
 * was taken away can be brought back until something else is typed. `data-least` rows stand there always.
 * @import {Values} from "./types"
 * @import {Form} from "./form.js"
 */
import * as say from "words/page";

export class Rows {
  /** @type {Values} all that was typed before a row was taken away */
  #before = {};

  /** @param {Form} form @param {HTMLElement} element with data-rows */
  constructor(form, element) {
    this.form = form;
    this.path = element.dataset.rows ?? "";
    this.most = Number(element.dataset.most);
    this.place = /** @type {HTMLElement} */ (element.querySelector(".rows"));
    this.template = /** @type {HTMLTemplateElement} */ (element.querySelector("template"));
    this.button = /** @type {HTMLButtonElement} */ (element.querySelector("button.add"));
    this.button.addEventListener("click", () => {
      this.#grow(this.count + 1);
      this.place.lastElementChild?.querySelector("input")?.focus();
    });
    this.back = document.createElement("button");
    this.back.type = "button";
    this.back.className = "back";
    this.back.textContent = say.bringItBack;
    this.back.hidden = true;
    this.back.addEventListener("click", () => {
      this.form.fill(this.#before);
      this.button.focus();
    });
    this.button.after(this.back);
    this.#grow(Number(element.dataset.least ?? 0));
    form.addEventListener("change", () => {
      this.back.hidden = true;
    });
    form.addEventListener("grow", (event) => {
      this.#grow(this.#rowsOf(/** @type {CustomEvent} */ (event).detail));
    });
  }

  get count() {
    return this.place.children.length;
  }

  /** How many rows values speak of. @param {Values} values */
  #rowsOf(values) {
    const numbers = Object.keys(values)
      .filter((name) => name.startsWith(`${this.path}.`) && values[name].trim())
      .map((name) => Number(name.slice(this.path.length + 1).split(".")[0]) + 1);
    return Math.max(0, ...numbers);
  }

  /** Never fewer rows than there are: an empty one does no harm, a lost one might. @param {number} count */
  #grow(count) {
    while (this.count < Math.min(count, this.most)) {
      const at = this.count;
      const row = /** @type {DocumentFragment} */ (this.template.content.cloneNode(true));
      for (const element of row.querySelectorAll("*")) {
        for (const { name, value } of element.attributes) {
          if (value.includes("ROW"))
            element.setAttribute(name, value.replaceAll("ROW", String(at)));
        }
      }
      for (const number of row.querySelectorAll(".number")) number.textContent = String(at + 1);
      row.querySelector("button.remove")?.addEventListener("click", () => this.#remove(at));
      this.place.append(row);
    }
    this.button.hidden = this.count >= this.most;
  }

  /** Those below move up. @param {number} at */
  #remove(at) {
    const before = this.form.values();
    /** @type {Values} */
    const values = {};
    for (const [name, value] of Object.entries(before)) {
      const own = name.startsWith(`${this.path}.`);
      const [number, ...rest] = own ? name.slice(this.path.length + 1).split(".") : [];
      if (!own) values[name] = value;
      else if (Number(number) < at) values[name] = value;
      else if (Number(number) > at) {
        values[[this.path, Number(number) - 1, ...rest].join(".")] = value;
      }
    }
    this.place.lastElementChild?.remove();
    this.form.fill(values);
    this.#before = before;
    this.back.hidden = Object.entries(before).every(
      ([name, value]) => !name.startsWith(`${this.path}.${at}.`) || !value.trim(),
    );
    this.button.hidden = false;
    this.button.focus();
  }
}

/** Every growing list of a form, or of a part of it. @param {Form} form @param {Element} [part] */
export function wireRows(form, part = form.element) {
  for (const element of part.querySelectorAll("[data-rows]")) {
    new Rows(form, /** @type {HTMLElement} */ (element));
  }
}

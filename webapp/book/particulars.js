/**
 * What is written of a wearer, as fields: those that are filled, and the empty ones once they are wanted.
 * @import {Particulars, Wearer} from "./types"
 * @import {Wearers} from "./wearers.js"
 */
import { html, noChange, nothing } from "lit-html";
import * as say from "words/book";
import { dayShown, FIRST, LAST, wrongDay } from "./days.js";

/** @typedef {Exclude<keyof Particulars, "state" | "ease">} Written */

/** @type {{ name: Written, title: string, where: string, type?: "date" }[]} */
const FIELDS = [
  { name: "due", title: say.promisedFor, where: "", type: "date" },
  { name: "length", title: say.howLong, where: say.howLongWhere },
  { name: "colours", title: say.colors, where: "" },
  { name: "allergy", title: say.allergy, where: say.allergyWhere },
  { name: "pairs", title: say.howMany, where: "" },
  { name: "price", title: say.price, where: "" },
  { name: "deposit", title: say.deposit, where: "" },
  { name: "contact", title: say.contact, where: say.contactWhere },
  { name: "asked", title: say.whoAsked, where: say.whoAskedWhere },
  { name: "label", title: say.label, where: "" },
];

const EASES = /** @type {const} */ ([
  ["snug", say.snug],
  ["", say.asUsual],
  ["loose", say.loose],
]);

export class ParticularsForm {
  #id = "";
  /** The empty ones are wanted too. */
  #all = false;
  /** Those that were filled as the page was opened, or since: a field that is emptied stays. @type {Set<Written>} */
  #shown = new Set();
  /** @type {Partial<Record<Written, string>>} */
  #errors = {};
  /** The field that is being typed in: another tab's words for it come once it is left. @type {Written | ""} */
  #hand = "";

  /** @param {{ wearers: Wearers, rename: (id: string, label: string) => void, draw: () => void }} parts */
  constructor({ wearers, rename, draw }) {
    this.wearers = wearers;
    this.rename = rename;
    this.redraw = draw;
  }

  /** Another page, or the same anew. @param {string} id */
  shown(id) {
    this.#id = id;
    this.#all = false;
    this.#shown.clear();
    this.#errors = {};
    this.#hand = ""; // not every browser says that a field is left because it is taken away
  }

  /** @param {Wearer} wearer */
  template(wearer) {
    for (const { name } of FIELDS) {
      if (wearer[name] && name !== "label") this.#shown.add(name);
    }
    const open = FIELDS.filter(({ name }) => this.#all || this.#shown.has(name));
    return html`<div class="halves">
        ${open.map((field) => this.#field(wearer, field))}
        ${this.#all || wearer.ease ? this.#ease(wearer) : nothing}
      </div>
      ${this.#all ? nothing : html`<button type="button" id="add-more" @click=${() => this.#more()}>${say.addMore}</button>`}`;
  }

  #more() {
    this.#all = true;
    this.redraw();
    const first = FIELDS.find(({ name }) => !this.#shown.has(name));
    document.getElementById(`wearer-${first?.name}`)?.focus();
  }

  /** @param {Wearer} wearer */
  #ease(wearer) {
    return html`<fieldset>
      <legend>${say.howClose}</legend>
      <div class="choice">${EASES.map(
        ([
          ease,
          words,
        ]) => html`<label><input type="radio" name="wearer-ease" .checked=${ease === wearer.ease}
          @change=${() => this.wearers.likes(this.#id, ease)} /><span>${words}</span></label>`,
      )}</div>
    </fieldset>`;
  }

  /** @param {Wearer} wearer @param {typeof FIELDS[number]} field */
  #field(wearer, { name, title, where, type }) {
    const error = this.#errors[name];
    const day = type && !error ? wrongDay(wearer.due) : null;
    return html`<div class="field">
      <label for="wearer-${name}">${title}</label>
      ${where ? html`<p class="where" id="wearer-${name}-where">${where}</p>` : nothing}
      <div class="entry"><div class="typed"><input id="wearer-${name}" type=${type ?? "text"} min=${type ? FIRST : nothing} max=${type ? LAST : nothing} enterkeyhint=${type ? nothing : "next"} autocomplete="off" dir=${type ? nothing : "auto"}
        aria-describedby="${where ? `wearer-${name}-where ` : ""}wearer-${name}-error" aria-invalid=${error || day ? "true" : "false"}
        .value=${name === this.#hand ? noChange : wearer[name]} @blur=${() => this.#left()} @input=${(/** @type {any} */ event) => this.#typed(name, event.target)} /></div></div>
      <p class="error" id="wearer-${name}-error">${day ? html`${day.message} ${day.offer ? this.#offer(day.offer) : nothing}` : error}</p>
      ${name === "asked" ? this.#quick(wearer) : nothing}
    </div>`;
  }

  /** Who is asked most often. @param {Wearer} wearer */
  #quick({ asked }) {
    return html`<div class="row quick">${[say.askedWearer, say.askedParent].map(
      (who) =>
        html`<button type="button" aria-pressed=${asked === who} class="chosen" @click=${() => this.#put({ asked: who })}>${who}</button>`,
    )}</div>`;
  }

  /** @param {string} due a day that was likely meant */
  #offer(due) {
    const take = () => {
      this.#put({ due });
      document.getElementById("wearer-due")?.focus();
    };
    return html`<button type="button" class="offer" @click=${take}>${dayShown(due)}</button>`;
  }

  /** A field is left, perhaps because it is taken away just now: never in the midst of drawing. */
  #left() {
    this.#hand = "";
    queueMicrotask(() => this.redraw());
  }

  /** @param {Written} name @param {HTMLInputElement} field */
  #typed(name, field) {
    this.#hand = name;
    const { value, validity } = field;
    const wrong =
      name === "label" && !value.trim() ? say.noLabel : validity.badInput ? say.dayNotWhole : "";
    this.#errors = { ...this.#errors, [name]: wrong };
    if (wrong) return this.redraw();
    const label = value.trim();
    this.wearers.change(this.#id, { [name]: name === "label" ? label : value });
    if (name === "label") this.rename(this.#id, label);
  }

  /** Not by typing. @param {Partial<Particulars>} particulars */
  #put(particulars) {
    this.#hand = "";
    this.wearers.change(this.#id, particulars);
  }
}

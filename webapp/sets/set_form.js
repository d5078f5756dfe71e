/**
 * What is written of a set of instructions: whose it is, and which sizes.
 * @import {Problem, Values} from "../page/types"
 * @import {KeptSet} from "./kept_sets.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/sets";
import { DETAILS } from "./kept_sets.js";
import { SYSTEMS, usualSizes } from "./usual_sizes.js";

/** @type {Record<typeof DETAILS[number], string>} */
const NAMES = {
  title: say.setTitle,
  maker: say.setMaker,
  version: say.setVersion,
  date: say.setDate,
  licence: say.setLicence,
  contact: say.setContact,
  errata: say.setErrata,
  fibre: say.setFibre,
  notes: say.setNotes,
};

export class SetForm {
  /** @param {{ write: (set: KeptSet, words: Values) => void, read: (set: KeptSet) => void }} parts */
  constructor({ write, read }) {
    this.write = write;
    this.read = read;
  }

  /** @param {KeptSet} set @param {Problem[]} problems @param {string} note */
  template(set, problems, note) {
    const { by = "", sizes = "" } = set.words;
    /** @param {typeof DETAILS[number]} name */
    const field = (name) => this.#typed(set, name, NAMES[name], set.words[name] ?? "", problems);
    return html`
      ${field("title")} ${field("maker")}
      <div class="field">
        <label for="set-by">${say.sizesOf}</label>
        <div class="entry"><div class="typed"><select id="set-by" @change=${(/** @type {any} */ { target }) => this.#measureBy(set, target.value)}>
          ${SYSTEMS.map((one) => html`<option value=${one} ?selected=${one === by}>${one}</option>`)}
          <option value="length" ?selected=${by === "length"}>${say.byLength}</option>
        </select></div></div>
      </div>
      ${this.#typed(set, "sizes", say.whichSizes, sizes, problems)}
      <details><summary>${say.moreOfSet}</summary>${DETAILS.slice(2).map(field)}</details>
      <div role="status">${note ? html`<p class="note">${note}</p>` : nothing}</div>
      ${problems.filter(({ field }) => !beside(field)).map(({ message, way_out }) => html`<p class="error"><strong>${message}</strong> ${way_out}</p>`)}
      <div class="row"><button type="button" class="go" id="read-set" @click=${() => this.read(set)}>${say.readSet}</button></div>`;
  }

  /** @param {KeptSet} set @param {string} name @param {string} label @param {string} text @param {Problem[]} problems */
  #typed(set, name, label, text, problems) {
    const id = `set-${name}`;
    const path = name === "sizes" ? "set.sizes" : `set.details.${name}`;
    const wrong = problems.filter(({ field }) => field === path || field.startsWith(`${path}.`));
    const input = (/** @type {any} */ { target }) => this.write(set, { [name]: target.value });
    const state = wrong.length ? "true" : "false";
    return html`<div class="field">
      <label for=${id}>${label}</label>
      ${
        name === "notes"
          ? html`<textarea id=${id} rows="5" dir="auto" aria-invalid=${state} aria-describedby="${id}-error" .value=${text} @input=${input}></textarea>`
          : html`<input id=${id} dir="auto" autocomplete="off" enterkeyhint="next" aria-invalid=${state} aria-describedby="${id}-error" .value=${text} @input=${input} />`
      }
      <p class="error" id="${id}-error">${wrong.map(({ message, way_out }) => html`<strong>${message}</strong> ${way_out} `)}</p>
    </div>`;
  }

  /** By another system; usual sizes, which she did not write, are those of the new one. @param {KeptSet} set @param {string} by */
  #measureBy(set, by) {
    const { by: before = "", sizes = "" } = set.words;
    const { units = "" } = set.plan;
    const hers = sizes.trim() && sizes !== usualSizes(before, units);
    this.write(set, hers ? { by } : { by, sizes: usualSizes(by, units) });
  }
}

/** Whether a field of the form stands for it. @param {string} field */
function beside(field) {
  return /^set\.(by|sizes|details\.\w+)/.test(field);
}

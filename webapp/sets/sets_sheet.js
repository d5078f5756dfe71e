/**
 * Instructions over sizes: the sets that are kept, what is written of one, and how it reads.
 * @import {Draft} from "../page/draft.js"
 * @import {Asks, InstructionSet, Problem, Values} from "../page/types"
 * @import {KeptSet} from "./kept_sets.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/sets";
import { dayOf } from "../book/days.js";
import { toRequest } from "../page/request.js";
import { short } from "../page/short.js";
import { paperSheet } from "../paper/sheet.js";
import { DETAILS, KeptSets } from "./kept_sets.js";
import { Reading } from "./reading.js";
import { SYSTEMS, usualHere, usualSizes } from "./usual_sizes.js";

const PAUSE_MS = 10_000; // every size is planned
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

export class SetsSheet {
  #sheet = paperSheet("sets-sheet");
  #kept;
  /** The set that is written on; none where all are listed. */
  #id = "";
  /** @type {Reading | null} how it reads, once that is asked for */
  #reading = null;
  /** @type {{ id: string, title: string, fields: Values } | null} */
  #deleted = null;
  /** @type {Problem[]} */
  #problems = [];
  #note = "";

  /** @param {{ engine: Asks, draft: Draft, plan: Values }} parts `plan`: the values that are counted now */
  constructor({ engine, draft, plan }) {
    this.engine = engine;
    this.plan = plan;
    this.#kept = new KeptSets(draft);
    this.#draw();
    this.#sheet.showModal();
  }

  #draw() {
    const set = this.#kept.get(this.#id);
    const inside =
      this.#reading && set ? this.#reading.template() : set ? this.#form(set) : this.#list();
    render(
      html`<div class="paper-sheet-head">
          <h2 id="sets-sheet-title" tabindex="-1" autofocus>${set ? titleOf(set) : say.setsTitle}</h2>
          <button type="button" id="close-sets" @click=${() => this.#sheet.close()}>${say.close}</button>
        </div>
        ${set ? html`<button type="button" class="plain-button" id="sets-back" @click=${() => this.#back()}>${this.#reading ? say.backToWords : say.allSets}</button>` : nothing}
        ${inside}`,
      this.#sheet,
    );
  }

  #list() {
    const all = this.#kept.all;
    return html`<p>${say.setsMean}</p>
      <div class="row"><button type="button" class="go" id="new-set" @click=${() => this.#open(this.#kept.add(this.plan, usualHere(this.plan.units)))}>${say.newSet}</button></div>
      <div role="status">${this.#deleted ? html`<p class="note">${say.setDeleted({ title: this.#deleted.title })}</p>` : nothing}</div>
      ${this.#deleted ? html`<div class="row"><button type="button" id="bring-back-set" @click=${() => this.#bringBack()}>${say.bringBackSet}</button></div>` : nothing}
      <ul class="kept-sets" aria-label=${say.keptSets}>${all.map((set) => this.#row(set))}</ul>`;
  }

  /** @param {KeptSet} set */
  #row(set) {
    const { by = "", sizes = "", version = "" } = set.words;
    const title = titleOf(set);
    const begun = [by === "length" ? say.byLength : by, sizes, version].filter(Boolean);
    return html`<li>
      <h3><bdi>${title}</bdi></h3>
      <p>${begun.map((one, at) => html`${at ? " · " : nothing}<bdi>${one}</bdi>`)} · ${dayOf(set.made)}</p>
      <div class="row">
        <button type="button" aria-label=${say.openSetOf({ title })} @click=${() => this.#open(set.id)}>${say.openSet}</button>
        <button type="button" aria-label=${say.copySetOf({ title })} @click=${() => this.#open(this.#kept.copy(set.id, say.copyOf({ title })))}>${say.copySet}</button>
        <button type="button" aria-label=${say.deleteSetOf({ title })} @click=${() => this.#remove(set)}>${say.deleteSet}</button>
      </div>
    </li>`;
  }

  /** @param {string} id */
  #open(id) {
    this.#id = id;
    this.#deleted = null;
    this.#problems = [];
    this.#note = "";
    this.#show();
  }

  #back() {
    if (this.#reading) this.#reading = null;
    else this.#id = "";
    this.#show();
  }

  /** From its top. */
  #show() {
    this.#draw();
    this.#sheet.scrollTop = 0;
    document.getElementById("sets-sheet-title")?.focus();
  }

  /** @param {KeptSet} set */
  #remove(set) {
    this.#deleted = { id: set.id, title: titleOf(set), fields: this.#kept.remove(set.id) };
    this.#draw();
    document.getElementById("bring-back-set")?.focus();
  }

  #bringBack() {
    if (this.#deleted) this.#kept.restore(this.#deleted.id, this.#deleted.fields);
    this.#deleted = null;
    this.#show();
  }

  /** @param {KeptSet} set */
  #form(set) {
    const { by = "", sizes = "" } = set.words;
    return html`
      ${this.#field(set, "title")} ${this.#field(set, "maker")}
      <div class="field">
        <label for="set-by">${say.sizesOf}</label>
        <div class="entry"><div class="typed"><select id="set-by" @change=${(/** @type {any} */ { target }) => this.#measureBy(set, target.value)}>
          ${SYSTEMS.map((one) => html`<option value=${one} ?selected=${one === by}>${one}</option>`)}
          <option value="length" ?selected=${by === "length"}>${say.byLength}</option>
        </select></div></div>
      </div>
      ${this.#typed(set, "sizes", say.whichSizes, sizes)}
      <details><summary>${say.moreOfSet}</summary>${DETAILS.slice(2).map((name) => this.#field(set, name))}</details>
      <div role="status">${this.#note ? html`<p class="note">${this.#note}</p>` : nothing}</div>
      ${this.#problems.filter(({ field }) => !this.#beside(field)).map(({ message, way_out }) => html`<p class="error"><strong>${message}</strong> ${way_out}</p>`)}
      <div class="row"><button type="button" class="go" id="read-set" @click=${() => this.#read(set)}>${say.readSet}</button></div>`;
  }

  /** @param {string} field @returns {boolean} whether a field of the form stands for it */
  #beside(field) {
    return /^set\.(by|sizes|details\.\w+)/.test(field);
  }

  /** @param {KeptSet} set @param {typeof DETAILS[number]} name */
  #field(set, name) {
    return this.#typed(set, name, NAMES[name], set.words[name] ?? "");
  }

  /** @param {KeptSet} set @param {string} name @param {string} label @param {string} text */
  #typed(set, name, label, text) {
    const id = `set-${name}`;
    const path = name === "sizes" ? "set.sizes" : `set.details.${name}`;
    const wrong = this.#problems.filter(
      ({ field }) => field === path || field.startsWith(`${path}.`),
    );
    const input = (/** @type {any} */ { target }) => this.#write(set, { [name]: target.value });
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

  /** @param {KeptSet} set @param {Values} words */
  #write({ id }, words) {
    this.#kept.write(id, words);
    this.#draw();
  }

  /** By another system; usual sizes, which she did not write, are those of the new one. @param {KeptSet} set @param {string} by */
  #measureBy(set, by) {
    const { by: before = "", sizes = "" } = set.words;
    const { units = "" } = this.plan;
    const hers = sizes.trim() && sizes !== usualSizes(before, units);
    this.#write(set, hers ? { by } : { by, sizes: usualSizes(by, units) });
  }

  /** @param {KeptSet} set */
  async #read({ id }) {
    const set = this.#kept.get(id);
    if (!set) return;
    this.#note = say.moment;
    this.#draw();
    try {
      const found = await this.#asked(set);
      if (this.#id !== id) return;
      this.#note = "";
      this.#problems = found.errors ?? [];
      if (this.#problems.length) {
        this.#draw();
        const wrong = this.#sheet.querySelector("[aria-invalid=true]");
        return wrong instanceof HTMLElement && wrong.focus();
      }
      this.#reading = new Reading({
        engine: this.engine,
        set,
        title: titleOf(set),
        found,
        draw: () => this.#draw(),
      });
      this.#show();
    } catch (error) {
      this.#note = error instanceof Error ? error.message : String(error);
      this.#draw();
    }
  }

  /** @param {KeptSet} set @returns {Promise<InstructionSet & { errors?: Problem[] }>} */
  #asked({ plan, words }) {
    const { by = "", sizes = "" } = words;
    const details = Object.fromEntries(DETAILS.map((name) => [name, words[name] ?? ""]));
    const call = { do: "set", request: toRequest(plan), set: { by, sizes, details } };
    return /** @type {Promise<any>} */ (this.engine.ask(call, { deadline: 6 * PAUSE_MS }));
  }
}

/** @param {KeptSet} set */
function titleOf({ words }) {
  return short(words.title ?? "") || say.noTitle;
}

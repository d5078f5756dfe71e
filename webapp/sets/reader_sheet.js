/**
 * A set that came by link: its reader says for which size or foot, may put in their own gauge, read all of it,
 * and keep it.
 * @import {Draft} from "../page/draft.js"
 * @import {Asks, InstructionSet, Problem, Request, Values} from "../page/types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/sets";
import { toValues } from "../page/request.js";
import { short } from "../page/short.js";
import { paperSheet } from "../paper/sheet.js";
import { KeptSets, titleOf } from "./kept_sets.js";
import { Reading } from "./reading.js";

const OWN = "";
/** Problems with a field of their own. */
const BESIDE = /^reader\.(size|person|foot|fabric)/;
const LONG_MS = 60_000; // every size is planned
/** @typedef {{ size: string, length: string, ball_girth: string, stitches: string, rounds: string }} Typed */

export class ReaderSheet {
  #sheet = paperSheet("reader-sheet");
  /** @type {InstructionSet | null} */
  #found = null;
  /** @type {Problem[]} */
  #problems = [];
  /** @type {Typed} */
  #typed = { size: OWN, length: "", ball_girth: "", stitches: "", rounds: "" };

  /** @type {Reading | null} how it reads, while that is asked for */
  #reading = null;
  #kept = false;

  /**
   * @param {{ engine: Asks, draft: Draft, pattern: { request: Request, set: { by: string, sizes: string,
   *   details?: Values } }, take: (request: Request) => void }} parts
   */
  constructor({ engine, draft, pattern, take }) {
    this.engine = engine;
    this.draft = draft;
    this.pattern = pattern;
    this.take = take;
    this.#draw();
    this.#sheet.showModal();
    this.#read();
  }

  async #read() {
    await this.#asked({ do: "set" }, (found) => {
      this.#found = /** @type {InstructionSet} */ (found);
      this.#typed.size = this.#found.sizes.find(({ fits }) => fits)?.label ?? OWN;
    });
    document.getElementById("reader-sheet-title")?.focus();
  }

  /** As one of her own is kept. @returns {Values} */
  get #words() {
    const { by, sizes, details } = this.pattern.set;
    return { ...details, by, sizes };
  }

  #keep() {
    new KeptSets(this.draft).add(toValues(this.pattern.request), this.#words);
    this.#kept = true;
    this.#draw();
  }

  /** @param {InstructionSet | null} found how it reads; null: back to what is asked */
  #show(found) {
    const set = { id: "", made: 0, words: this.#words, plan: toValues(this.pattern.request) };
    const draw = () => this.#draw();
    this.#reading =
      found && new Reading({ engine: this.engine, set, title: titleOf(set), found, draw });
    this.#draw();
    this.#sheet.scrollTop = 0;
    document.getElementById("reader-sheet-title")?.focus();
  }

  async #adopt() {
    const { size, length, ball_girth, stitches, rounds } = this.#typed;
    const reader = {
      ...(size === OWN ? { foot: { length, ball_girth } } : { size }),
      ...(stitches.trim() || rounds.trim() ? { fabric: { stitches, rounds } } : {}),
    };
    await this.#asked({ do: "adopt", reader }, ({ request }) => {
      this.#sheet.close();
      this.take(request);
    });
  }

  /** @param {object} call @param {(answer: any) => void} then */
  async #asked(call, then) {
    try {
      const { request, set } = this.pattern;
      const answer = /** @type {any} */ (
        await this.engine.ask({ ...call, request, set }, { deadline: LONG_MS })
      );
      this.#problems = answer.errors ?? [];
      if (!this.#problems.length) then(answer);
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      this.#problems = [/** @type {Problem} */ ({ field: "", message, way_out: "" })];
    }
    this.#draw();
    const wrong = this.#sheet.querySelector("[aria-invalid=true]");
    if (wrong instanceof HTMLElement) wrong.focus();
  }

  #draw() {
    const found = this.#found;
    render(
      html`<div class="paper-sheet-head">
          <h2 id="reader-sheet-title" tabindex="-1" autofocus>${found ? short(found.title) : say.setsTitle}</h2>
          <button type="button" id="close-reader" @click=${() => this.#sheet.close()}>${say.close}</button>
        </div>
        ${this.#wrong((field) => !BESIDE.test(field) || !found)}
        ${this.#reading ? html`<button type="button" class="plain-button" id="reader-back" @click=${() => this.#show(null)}>${say.backToFoot}</button>${this.#reading.template()}` : found ? this.#form(found) : this.#problems.length ? nothing : html`<p role="status">${say.readerMoment}</p>`}`,
      this.#sheet,
    );
  }

  /** What is wrong with some fields. @param {(field: string) => boolean} of */
  #wrong(of) {
    return this.#problems
      .filter(({ field }) => of(field))
      .map(
        ({ message, way_out }) =>
          html`<p class="error" role="alert"><strong>${message}</strong> ${way_out}</p>`,
      );
  }

  /** @param {InstructionSet} found */
  #form(found) {
    const { units } = found;
    const { size } = this.#typed;
    const { maker, by, sizes } = this.#words;
    const { "cylinder.slots": slots } = toValues(this.pattern.request);
    return html`<p class="set-whose">${maker ? html`${say.madeBy({ maker: short(maker) })} ` : nothing}${by === "length" ? say.readerForLengths({ sizes, slots }) : say.readerFor({ by, sizes, slots })}</p>
      <p>${say.readerAbout}</p>
      <div class="field">
        <label for="reader-size">${say.readerFoot}</label>
        <div class="entry"><div class="typed"><select id="reader-size" @change=${(/** @type {any} */ { target }) => this.#write("size", target.value)}>
          ${found.sizes.map(({ label }) => html`<option value=${label} ?selected=${label === size}>${say.sizeOf({ size: label })}</option>`)}
          <option value=${OWN} ?selected=${size === OWN}>${say.ownFoot}</option>
        </select></div></div>
      </div>
      ${found.sizes.filter(({ label, reason }) => label === size && reason).map(({ reason }) => html`<p class="note">${reason}</p>`)}
      ${
        size === OWN
          ? html`${this.#field("length", say.ownLength({ units }), /^reader\.(size|person|foot(?!\.ball))/)}
            ${this.#field("ball_girth", say.ownBall({ units }), /^reader\.foot\.ball/)}`
          : nothing
      }
      <details ?open=${this.#problems.some(({ field }) => field.startsWith("reader.fabric"))}><summary>${say.ownGauge}</summary>
        <p>${say.ownGaugeAbout({ units })}</p>
        ${this.#field("stitches", say.ownStitches, /^reader\.fabric(?!\.rounds)/)}
        ${this.#field("rounds", say.ownRounds, /^reader\.fabric\.rounds/)}
      </details>
      <div class="row">
        <button type="button" class="go" id="see-counts" @click=${() => this.#adopt()}>${say.seeCounts}</button>
        <button type="button" id="read-set" @click=${() => this.#show(found)}>${say.readAll}</button>
        <button type="button" id="keep-set" ?disabled=${this.#kept} @click=${() => this.#keep()}>${say.keepSet}</button>
      </div>
      <div role="status">${this.#kept ? html`<p class="note">${say.setKept}</p>` : nothing}</div>`;
  }

  /** @param {keyof Typed} name @param {string} label @param {RegExp} of the fields of problems that stand beside it */
  #field(name, label, of) {
    const id = `reader-${name}`;
    const wrong = this.#wrong((field) => of.test(field));
    return html`<div class="field">
      <label for=${id}>${label}</label>
      <input id=${id} autocomplete="off" enterkeyhint="next" aria-invalid=${wrong.length ? "true" : "false"} aria-describedby="${id}-error"
        .value=${this.#typed[name]} @input=${(/** @type {any} */ { target }) => this.#write(name, target.value)} />
      <div id="${id}-error">${wrong}</div>
    </div>`;
  }

  /** @param {keyof Typed} name @param {string} text */
  #write(name, text) {
    this.#typed = { ...this.#typed, [name]: text };
    this.#draw();
  }
}

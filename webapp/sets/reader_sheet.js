/**
 * A set that came by link: its reader says for which size or foot, and may put in their own gauge.
 * @import {Asks, InstructionSet, Problem, Request} from "../page/types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/sets";
import { short } from "../page/short.js";
import { paperSheet } from "../paper/sheet.js";

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

  /** @param {{ engine: Asks, pattern: { request: object, set: object }, take: (request: Request) => void }} parts */
  constructor({ engine, pattern, take }) {
    this.engine = engine;
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
        ${found ? this.#form(found) : this.#problems.length ? nothing : html`<p role="status">${say.readerMoment}</p>`}`,
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
  #form({ sizes, units }) {
    const { size } = this.#typed;
    return html`<p>${say.readerAbout}</p>
      <div class="field">
        <label for="reader-size">${say.readerFoot}</label>
        <div class="entry"><div class="typed"><select id="reader-size" @change=${(/** @type {any} */ { target }) => this.#write("size", target.value)}>
          ${sizes.map(({ label }) => html`<option value=${label} ?selected=${label === size}>${say.sizeOf({ size: label })}</option>`)}
          <option value=${OWN} ?selected=${size === OWN}>${say.ownFoot}</option>
        </select></div></div>
      </div>
      ${sizes.filter(({ label, reason }) => label === size && reason).map(({ reason }) => html`<p class="note">${reason}</p>`)}
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
      <div class="row"><button type="button" class="go" id="see-counts" @click=${() => this.#adopt()}>${say.seeCounts}</button></div>`;
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

/**
 * A sheet to print for a foot that is far away, and the place where it is typed in once it came back. The
 * fields of the foot lend it their names, and say where each tape goes.
 * @import {Draft} from "../page/draft.js"
 * @import {Form} from "../page/form.js"
 * @import {Asks, Problem} from "../page/types"
 * @import {Paper} from "./measuring_drawing.js"
 */
import { html, nothing, render, svg } from "lit-html";
import * as say from "words/paper";
import { short } from "../page/short.js";
import { onLetter } from "./letter.js";
import { drawnScale, lines, PAPERS } from "./measuring_drawing.js";
import { paperSheet } from "./sheet.js";
import { toPaper } from "./to_paper.js";

const GIRTHS = ["ball_girth", "heel_girth", "instep_girth", "ankle_girth", "calf_girth"];
const TYPED = ["bar", "length", ...GIRTHS, "toe_breadth"];
/** Where its letter stands in drawings/leg.svg. */
const LETTERS = { A: [82, 165], B: [42, 147], C: [44, 107], D: [40, 46] };
const OF = { A: "ball_girth", B: "heel_girth", C: "ankle_girth", D: "calf_girth" };
const STAND = [
  say.standPrint,
  say.standFold,
  say.standWall,
  say.standScale,
  say.standBook,
  say.standRead,
];

export class MeasuringSheet {
  #sheet = paperSheet("measuring-sheet");
  #half;
  /** @type {Record<string, string>} */
  #typed;
  /** @type {Problem[]} */
  #problems = [];
  #note = "";
  /** @type {Paper} */
  #paper = onLetter ? "Letter" : "A4";

  /** @param {{ engine: Asks, draft: Draft, form: Form, label: string }} parts `label`: whose foot, "" if nobody's */
  constructor({ engine, draft, form, label }) {
    this.engine = engine;
    this.draft = draft;
    this.form = form;
    this.label = label;
    this.#half = `half.measuring-${label}`;
    this.#typed = { ...draft.read(this.#half) };
    this.#draw();
    this.#sheet.showModal();
  }

  #draw() {
    render(
      html`<div class="paper-sheet-head">
          <h2 id="measuring-sheet-title" tabindex="-1" autofocus>${say.measuringTitle}</h2>
          <button type="button" @click=${() => this.#sheet.close()}>${say.close}</button>
        </div>
        <p>${say.measuringMeans}</p>
        <fieldset>
          <legend>${say.whichPaper}</legend>
          <div class="choice in-row">${Object.keys(PAPERS).map(
            (name) =>
              html`<label><input type="radio" name="measuring-paper" value=${name} .checked=${name === this.#paper}
              @change=${() => this.#choose(/** @type {Paper} */ (name))} /><span>${name}</span></label>`,
          )}</div>
        </fieldset>
        <div class="row"><button type="button" class="go" @click=${() => toPaper(this.#pages())}>${say.printMeasuring}</button></div>
        <details ?open=${Object.values(this.#typed).some(Boolean)}>
          <summary>${say.cameBack}</summary>
          ${this.#fields()}
        </details>
        <h3>${say.sheetOne}</h3>
        <div class="preview measuring-preview">${this.#scale("scale-shown")}</div>`,
      this.#sheet,
    );
  }

  /** @param {Paper} paper */
  #choose(paper) {
    this.#paper = paper;
    this.#draw();
  }

  /** @param {string} id */
  #scale(id) {
    const words = svg`<g class="measuring-words">
      <text class="measuring-name" x="10" y="17">${say.measuringTitle}</text>
      ${this.label ? svg`<text x="10" y="25">${say.sheetFor({ label: short(this.label).slice(0, 40) })}</text>` : nothing}
      ${lines(STAND, 10, 33)}
    </g>`;
    return drawnScale(this.#paper, words, id);
  }

  /** Both, to print. */
  #pages() {
    const name = this.#paper === "A4" ? "measuring-a4" : "measuring-letter";
    const leg = document.querySelector("svg.leg")?.cloneNode(true);
    return html`<section class=${name}>${this.#scale("scale-printed")}</section>
      <section class="${name} measuring-tapes">
        <h2>${say.tapesTitle}</h2>
        <p>${say.tapesHow}</p>
        <div class="measuring-leg">${leg}<svg viewBox="0 0 118 196" aria-hidden="true">${Object.entries(
          LETTERS,
        ).map(([letter, [x, y]]) => svg`<text x=${x} y=${y}>${letter}</text>`)}</svg></div>
        <ol>${TYPED.map((one) => html`<li><b>${this.#letter(one)}${this.#name(one)}</b> <i></i><span>${this.#where(one)}</span></li>`)}</ol>
        <p>${say.sheetCaution}</p>
      </section>`;
  }

  #fields() {
    return html`<p class="quiet">${say.cameBackHow}</p>
      ${TYPED.map((one) => this.#field(one))}
      <div role="status">${this.#note ? html`<p class="note">${this.#note}</p>` : nothing}</div>
      <div class="row"><button type="button" class="go" @click=${() => this.#take()}>${say.putInFoot}</button></div>`;
  }

  /** @param {string} one */
  #field(one) {
    const id = `sheet-${one}`;
    const wrong = this.#problems.find(({ field }) => field === `sheet.${one}`);
    return html`<div class="field">
      <label for=${id}>${this.#name(one)}</label>
      <div class="entry"><div class="typed with-unit">
        <input id=${id} inputmode="decimal" autocomplete="off" enterkeyhint="next" .value=${this.#typed[one] ?? ""}
          aria-invalid=${wrong ? "true" : "false"} aria-describedby="${id}-unit ${id}-error"
          @input=${(/** @type {any} */ { target }) => this.#write(one, target.value)} />
        <span class="unit" id="${id}-unit">${one === "bar" ? "mm" : this.form.units}</span>
      </div></div>
      <p class="error" id="${id}-error">${wrong ? html`<strong>${wrong.message}</strong> ${wrong.way_out}` : nothing}</p>
    </div>`;
  }

  /** @param {string} one @param {string} text */
  #write(one, text) {
    this.#typed = { ...this.#typed, [one]: text };
    this.draft.write(this.#half, this.#typed);
  }

  async #take() {
    const sheet = Object.fromEntries(Object.entries(this.#typed).filter(([, text]) => text.trim()));
    try {
      const call = { do: "off_sheet", sheet, units: this.form.units };
      const { fields = {}, errors = [] } = /** @type {any} */ (await this.engine.ask(call));
      this.#problems = errors;
      this.#note = errors.length || Object.keys(fields).length ? "" : say.nothingTyped;
      this.#draw();
      if (errors.length) this.#toWrong();
      else if (!this.#note) this.#put(fields);
    } catch (error) {
      this.#note = error instanceof Error ? error.message : String(error);
      this.#draw();
    }
  }

  #toWrong() {
    const wrong = this.#sheet.querySelector("[aria-invalid=true]");
    if (wrong instanceof HTMLElement) wrong.focus();
  }

  /** As if they were typed there. @param {Record<string, string>} fields */
  #put(fields) {
    for (const [name, text] of Object.entries(fields)) {
      const input = this.form.input(name);
      if (!input) continue;
      input.value = text;
      input.dispatchEvent(new InputEvent("input", { bubbles: true }));
    }
    this.draft.write(this.#half, null);
    this.#sheet.close();
    document.getElementById("measure-title")?.focus();
  }

  /** @param {string} one */
  #name(one) {
    if (one === "bar") return say.howLongBar;
    if (one === "length") return say.readAtToe;
    return document.querySelector(`label[for="foot-${one}"]`)?.textContent?.trim() ?? one;
  }

  /** @param {string} one */
  #where(one) {
    if (one === "bar") return say.barWhere;
    if (one === "length") return say.toeWhere;
    return document.getElementById(`foot-${one}-where`)?.textContent?.trim() ?? "";
  }

  /** @param {string} one */
  #letter(one) {
    const letter = Object.entries(OF).find(([, name]) => name === one)?.[0];
    return letter ? `${letter}: ` : "";
  }
}

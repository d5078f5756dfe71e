/**
 * How a set reads: all sizes together or one at a time, in large type; and the same on paper or as a file.
 * @import {Asks, InstructionSet} from "../page/types"
 * @import {KeptSet} from "./kept_sets.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/sets";
import { csv } from "../page/csv.js";
import { save } from "../page/save.js";
import { CodeSheet } from "../paper/code_sheet.js";
import { onLetter } from "../paper/letter.js";
import { toPaper } from "../paper/to_paper.js";
import { epubOf } from "./as_epub.js";
import { htmlOf } from "./as_html.js";
import { textOf } from "./as_text.js";
import { nodeOf, trees } from "./tree.js";

const ALL = -1;
const PAPERS = /** @type {const} */ (["A4", "Letter", "card"]);

export class Reading {
  /** Which size, or ALL. */
  #size = 0;
  /** @type {typeof PAPERS[number]} */
  #paper = onLetter ? "Letter" : "A4";

  #copied = "";

  /** @param {{ engine: Asks, set: KeptSet, title: string, found: InstructionSet, draw: () => void }} parts */
  constructor({ engine, set, title, found, draw }) {
    this.engine = engine;
    this.set = set;
    this.title = title;
    this.found = found;
    this.draw = draw;
  }

  get #blocks() {
    const { all_sizes, one_size } = this.found.document;
    return one_size[this.#size] ?? all_sizes;
  }

  template() {
    return html`
      <div class="field">
        <label for="set-size">${say.whichSize}</label>
        <div class="entry"><div class="typed"><select id="set-size" @change=${(/** @type {any} */ { target }) => this.#choose(Number(target.value))}>
          ${this.found.sizes.map(({ label }, at) => html`<option value=${at} ?selected=${at === this.#size}>${say.sizeOf({ size: label })}</option>`)}
          <option value=${ALL} ?selected=${this.#size === ALL}>${say.allSizes}</option>
        </select></div></div>
      </div>
      <details class="set-ways">
        <summary>${say.printOrSave}</summary>
        <p>${say.fileHolds}</p>
        <fieldset>
          <legend>${say.whichPaper}</legend>
          <div class="choice">${PAPERS.map(
            (one) =>
              html`<label><input type="radio" name="set-paper" value=${one} .checked=${one === this.#paper} @change=${() => this.#on(one)} /><span>${one === "card" ? say.foldedCard : one}</span></label>`,
          )}</div>
        </fieldset>
        <div class="row">
          <button type="button" id="print-set" @click=${() => this.#print()}>${say.printSet}</button>
          <button type="button" id="save-set-html" @click=${() => this.#html()}>${say.saveHtml}</button>
          <button type="button" id="save-set-epub" @click=${() => this.#epub()}>${say.saveEpub}</button>
          <button type="button" id="save-set-text" @click=${() => this.#text()}>${say.saveText}</button>
          <button type="button" id="save-set-csv" @click=${() => this.#csv()}>${say.saveCsv}</button>
        </div>
      </details>
      ${this.#passOn()}
      ${this.#contents()}
      <article class="set-reading" id="set-reading" aria-label=${this.title}>${this.#nodes("read-")}</article>`;
  }

  /** The headings, as ways to them: the address names other things here. */
  #contents() {
    const heads = this.#blocks.flatMap((one) =>
      one.kind === "heading" && one.level === 2 ? [one] : [],
    );
    /** @param {Event} event @param {string} id */
    const go = (event, id) => {
      event.preventDefault();
      const head = document.getElementById(`read-${id}`);
      head?.setAttribute("tabindex", "-1");
      head?.focus();
      head?.scrollIntoView();
    };
    return html`<details class="set-contents">
      <summary>${say.contents}</summary>
      <ol>${heads.map(({ id, text }) => html`<li><a href="#read-${id}" @click=${(/** @type {Event} */ event) => go(event, id)}>${text}</a></li>`)}</ol>
    </details>`;
  }

  #passOn() {
    const { link } = this.found;
    if (!link) return html`<p class="note">${say.noLink}</p>`;
    const address = `${new URL(".", document.baseURI).href}#${link}`;
    return html`<details class="set-link">
      <summary>${say.linkToSet}</summary>
      <p>${say.linkOpens}</p>
      <div class="row">
        <button type="button" id="copy-set-link" @click=${() => this.#copy(address)}>${say.copyLink}</button>
        <button type="button" id="show-set-code" @click=${() => new CodeSheet(this.engine).show(address)}>${say.showCode}</button>
      </div>
      <div role="status">${this.#copied ? html`<p class="note">${this.#copied}</p>` : nothing}</div>
      <p class="code-address">${address}</p>
    </details>`;
  }

  /** @param {string} address */
  async #copy(address) {
    this.#copied = await navigator.clipboard.writeText(address).then(
      () => say.copied,
      () => say.notCopied,
    );
    this.draw();
  }

  /** @param {string} before */
  #nodes(before) {
    const [, ...rest] = trees(this.#blocks, before); // its title stands above
    return rest.length ? rest.map((one) => nodeOf(one)) : nothing;
  }

  /** @param {number} size */
  #choose(size) {
    this.#size = size;
    this.draw();
  }

  /** @param {typeof PAPERS[number]} paper */
  #on(paper) {
    this.#paper = paper;
    this.draw();
  }

  #print() {
    const all = trees(this.#blocks, "paper-").map((one) => nodeOf(one));
    toPaper(html`<article class="set-paper set-${this.#paper.toLowerCase()}">${all}</article>`);
  }

  get #facts() {
    return { set: this.set, title: this.title, language: document.documentElement.lang };
  }

  #html() {
    save(htmlOf(this.#blocks, this.#facts), `${this.#name}.html`, "text/html");
  }

  #epub() {
    save(epubOf(this.#blocks, this.#facts), `${this.#name}.epub`, "application/epub+zip");
  }

  #text() {
    save(textOf(this.#blocks), `${this.#name}.txt`, "text/plain");
  }

  #csv() {
    save(csv(this.found.rows), `${this.#name}.csv`, "text/csv");
  }

  /** Of a file: letters and digits of the title, and which size. */
  get #name() {
    const size = this.found.sizes[this.#size]?.label ?? "";
    const words = `${this.title} ${size}`.normalize("NFC").replace(/[^\p{L}\p{N}]+/gu, "-");
    return words.replace(/^-+|-+$/g, "").slice(0, 60) || "instructions";
  }
}

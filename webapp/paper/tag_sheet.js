/**
 * The tag as it will be printed, to be written on: each of its lines is a field. The words on it are remembered for the next one, but for
 * whom it is; the fibre is offered and never filled in, for a wrong one could harm.
 * @import {Draft} from "../page/draft.js"
 * @import {Asks, Request, Tag, Values} from "../page/types"
 * @import {Written} from "./tag.js"
 * @import {Way} from "./washing.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/paper";
import { today } from "../book/days.js";
import { oneLine } from "../page/one_line.js";
import { showPicture } from "../page/picture.js";
import { short } from "../page/short.js";
import { paperSheet } from "./sheet.js";
import { drawn, printTags } from "./tag.js";
import { careOf, DRYING, WASHING } from "./washing.js";

/** @typedef {Exclude<keyof Written, "wash" | "dry">} Field */

const OFFERED = 6;

/** Until the calculator has answered. @type {Tag} */
const NO_TAG = { facts: [], drawing: null, code: null, code_words: "", caution: "" };

export class TagSheet {
  #sheet = paperSheet("tag-sheet");
  #printed = false;
  /** This one is put by: it is no longer written on here. */
  #later = false;
  /** @type {Tag | undefined} */
  #tag;
  #note = "";
  /** @type {Written} */
  #written;
  /** @type {string[]} the last one first */
  #fibres;
  #half;
  #pair;

  /** @param {{ engine: Asks, draft: Draft, request: Request, label: string }} pair */
  constructor({ engine, draft, request, label }) {
    this.engine = engine;
    this.draft = draft;
    this.request = request;
    const { fibres, ...words } = remembered(draft.read("tag"));
    this.#fibres = fibres;
    this.#half = `half.tag-${label}`;
    this.#pair = JSON.stringify(request);
    const half = draft.read(this.#half);
    const own = half?.pair === this.#pair ? half.written : {};
    this.#written = { ...words, label, fibre: "", date: today(), ...own };
    // Once they were printed they wait no longer, but can be printed again as long as this is open.
    this.#sheet.addEventListener("close", () => {
      if (this.#printed) this.#waiting = [];
    });
    this.#draw();
    this.#sheet.showModal();
    this.#ask().catch(() => {}); // said when it is to be printed
  }

  /** What waits for paper. @returns {{ tag: Tag, written: Written }[]} */
  get #waiting() {
    return this.draft.read("tags") ?? [];
  }

  /** @param {{ tag: Tag, written: Written }[]} tags */
  set #waiting(tags) {
    this.draft.write("tags", tags.length ? tags : null);
  }

  async #ask() {
    if (this.#tag) return this.#tag;
    const text = new URL(".", document.baseURI).href;
    const call = { do: "tag", request: this.request, text };
    this.#tag = /** @type {Tag} */ (await this.engine.ask(call));
    this.#say(this.#tag.facts.length ? this.#tag.code_words : say.noCounts);
    /** @type {NodeListOf<HTMLElement>} */
    const places = this.#sheet.querySelectorAll(".code-place");
    [this.#tag.drawing, this.#tag.code].forEach((svg, at) => {
      if (places[at]) showPicture(svg ?? "", places[at]);
    });
    return this.#tag;
  }

  async #print() {
    try {
      const ready = await this.#ready();
      printTags([...this.#waiting, ready]);
      this.#printed = true;
    } catch {
      this.#say(say.tagNotMade);
    }
  }

  /** Those that wait, and no other. */
  #printWaiting() {
    printTags(this.#waiting);
    this.#printed = true;
  }

  async #keep() {
    try {
      const ready = await this.#ready();
      this.#waiting = this.#printed ? [ready] : [...this.#waiting, ready];
      this.#printed = false;
      this.#later = true;
      this.#say("");
      document.getElementById("print-waiting")?.focus();
    } catch {
      this.#say(say.tagNotMade);
    }
  }

  async #ready() {
    const tag = await this.#ask();
    this.#remember();
    return { tag, written: this.#written };
  }

  #drop() {
    this.#waiting = [];
    this.#draw();
  }

  /** @param {string} note */
  #say(note) {
    this.#note = note;
    this.#draw();
  }

  #draw() {
    const waiting = this.#waiting.length;
    render(
      html`
        <div class="paper-sheet-head">
          <h2 id="tag-sheet-title" tabindex="-1" autofocus>${say.tagTitle}</h2>
          <button type="button" id="close-tag" @click=${() => this.#sheet.close()}>${say.close}</button>
        </div>
        ${this.#later ? this.#kept(waiting) : this.#form(waiting)}
      `,
      this.#sheet,
    );
  }

  /** @param {number} waiting */
  #kept(waiting) {
    return html`<p role="status">${waiting ? say.tagKept : nothing}</p>
      ${waiting ? html`<p>${say.tagsWait({ tags: waiting })}</p>` : nothing}
      ${waiting ? html`<div class="row">${this.#waitingButton(waiting, "go")}</div>` : nothing}`;
  }

  /** @param {number} waiting */
  #form(waiting) {
    return html`<p class="quiet">${say.tapToWrite}</p>
      ${waiting ? this.#others(waiting) : nothing}
      <div class="preview">${drawn(this.#tag ?? NO_TAG, this.#lines())}</div>
      <div role="status">${this.#note ? html`<p class="note">${this.#note}</p>` : nothing}</div>
      <p class="quiet" id="keep-tag-where">${say.laterWhere}</p>
      <div class="row paper-ways">
        <button type="button" class="go" id="print-tag" @click=${() => this.#print()}>${say.printTags({ tags: waiting + 1 })}</button>
        <button type="button" id="keep-tag" aria-describedby="keep-tag-where" @click=${() => this.#keep()}>${say.printLater}</button>
      </div>`;
  }

  /** @returns {import("./tag.js").Lines} */
  #lines() {
    const { wash, dry } = this.#written;
    return {
      title: this.#field("title", say.wordsAtTop),
      label: this.#field("label", say.forWhom),
      fibre: html`<div><dt><label for="tag-fibre">${say.fiber}</label></dt>
        <dd>${this.#field("fibre", "")}${this.#offered.length ? this.#chips() : nothing}</dd></div>`,
      date: html`<div><dt><label for="tag-date">${say.finished}</label></dt><dd>${this.#field("date", "", "date")}</dd></div>`,
      care: html`<details class="tag-care"><summary><span><span class="said">${say.howToCare}</span> ${careOf(wash, dry)}</span></summary>
        ${this.#ways("wash", say.howToWash, WASHING)} ${this.#ways("dry", say.howToDry, DRYING)}</details>`,
      more: this.#field("more", say.moreOnWashing),
    };
  }

  /** A line of the tag. @param {Field} name @param {string} title where no label stands beside it */
  #field(name, title, type = "text") {
    return html`<input class="tag-line" id="tag-${name}" type=${type} enterkeyhint=${type === "date" ? nothing : "next"} autocomplete="off" dir=${type === "text" ? "auto" : nothing}
      aria-label=${title || nothing} placeholder=${name === "fibre" ? say.asOnBand : title} .value=${this.#written[name]}
      @input=${(/** @type {any} */ event) => this.#write({ [name]: event.target.value })} />`;
  }

  /** The last ones, then those of her shelf. */
  get #offered() {
    return [...new Set([...this.#fibres, ...fibres(this.draft.shelf ?? {})])].slice(0, OFFERED);
  }

  #chips() {
    return html`<div class="row" role="group" aria-label=${say.fibersOffered}>${this.#offered.map(
      (fibre) =>
        html`<button type="button" class="chosen" aria-pressed=${fibre === this.#written.fibre}
          @click=${() => this.#write({ fibre })}><bdi>${short(fibre)}</bdi></button>`,
    )}</div>`;
  }

  /** @param {number} waiting */
  #others(waiting) {
    return oneLine(
      say.tagsWait({ tags: waiting }),
      html`<button type="button" id="drop-tags" @click=${() => this.#drop()}>${say.deleteTags}</button>`,
      this.#waitingButton(waiting),
    );
  }

  /** @param {number} waiting */
  #waitingButton(waiting, name = "") {
    return html`<button type="button" class=${name} id="print-waiting" @click=${() => this.#printWaiting()}>${say.printWaiting({ tags: waiting })}</button>`;
  }

  /** @param {"wash" | "dry"} name @param {string} title @param {Way[]} ways */
  #ways(name, title, ways) {
    return html`<fieldset>
      <legend>${title}</legend>
      <div class="choice">${ways.map(
        (way) =>
          html`<label><input type="radio" name="tag-${name}" .checked=${way.name === this.#written[name]}
            @change=${() => this.#write({ [name]: way.name })} /><span>${way.words}</span></label>`,
      )}</div>
    </fieldset>`;
  }

  /** @param {Partial<Written>} words */
  #write(words) {
    this.#written = { ...this.#written, ...words };
    const { label, fibre, date } = this.#written;
    this.draft.write(this.#half, { pair: this.#pair, written: { label, fibre, date } });
    this.#keepWords();
    this.#draw();
  }

  #remember() {
    const { fibre } = this.#written;
    const others = this.#fibres.filter((one) => one !== fibre.trim());
    this.#fibres = [fibre.trim(), ...others].filter(Boolean).slice(0, OFFERED);
    this.draft.write(this.#half, null);
    this.#keepWords();
    this.#draw();
  }

  #keepWords() {
    const { title, wash, dry, more } = this.#written;
    this.draft.write("tag", { title, wash, dry, more, fibres: this.#fibres });
  }
}

/** @param {any} kept @returns {Pick<Written, "title" | "wash" | "dry" | "more"> & { fibres: string[] }} */
function remembered(kept) {
  const word = (/** @type {string} */ name, usual = "") =>
    typeof kept?.[name] === "string" ? kept[name] : usual;
  const fibres = Array.isArray(kept?.fibres) ? kept.fibres : [];
  return {
    title: word("title"),
    wash: word("wash", WASHING[0].name),
    dry: word("dry", DRYING[0].name),
    more: word("more"),
    fibres: fibres.filter((/** @type {unknown} */ one) => typeof one === "string"),
  };
}

/** Those of the yarns on her shelf. @param {Values} shelf */
function fibres(shelf) {
  return Object.entries(shelf)
    .filter(([name, fibre]) => name.endsWith(".fibre") && fibre.trim())
    .map(([, fibre]) => fibre.trim());
}

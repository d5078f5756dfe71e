/**
 * What is to be said beside the counting, one thing at a time, the most urgent first: it stands where the
 * progress stands, so that neither target nor controls move.
 */
import { html, nothing } from "lit-html";
import * as say from "words/machine";
import { remember, remembered } from "./remembered.js";

/**
 * @typedef {object} Notice
 * @property {string} words
 * @property {{ words: string, act: () => void }[]} [ways] its buttons
 */

// The most urgent first.
const ORDER = /** @type {const} */ (["ask", "word", "close", "following", "memory", "awake"]);
/** @typedef {(typeof ORDER)[number]} Kind */

/** Fires "change" whenever another notice stands. */
export class Notices extends EventTarget {
  /** @type {Map<Kind, Notice>} */
  #told = new Map();
  /** @type {Set<Kind>} what she has read and does not want to read again */
  #read = new Set();
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #passing;

  /** @param {import("../storage/kept.js").Kept} kept that the screen may go dark is told once, not at each visit */
  constructor(kept) {
    super();
    this.kept = kept;
    if (remembered(kept).dark) this.#read.add("awake");
  }

  /** @param {Kind} kind @param {Notice | null} notice null once it is over */
  tell(kind, notice) {
    if (notice) this.#told.set(kind, notice);
    else {
      this.#told.delete(kind);
      if (kind !== "awake") this.#read.delete(kind);
    }
    this.dispatchEvent(new Event("change"));
  }

  /** Something that goes by itself. @param {string} words @param {Notice["ways"]} [ways] @param {number} [ms] */
  pass(words, ways, ms = 5000) {
    clearTimeout(this.#passing);
    this.tell("word", { words, ways });
    this.#passing = setTimeout(() => this.tell("word", null), ms);
  }

  /** @returns {Notice | undefined} */
  get first() {
    const kind = this.#kind();
    return kind && this.#told.get(kind);
  }

  /** In a word, what she has read and what still holds. */
  get standing() {
    return this.#read.has("memory") ? say.notSaving : "";
  }

  #kind() {
    return ORDER.find((kind) => this.#told.has(kind) && !this.#read.has(kind));
  }

  draw() {
    const kind = this.#kind();
    const notice = kind && this.#told.get(kind);
    if (!notice) return nothing;
    const read = () => {
      this.#read.add(kind);
      if (kind === "awake") remember(this.kept, { dark: true });
      this.dispatchEvent(new Event("change"));
    };
    const lasting = kind === "memory" || kind === "awake";
    return html`<div class="notice notice-${kind}" role=${kind === "word" ? nothing : "alert"}>
      <p>${notice.words}</p>
      ${notice.ways?.map(({ words, act }) => html`<button type="button" @click=${act}>${words}</button>`)}
      ${lasting ? html`<button type="button" @click=${read}>${say.understood}</button>` : nothing}
    </div>`;
  }
}

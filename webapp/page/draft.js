/**
 * What she typed, kept on the phone at every touch: her own sheet, and apart from it the visiting
 * sheet (a shared plan or the example) so that neither can ever overwrite the other.
 * @import {KnittedPair} from "../book/types"
 * @import {Last, Values, Visit} from "./types"
 */
import { valuesOf, withUnits } from "./values_of.js";

const MINE = "heelwise.mine";
const VISIT = "heelwise.visit";
const BEFORE = "heelwise.before";
const CHART = "heelwise.chart";
const LAST = "heelwise.last";
const SHELF = "heelwise.shelf";
const UNKEPT = "heelwise.unkept";
const KNITTED = "heelwise.knitted";
const ASIDE = "heelwise.aside.";

/** What stands where. The counts shown last and how far pairs are
 * are not among them: those are worked out again, and the machine tells these again. @type {Record<string, string>} */
const WORDS = {
  [MINE]: "Your own page",
  [VISIT]: "The sheet that was open last",
  [BEFORE]: "What stood on your own page before",
  [CHART]: "What was typed for the table over sizes",
  [SHELF]: "Your cylinders and yarns",
  [UNKEPT]: "A wearer’s sheet that the book did not have yet",
};

export class Draft {
  /** @type {Map<string, string>} what storage would hold, for phones that refuse it */
  #memory = new Map();
  #aside = setAsideBefore();

  /** False while the phone has refused to store something that was typed; the page then says so and goes on. */
  get stored() {
    return !Object.keys(WORDS).some((key) => this.#memory.has(key));
  }

  /** @returns {Values | null} */
  get mine() {
    return this.#read(MINE);
  }

  /** @param {Values} values */
  set mine(values) {
    this.#write(MINE, values);
  }

  /** @returns {Visit | null} */
  get visit() {
    return this.#read(VISIT, visitOf);
  }

  /** @param {Visit | null} visit */
  set visit(visit) {
    this.#write(VISIT, visit);
  }

  /** @returns {Values | null} the sheet that was emptied last, to bring back */
  get before() {
    return this.#read(BEFORE);
  }

  /** @param {Values | null} values */
  set before(values) {
    this.#write(BEFORE, values);
  }

  /** @returns {Values | null} what was typed for the table over sizes */
  get chart() {
    return withUnits(this.#read(CHART), this.#units);
  }

  /** @param {Values | null} values */
  set chart(values) {
    this.#write(CHART, values);
  }

  /** @returns {Last | null} the counts shown last */
  get last() {
    return this.#read(LAST, () => {});
  }

  /** @param {Last | null} last */
  set last(last) {
    this.#write(LAST, last);
  }

  /** @returns {Values | null} her cylinders and yarns, as typed */
  get shelf() {
    return withUnits(this.#read(SHELF), this.#units);
  }

  /** @param {Values | null} values */
  set shelf(values) {
    this.#write(SHELF, values);
  }

  /** @returns {Record<string, {label: string, values: Values}>} wearers' sheets that the book has not yet, by id */
  get unkept() {
    return this.#read(UNKEPT, sheetsOf) ?? {};
  }

  /** @param {Record<string, {label: string, values: Values}>} sheets */
  set unkept(sheets) {
    this.#write(UNKEPT, sheets);
  }

  /** @returns {Record<string, KnittedPair>} how far wearers' pairs are, what the book has not yet, by id */
  get knitted() {
    return this.#read(KNITTED, () => {}) ?? {};
  }

  /** @param {Record<string, KnittedPair>} pairs */
  set knitted(pairs) {
    this.#write(KNITTED, pairs);
  }

  /** What was kept and cannot be read. */
  get aside() {
    return [...this.#aside].map(([place, { words, text }]) => ({ place, words, text }));
  }

  /** Delete it for good. @param {string} place */
  drop(place) {
    localStorage.removeItem(place);
    this.#aside.delete(place);
  }

  /** Of the sheet that was open last. */
  get #units() {
    return (this.visit?.values ?? this.mine)?.units;
  }

  /** @param {string} key @param {(raw: any) => unknown} sure throws where it is not what is kept there @returns {any} */
  #read(key, sure = valuesOf) {
    let text = this.#memory.get(key);
    try {
      text ??= localStorage.getItem(key) ?? undefined;
    } catch {
      return null;
    }
    if (text === undefined || this.#aside.get(key)?.text === text) return null;
    try {
      const kept = JSON.parse(text);
      if (kept) sure(kept);
      return kept;
    } catch {
      this.#setAside(key, text);
      return null;
    }
  }

  /** What is typed next must not overwrite it. @param {string} key @param {string} text */
  #setAside(key, text) {
    const words = WORDS[key];
    if (!words) return;
    let place = ASIDE + Date.now() + key;
    try {
      localStorage.setItem(place, text);
      localStorage.removeItem(key);
    } catch {
      place = key; // no room: it stays where it is, and what is typed stays in memory
    }
    this.#aside.set(place, { words, text });
  }

  /** @param {string} key @param {object | null} value */
  #write(key, value) {
    const text = JSON.stringify(value);
    try {
      if (this.#aside.has(key)) throw new Error("Something set aside stands there.");
      localStorage.setItem(key, text);
      this.#memory.delete(key);
    } catch {
      this.#memory.set(key, text);
    }
  }
}

/** @returns {Map<string, { words: string, text: string }>} by where it is kept */
function setAsideBefore() {
  const found = new Map();
  try {
    for (const [place, text] of Object.entries(localStorage)) {
      const words = WORDS[place.slice(place.lastIndexOf("heelwise."))];
      if (place.startsWith(ASIDE) && words) found.set(place, { words, text });
    }
  } catch {
    // The phone keeps nothing, then.
  }
  return found;
}

/** @param {any} visit */
function visitOf({ kind, opened, values }) {
  if (!["wearer", "link", "demo"].includes(kind)) throw new TypeError("no sheet");
  valuesOf(opened);
  valuesOf(values);
}

/** @param {any} sheets */
function sheetsOf(sheets) {
  for (const { label, values } of Object.values(sheets)) {
    if (typeof label !== "string") throw new TypeError("no label");
    valuesOf(values);
  }
}

/**
 * What she typed, chose or began, kept on the phone at every touch: her own sheet, and apart from it the
 * visiting sheet (a shared plan or the example) so that neither can ever overwrite the other.
 * @import {KnittedPair} from "../book/types"
 * @import {Dated} from "../storage/dated.js"
 * @import {Kinds} from "../storage/types"
 * @import {Last, Values, Visit} from "./types"
 */
import * as say from "words/page";
import { change, merge } from "../storage/dated.js";
import { dated } from "../storage/facts.js";
import { Kept } from "../storage/kept.js";
import { withItsUnit } from "./units_beside.js";
import { valuesOf, withUnits } from "./values_of.js";

/** @typedef {"mine" | "shelf" | "chart" | "sets"} Own a sheet that is hers alone */
/** @typedef {Dated & { label: string, number?: number }} WearersSheet that of one visit */

const anything = () => {};
const sheet = { sure: valuesOf, flat: true };

/**
 * What stands where; it is in words but for the counts shown last and how far pairs are: those are worked
 * out again, and the machine tells these again. @type {Kinds}
 */
const KINDS = {
  mine: { words: say.setAside({ what: "mine" }), ...sheet },
  visit: { words: say.setAside({ what: "visit" }), sure: visitOf },
  before: { words: say.setAside({ what: "before" }), sure: valuesOf },
  chart: { words: say.setAside({ what: "chart" }), ...sheet },
  shelf: { words: say.setAside({ what: "shelf" }), ...sheet },
  sets: { words: say.setAside({ what: "sets" }), ...sheet },
  unkept: { words: say.setAside({ what: "unkept" }), sure: sheetOf, many: true },
  knitted: { words: "", sure: anything, many: true },
  knitting: { words: "", sure: anything },
  shown: { words: "", sure: anything }, // the pair whose counter is
  counter: { words: "", sure: anything },
  cared: { words: "", sure: anything }, // the cautions were read
  half: { words: "", sure: anything, many: true }, // words of which nothing is made yet
  tag: { words: "", sure: anything },
  tags: { words: "", sure: anything }, // that wait for paper
  theme: { words: "", sure: anything, plain: true },
  language: { words: "", sure: anything, plain: true },
  last: { words: "", sure: anything, guess: true },
};

/** Fires as `Kept` does. @extends {Kept} */
export class Draft extends Kept {
  constructor() {
    super(KINDS, withItsUnit);
  }

  /** A sheet with the dates of its fields; empty where nothing was typed. @param {Own} name @returns {Dated} */
  sheet(name) {
    return this.read(name) ?? { values: {}, changed: {} };
  }

  /**
   * What stands in a sheet's fields by now; returns whether that is anything else than it was.
   * @param {Own} name @param {import("./form.js").Form} form
   */
  type(name, form) {
    const before = this.sheet(name);
    const now = change(before, form.over(before.values), { usual: form.usual });
    if (sameDates(before, now)) return false;
    this.write(name, now);
    return true;
  }

  /** From another phone's copy, field by field. @param {Own} name @param {Dated} other */
  join(name, other) {
    this.write(name, merge(this.sheet(name), other, withItsUnit));
    // What is on the table follows, or it would be taken for typed since.
    this.dispatchEvent(new CustomEvent("change", { detail: { names: [name], all: true } }));
  }

  /** @returns {Values | null} */
  get mine() {
    return this.read("mine")?.values ?? null;
  }

  /** @param {Values} values */
  set mine(values) {
    this.write("mine", change(this.sheet("mine"), values));
  }

  /** @returns {Visit | null} */
  get visit() {
    const visit = this.read("visit");
    return visit && dated(visit);
  }

  /** @param {Visit | null} visit */
  set visit(visit) {
    this.write("visit", visit);
  }

  /** @returns {Values | null} the sheet that was emptied last, to bring back */
  get before() {
    return this.read("before");
  }

  /** @param {Values | null} values */
  set before(values) {
    this.write("before", values);
  }

  /** @returns {Values | null} what was typed for the table over sizes */
  get chart() {
    return withUnits(this.read("chart")?.values ?? null, this.#units);
  }

  /** @returns {Values | null} her sets of instructions */
  get sets() {
    return this.read("sets")?.values ?? null;
  }

  /** @returns {Values | null} her cylinders and yarns, as typed */
  get shelf() {
    return withUnits(this.read("shelf")?.values ?? null, this.#units);
  }

  /** @returns {Last | null} the counts shown last */
  get last() {
    return this.read("last");
  }

  /** @param {Last | null} last */
  set last(last) {
    this.write("last", last);
  }

  /** Wearers' sheets that the book has not yet, by id. @returns {Record<string, WearersSheet>} */
  get unkept() {
    return this.#many("unkept");
  }

  /** @param {string} id @param {WearersSheet | null} sheet null once the book has it */
  keepFor(id, sheet) {
    this.write(`unkept.${id}`, sheet);
  }

  /** How far wearers' pairs are, what the book has not yet, by id. @returns {Record<string, KnittedPair>} */
  get knitted() {
    return this.#many("knitted");
  }

  /** @param {string} id of a wearer @param {KnittedPair | null} pair null once the book has it */
  keepPair(id, pair) {
    this.write(`knitted.${id}`, pair);
  }

  /** @param {string} kind @returns {Record<string, any>} by id */
  #many(kind) {
    const names = this.names(`${kind}.`);
    return Object.fromEntries(
      names.map((name) => [name.slice(kind.length + 1), dated(this.read(name))]),
    );
  }

  /** Of the sheet that was open last. */
  get #units() {
    return (this.visit?.values ?? this.mine)?.units;
  }
}

/** @param {Dated} one @param {Dated} other */
export function sameDates({ changed: one }, { changed: other }) {
  return Object.keys({ ...one, ...other }).every((name) => one[name] === other[name]);
}

/** @param {any} visit */
function visitOf({ kind, opened, values }) {
  if (!["wearer", "link", "demo"].includes(kind)) throw new TypeError("no sheet");
  valuesOf(opened);
  valuesOf(values);
}

/** @param {any} sheet of a wearer */
function sheetOf({ label, values }) {
  if (typeof label !== "string") throw new TypeError("no label");
  valuesOf(values);
}

/**
 * What she typed, kept on the phone at every touch: her own sheet, and apart from it the visiting
 * sheet (a shared plan or the example) so that neither can ever overwrite the other.
 * @import {KnittedPair} from "../book/types"
 * @import {Last, Values, Visit} from "./types"
 */
import { KeptTexts } from "./kept_texts.js";
import { valuesOf, withUnits } from "./values_of.js";

const MINE = "heelwise.mine";
const VISIT = "heelwise.visit";
const BEFORE = "heelwise.before";
const CHART = "heelwise.chart";
const LAST = "heelwise.last";
const SHELF = "heelwise.shelf";
const UNKEPT = "heelwise.unkept";
const KNITTED = "heelwise.knitted";

/**
 * What stands where, but for the counts shown last and how far pairs are: those are worked out again, and the
 * machine tells these again. @type {Record<string, string>}
 */
const WORDS = {
  [MINE]: "Your own page",
  [VISIT]: "The sheet that was open last",
  [BEFORE]: "What stood on your own page before",
  [CHART]: "What was typed for the table over sizes",
  [SHELF]: "Your cylinders and yarns",
  [UNKEPT]: "A wearer’s sheet that the book did not have yet",
};

export class Draft {
  #kept = new KeptTexts(WORDS);

  /** False while the phone has refused to store something that was typed; the page then says so and goes on. */
  get stored() {
    return this.#kept.stored;
  }

  /** What was kept and cannot be read. */
  get aside() {
    return this.#kept.aside;
  }

  /** Delete it for good. @param {string} place */
  drop(place) {
    this.#kept.drop(place);
  }

  /** @returns {Values | null} */
  get mine() {
    return this.#kept.read(MINE, valuesOf);
  }

  /** @param {Values} values */
  set mine(values) {
    this.#kept.write(MINE, values);
  }

  /** @returns {Visit | null} */
  get visit() {
    return this.#kept.read(VISIT, visitOf);
  }

  /** @param {Visit | null} visit */
  set visit(visit) {
    this.#kept.write(VISIT, visit);
  }

  /** @returns {Values | null} the sheet that was emptied last, to bring back */
  get before() {
    return this.#kept.read(BEFORE, valuesOf);
  }

  /** @param {Values | null} values */
  set before(values) {
    this.#kept.write(BEFORE, values);
  }

  /** @returns {Values | null} what was typed for the table over sizes */
  get chart() {
    return withUnits(this.#kept.read(CHART, valuesOf), this.#units);
  }

  /** @param {Values | null} values */
  set chart(values) {
    this.#kept.write(CHART, values);
  }

  /** @returns {Last | null} the counts shown last */
  get last() {
    return this.#kept.read(LAST, () => {});
  }

  /** @param {Last | null} last */
  set last(last) {
    this.#kept.write(LAST, last);
  }

  /** @returns {Values | null} her cylinders and yarns, as typed */
  get shelf() {
    return withUnits(this.#kept.read(SHELF, valuesOf), this.#units);
  }

  /** @param {Values | null} values */
  set shelf(values) {
    this.#kept.write(SHELF, values);
  }

  /** @returns {Record<string, {label: string, values: Values}>} wearers' sheets that the book has not yet, by id */
  get unkept() {
    return this.#kept.read(UNKEPT, sheetsOf) ?? {};
  }

  /** @param {Record<string, {label: string, values: Values}>} sheets */
  set unkept(sheets) {
    this.#kept.write(UNKEPT, sheets);
  }

  /** @returns {Record<string, KnittedPair>} how far wearers' pairs are, what the book has not yet, by id */
  get knitted() {
    return this.#kept.read(KNITTED, () => {}) ?? {};
  }

  /** @param {Record<string, KnittedPair>} pairs */
  set knitted(pairs) {
    this.#kept.write(KNITTED, pairs);
  }

  /** Of the sheet that was open last. */
  get #units() {
    return (this.visit?.values ?? this.mine)?.units;
  }
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

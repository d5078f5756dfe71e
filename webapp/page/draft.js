/**
 * What she typed, kept on the phone at every touch: her own sheet, and apart from it the visiting
 * sheet (a shared plan or the example) so that neither can ever overwrite the other.
 * @import {Last, Values, Visit} from "./types"
 */

const MINE = "heelwise.mine";
const VISIT = "heelwise.visit";
const BEFORE = "heelwise.before";
const CHART = "heelwise.chart";
const LAST = "heelwise.last";
const SHELF = "heelwise.shelf";
const UNKEPT = "heelwise.unkept";

export class Draft {
  /** False once the phone has refused to store; the page then says so and goes on. */
  stored = true;
  /** @type {Map<string, string>} what storage would hold, for phones that refuse it */
  #memory = new Map();

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
    return this.#read(VISIT);
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
    return this.#read(CHART);
  }

  /** @param {Values | null} values */
  set chart(values) {
    this.#write(CHART, values);
  }

  /** @returns {Last | null} the counts shown last */
  get last() {
    return this.#read(LAST);
  }

  /** @param {Last | null} last */
  set last(last) {
    this.#write(LAST, last);
  }

  /** @returns {Values | null} her cylinders and yarns, as typed */
  get shelf() {
    return this.#read(SHELF);
  }

  /** @param {Values | null} values */
  set shelf(values) {
    this.#write(SHELF, values);
  }

  /** @returns {Record<string, {label: string, values: Values}>} wearers' sheets that the book has not yet, by id */
  get unkept() {
    return this.#read(UNKEPT) ?? {};
  }

  /** @param {Record<string, {label: string, values: Values}>} sheets */
  set unkept(sheets) {
    this.#write(UNKEPT, sheets);
  }

  /** @param {string} key @returns {any} */
  #read(key) {
    let text = this.#memory.get(key);
    try {
      text ??= localStorage.getItem(key) ?? undefined;
      return text === undefined ? null : JSON.parse(text);
    } catch {
      return null;
    }
  }

  /** @param {string} key @param {object | null} value */
  #write(key, value) {
    const text = JSON.stringify(value);
    try {
      localStorage.setItem(key, text);
      this.#memory.delete(key);
      this.stored = true;
    } catch {
      this.#memory.set(key, text);
      this.stored = false;
    }
  }
}

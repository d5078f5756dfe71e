/**
 * The sets of instructions that the knitter keeps. They stand in one sheet, the fields of each beginning with
 * its id, so that two tabs and two phones' copies are put together field by field; what is deleted is emptied.
 * @import {Draft} from "../page/draft.js"
 * @import {Values} from "../page/types"
 */
import * as say from "words/sets";
import { short } from "../page/short.js";
import { only } from "../page/stays.js";
import { change } from "../storage/dated.js";
import { persist } from "../storage/persist.js";
import { note } from "../storage/uncopied.js";

const SHEET = "sets";
const PLAN = "plan.";
export const DETAILS = /** @type {const} */ ([
  "title",
  "maker",
  "version",
  "date",
  "licence",
  "contact",
  "errata",
  "fibre",
  "notes",
]);
/** @typedef {{ id: string, made: number, words: Values, plan: Values }} KeptSet `words`: details, `by` and `sizes` */

export class KeptSets {
  /** @param {Draft} draft */
  constructor(draft) {
    this.draft = draft;
  }

  /** The newest first. @returns {KeptSet[]} */
  get all() {
    const ids = new Set(Object.keys(this.#values).map((name) => name.split(".")[0]));
    const all = [...ids].map((id) => this.#set(id));
    return all.sort((one, other) => other.made - one.made);
  }

  /** @param {string} id @returns {KeptSet | undefined} */
  get(id) {
    return this.all.find((one) => one.id === id);
  }

  /** @param {Values} plan the values of a sheet, of which what is nobody's stays @param {Values} words @returns {string} its id */
  add(plan, words) {
    const id = newId();
    const own = Object.entries(only(plan, "machine", "wish")).map(([name, text]) => [
      PLAN + name,
      text,
    ]);
    this.write(id, { ...words, made: String(Date.now()), ...Object.fromEntries(own) });
    persist();
    return id;
  }

  /** @param {string} id @param {Values} words */
  write(id, words) {
    const named = Object.entries(words).map(([name, text]) => [`${id}.${name}`, text]);
    this.#keep({ ...this.#values, ...Object.fromEntries(named) });
  }

  /** @param {string} id @param {string} title @returns {string} the copy's id */
  copy(id, title) {
    const to = newId();
    this.write(to, { ...this.#fields(id), title, made: String(Date.now()) });
    return to;
  }

  /** What it gives can be handed to `restore`. @param {string} id @returns {Values} */
  remove(id) {
    const gone = this.#fields(id);
    const rest = Object.entries(this.#values).filter(([name]) => !name.startsWith(`${id}.`));
    this.#keep(Object.fromEntries(rest));
    return gone;
  }

  /** @param {string} id @param {Values} fields */
  restore(id, fields) {
    this.write(id, fields);
  }

  /** @returns {Values} */
  get #values() {
    return this.draft.sheet(SHEET).values;
  }

  /** @param {Values} values */
  #keep(values) {
    this.draft.write(SHEET, change(this.draft.sheet(SHEET), values));
    note(SHEET);
  }

  /** @param {string} id @returns {Values} by their names within it */
  #fields(id) {
    const own = Object.entries(this.#values).filter(([name]) => name.startsWith(`${id}.`));
    return Object.fromEntries(own.map(([name, text]) => [name.slice(id.length + 1), text]));
  }

  /** @param {string} id @returns {KeptSet} */
  #set(id) {
    const fields = Object.entries(this.#fields(id));
    const plan = fields.filter(([name]) => name.startsWith(PLAN));
    const { made = "", ...words } = Object.fromEntries(
      fields.filter(([name]) => !name.startsWith(PLAN)),
    );
    return {
      id,
      made: Number(made) || 0,
      words,
      plan: Object.fromEntries(plan.map(([name, text]) => [name.slice(PLAN.length), text])),
    };
  }
}

/** @param {KeptSet} set */
export function titleOf({ words }) {
  return short(words.title ?? "") || say.noTitle;
}

/** As a version 4 UUID (RFC 9562) without its lines, after a letter: the name of a field begins so. */
function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  return `s${Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("")}`;
}

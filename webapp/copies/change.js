/**
 * One thing that a copy would change.
 * @import {Change} from "./types"
 */
import { canonical } from "./canonical.js";

/**
 * Of what has no dates: new here, the same as here, or other than here.
 * @template T @param {Change["kind"]} kind @param {string} title @param {T | null} here @param {T} file
 * @param {{ altered: boolean, rows: (here: T) => Change["rows"], put: (change: Change) => Promise<void> | void }} how
 * @returns {Change | Change["kind"]} its kind alone where both are the same
 */
export function change(kind, title, here, file, { altered, rows, put }) {
  if (here && canonical(here) === canonical(file)) return kind;
  if (!here) return made({ kind, title, how: "new", altered, put });
  return made({ kind, title, how: "other", altered, rows: rows(here), take: "here", put });
}

/**
 * @param {Pick<Change, "kind" | "title" | "how" | "altered"> & Partial<Pick<Change, "rows" | "take">>
 *   & { put: (change: Change) => Promise<void> | void }} parts
 * @returns {Change}
 */
export function made({ rows = [], take = "file", put, ...parts }) {
  /** @type {Change} */
  const one = { ...parts, rows, take, put: () => put(one) };
  return one;
}

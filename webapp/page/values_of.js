/**
 * What was typed, made sure of before it is used: read from the phone or from a file it may be anything.
 * @import {Values} from "./types"
 */
import { within } from "./within.js";

/** @param {any} raw @returns {Values} @throws {TypeError} where it is not what a form holds */
export function valuesOf(raw) {
  if (typeof raw !== "object" || !raw || Array.isArray(raw)) throw new TypeError("no values");
  for (const [name, value] of Object.entries(raw)) {
    // A name becomes a path in the request; no path may lead behind an object.
    if (!/^[a-z]\w*(\.\w+)*$/.test(name) || /__proto__|constructor|prototype/.test(name)) {
      throw new TypeError("no field");
    }
    if (typeof value !== "string") throw new TypeError("no text");
  }
  return raw;
}

/** Whether anything is written of a foot; a link may bring the counts alone. @param {Values} values */
export function hasFoot(values) {
  return Object.entries(values).some(
    ([name, value]) => within(name, "foot", "other_foot", "person.shoe_size.size") && value.trim(),
  );
}

/**
 * What was typed for shelf or table once had no units beside it: bare numbers were in those of the sheet.
 * @param {Values | null} values @param {string | undefined} units @returns {Values | null}
 */
export function withUnits(values, units) {
  return values && units ? { units, ...values } : values;
}

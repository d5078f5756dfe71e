/**
 * One thing that is kept, with the time of its change: a choice, a pair on screen, or a sheet, whose fields
 * have times of their own.
 * @import { Fact, Kind, Spelled } from "./types"
 */
import { datesOf, merge } from "./dated.js";

/** @param {any} raw @param {Kind} kind @returns {Fact | undefined} none where it cannot be read */
export function factOf({ at, value = null }, { sure, flat }) {
  try {
    if (value) sure(flat ? value.values : value);
    return { at: Number.isFinite(at) ? at : 0, value: dated(value) };
  } catch {
    return undefined;
  }
}

/** A list has `values`, too, as a method. @param {any} value */
function hasFields(value) {
  return Boolean(value?.values) && typeof value.values === "object";
}

/** A sheet has the dates of its fields with it. @param {any} value */
export function dated(value) {
  return hasFields(value) ? { ...value, changed: datesOf(value.changed) } : value;
}

/** The later one; of the same sheet, each field's later text. @param {Fact} one @param {Fact} other @param {Spelled} spelled @returns {Fact} */
export function later(one, other, spelled) {
  const lead = one.at - other.at || (text(one) < text(other) ? -1 : 1);
  const late = lead < 0 ? other : one;
  if (!sameSheet(one.value, other.value)) return late;
  return { at: late.at, value: { ...late.value, ...merge(one.value, other.value, spelled) } };
}

/** @param {any} one @param {any} other */
export function sameSheet(one, other) {
  const whose = /** @type {const} */ (["kind", "id", "number", "link", "foot"]);
  return hasFields(one) && hasFields(other) && whose.every((name) => one[name] === other[name]);
}

/** @param {Fact} one @param {Fact} other */
export function sameFact(one, other) {
  return one.at === other.at && text(one) === text(other);
}

/** The same whatever order its names are in. @param {Fact} fact */
function text({ value }) {
  return JSON.stringify(value, (_, inside) =>
    typeof inside === "object" && inside && !Array.isArray(inside)
      ? Object.fromEntries(Object.entries(inside).sort(([one], [other]) => (one < other ? -1 : 1)))
      : inside,
  );
}

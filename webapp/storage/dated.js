/**
 * A sheet whose fields know when they were changed, so that two tabs, or two phones' copies, are put
 * together field by field: the later change of a field stays, whichever side it came from.
 *
 * A record holds its fields (`values`, or the fields of the record itself) and beside them
 * `changed: {field: ms}`: when each was changed, by the clock of who changed it, and always later than the
 * change before that one, however the clock was set. A field that was emptied has a date and no value.
 * A field without a date is as old as can be: an older version wrote it. A whole record that was deleted
 * leaves `{id, at: ms}`; it is gone where `at` is not before the `newest` change.
 * @import { Spelled } from "./types"
 */

const MOST = 8_640_000_000_000_000; // ms: no Date is later

/** @typedef {Record<string, string>} Texts by the name of their field @typedef {Record<string, number>} Dates */
/** @typedef {{ values: Texts, changed: Dates }} Dated */

/** @param {any} raw of storage or a file @returns {Dates} without what is no date */
export function datesOf(raw) {
  const all = Object.entries(typeof raw === "object" && raw ? raw : {});
  return Object.fromEntries(
    all.filter(([name, at]) => name !== "__proto__" && Number.isInteger(at) && at > 0 && at < MOST),
  );
}

/** When anything of it was changed last; 0 where nobody knows. @param {Dates} changed */
export function newest(changed) {
  return Math.max(0, ...Object.values(changed));
}

/**
 * What stands in the fields by now; those that are as they were keep their dates.
 * @param {Dated} before @param {Texts} values @param {{ usual?: Texts, now?: number }} [options] `usual`:
 *   what stands in fields that nobody has touched @returns {Dated}
 */
export function change({ values: old, changed }, values, { usual = {}, now = Date.now() } = {}) {
  const dates = { ...changed };
  for (const name of new Set([...Object.keys(old), ...Object.keys(values)])) {
    const before = text(old, name) || (date(changed, name) ? "" : text(usual, name));
    if (before !== text(values, name)) dates[name] = Math.max(now, date(changed, name) + 1);
  }
  return { values: filled(values), changed: dates };
}

/**
 * Field by field the later one; the same whichever is named first. Of two without a date, or of the same,
 * one that holds something.
 * @param {Dated} one @param {Dated} other
 * @param {Spelled} [spelled] a text with the unit it is meant
 *   in: bare numbers must not come under another sheet's units @returns {Dated}
 */
export function merge(one, other, spelled) {
  const late = later(one, other, "units");
  const units = text(late.values, "units");
  const sides = [one, other].map((side) => (spelled ? inUnits(side, units, spelled) : side));
  const [first, second] = sides;
  /** @type {Dated} */
  const both = { values: {}, changed: {} };
  for (const name of new Set(
    sides.flatMap((side) => Object.keys({ ...side.values, ...side.changed })),
  )) {
    const { values, changed } = later(first, second, name);
    if (text(values, name)) both.values[name] = values[name];
    if (date(changed, name)) both.changed[name] = changed[name];
  }
  return both;
}

/** @param {Dated} one @param {Dated} other @param {string} name */
function later(one, other, name) {
  const lead = date(one.changed, name) - date(other.changed, name);
  return lead > 0 || (lead === 0 && text(one.values, name) > text(other.values, name))
    ? one
    : other;
}

/** @param {Dated} side @param {string} units @param {Spelled} spelled */
function inUnits({ values, changed }, units, spelled) {
  const own = text(values, "units");
  if (!own || !units || own === units) return { values, changed };
  const all = Object.entries(values).map(([name, value]) => [
    name,
    name === "units" ? value : spelled(name, value, own),
  ]);
  return { values: Object.fromEntries(all), changed };
}

/** Blank fields need no room. @param {Texts} values @returns {Texts} */
export function filled(values) {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value.trim()));
}

/** @param {Texts} values @param {string} name */
function text(values, name) {
  return Object.hasOwn(values, name) && values[name].trim() ? values[name] : "";
}

/** @param {Dates} changed @param {string} name */
function date(changed, name) {
  return Object.hasOwn(changed, name) ? changed[name] : 0;
}

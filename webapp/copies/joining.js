/**
 * What is here and what a copy of another phone has of the same, put together field by field: the later
 * change of a field stays (`storage/dated.js`). Where a field differs and neither is the later one, or nobody
 * knows when either was written, she chooses.
 * @import {Deleted, Visit, Wearer} from "../book/types"
 * @import {Dated} from "../storage/dated.js"
 * @import {Spelled} from "../storage/types"
 * @import {Change} from "./types"
 */
import { changedTo, joined, particulars, typedOn } from "../book/joined.js";
import { change, merge } from "../storage/dated.js";

/**
 * The file's wearer with the numbers that the visits have here: two phones may have counted on from the same
 * visit, and what was measured on two days is two visits.
 * @param {Deleted} here @param {Deleted} file @returns {Deleted}
 */
export function aligned(here, file) {
  const last = Math.max(0, ...[...here.visits, ...file.visits].map(({ number }) => number));
  let next = last + 1;
  const visits = file.visits.map((visit) => {
    const same = here.visits.find(({ at }) => visit.at > 0 && at === visit.at);
    if (same) return { ...visit, number: same.number };
    const taken = here.visits.find(({ number }) => number === visit.number);
    if (!taken?.at || !visit.at) return visit;
    next += 1;
    return { ...visit, number: next - 1 };
  });
  return { ...file, visits };
}

/**
 * Both together; what differs with neither the later one is as on the side that is taken, and is dated now.
 * @param {Deleted} here @param {Deleted} file its visits aligned @param {Change["take"]} take @param {Spelled} spelled
 * @returns {Deleted}
 */
export function together(here, file, take, spelled) {
  const both = joined(here, file, spelled);
  const side = take === "file" ? file : here;
  const words = picked(sheetOf(here.wearer), sheetOf(file.wearer), sheetOf(side.wearer));
  const visits = both.visits.map((visit) => {
    const [mine, theirs] = [of(here, visit), of(file, visit)];
    const chosen = of(side, visit);
    if (!mine || !theirs || !chosen) return visit;
    const values = picked(dated(mine), dated(theirs), dated(chosen));
    return Object.keys(values).length ? typedOn(visit, { ...visit.values, ...values }) : visit;
  });
  return { wearer: changedTo(both.wearer, words), visits };
}

/** Whether she has to choose. @param {Deleted} here @param {Deleted} file its visits aligned */
export function undated(here, file) {
  const open = (/** @type {Dated} */ one, /** @type {Dated} */ other) =>
    Object.keys(picked(one, other, one)).length > 0;
  return (
    open(sheetOf(here.wearer), sheetOf(file.wearer)) ||
    file.visits.some((visit) => {
      const mine = of(here, visit);
      return mine && open(dated(mine), dated(visit));
    })
  );
}

/** The same of a sheet. @param {Dated} here @param {Dated} file @param {Change["take"]} take @param {Spelled} spelled @returns {Dated} */
export function sheetTogether(here, file, take, spelled) {
  const both = merge(here, file, spelled);
  const values = picked(here, file, take === "file" ? file : here);
  return change(both, { ...both.values, ...values });
}

/** Whether she has to choose. @param {Dated} here @param {Dated} file */
export function undatedSheet(here, file) {
  return Object.keys(picked(here, file, here)).length > 0;
}

/**
 * What a side has in those fields that differ, with neither the later one.
 * @param {Dated} one @param {Dated} other @param {Dated} side @returns {Record<string, string>}
 */
function picked(one, other, side) {
  const names = [...new Set([...Object.keys(one.values), ...Object.keys(other.values)])];
  const open = names.filter(
    (name) =>
      text(one, name) !== text(other, name) &&
      (one.changed[name] ?? 0) === (other.changed[name] ?? 0),
  );
  return Object.fromEntries(open.map((name) => [name, text(side, name)]));
}

/** @param {Dated} sheet @param {string} name */
function text({ values }, name) {
  const value = Object.hasOwn(values, name) ? values[name] : "";
  return value.trim() ? value : "";
}

/** @param {Wearer} wearer @returns {Dated} */
function sheetOf(wearer) {
  return { values: { ...particulars(wearer) }, changed: wearer.changed ?? {} };
}

/** @param {Visit} visit @returns {Dated} */
function dated({ values, changed = {} }) {
  return { values, changed };
}

/** @param {Deleted} side @param {Visit} visit */
function of({ visits }, { number }) {
  return visits.find((one) => one.number === number);
}

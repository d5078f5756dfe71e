/**
 * When a foot was measured: a next pair may be knitted for it long after, and feet change.
 * @import {Dates} from "../storage/dated.js"
 * @import {Visit} from "./types"
 */
import * as say from "words/book";
import { ownerOf } from "../page/stays.js";
import { hasFoot } from "../page/values_of.js";
import { dayOf } from "./days.js";

const YEAR_MS = 365.25 * 24 * 60 * 60 * 1000;

/** When each measure of a visit was taken: on the visit's own day where the field has no date. @param {Visit} visit @returns {Dates} */
export function datesOfFoot({ at, values, changed = {} }) {
  const names = Object.keys(values).filter(
    (name) => ownerOf(name) === "foot" && name !== "person.shoe_size.system",
  );
  return Object.fromEntries(names.map((name) => [name, changed[name] ?? at]));
}

/** That the oldest measure is older than feet stay the same; "" where it is not. @param {Visit} visit */
export function oldMeasures(visit) {
  const at = Math.min(...Object.values(datesOfFoot(visit)));
  const age = Date.now() - at;
  if (!hasFoot(visit.values) || !at) return "";
  if (visit.values.who === "child") {
    return age > YEAR_MS / 2 ? say.oldChild({ day: dayOf(at) }) : "";
  }
  return age > YEAR_MS ? say.oldMeasures({ day: dayOf(at) }) : "";
}

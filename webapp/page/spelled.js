/**
 * Bare numbers, and the unit they are meant in. Weights of yarn are grams wherever feet are measured: what
 * is typed beside inches gets its unit as it leaves the form. A bare one that was kept beside inches is
 * from before that, when it was ounces there.
 * @import {Request} from "./types"
 */
import { WEIGHTS } from "./fields.js";
import { within } from "./within.js";

/** A number as people write it, with no unit after it. */
const BARE = /^\s*[\d.,/⁄ \u00a0½¼¾⅛⅜⅝⅞⅓⅔⅙⅚⅕⅖⅗⅘-]*[\d½¼¾⅛⅜⅝⅞⅓⅔⅙⅚⅕⅖⅗⅘]\s*$/;

/** Whether a field, of a request or of the shelf, holds a weight of yarn. @param {string} name */
const isWeight = (name) =>
  within(name, ...WEIGHTS) || (name.startsWith("shelf.") && name.endsWith(".left"));

/** @param {string} text */
export function isBare(text) {
  return BARE.test(text);
}

/** A number with the unit it is meant in; what has a unit already stays. @param {string} text @param {string} unit */
export function spelled(text, unit) {
  return isBare(text) ? `${text.trim()} ${unit}` : text;
}

/** A weight as it is typed now, for keeping. @param {string} name of the field @param {string} text @param {string} units */
export function inGrams(name, text, units) {
  return units === "in" && isWeight(name) ? spelled(text, "g") : text;
}

/** A weight as it was kept. @param {string} name of the field @param {string} text @param {string} units */
export function asKept(name, text, units) {
  return units === "in" && isWeight(name) ? spelled(text, "oz") : text;
}

/** A whole request as it was kept. @param {Request} request @returns {Request} */
export function requestAsKept(request) {
  /** @param {any} part @param {string} path @returns {any} */
  const told = (part, path) => {
    if (Array.isArray(part)) return part.map((one, at) => told(one, `${path}.${at}`));
    if (typeof part !== "object" || !part) {
      return typeof part === "boolean" || part === null
        ? part
        : isWeight(path)
          ? asKept(path, String(part), "in")
          : part;
    }
    const entries = Object.entries(part).map(([name, one]) => [
      name,
      told(one, path ? `${path}.${name}` : name),
    ]);
    return Object.fromEntries(entries);
  };
  return request.units === "in" ? told(request, "") : request;
}

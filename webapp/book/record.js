/**
 * What the phone has kept, made sure of before anything is done with it: an older version wrote less,
 * and a damaged entry must not take the others with it.
 * @import {Visit, Wearer} from "./types"
 */
import { STATES } from "./states.js";

const WORDS = /** @type {const} */ ([
  "due",
  "price",
  "asked",
  "length",
  "ease",
  "colours",
  "allergy",
]);

/** @param {any} raw @returns {Wearer} @throws {TypeError} where it is not one */
export function wearerOf(raw) {
  if (typeof raw?.id !== "string" || typeof raw.label !== "string")
    throw new TypeError("no wearer");
  const words = WORDS.map((name) => [name, raw[name] ?? ""]);
  if (words.some(([, word]) => typeof word !== "string")) throw new TypeError("no words");
  const { id, label } = raw;
  const state = STATES.find(({ name }) => name === raw.state)?.name ?? "to measure";
  const made = Number.isFinite(raw.made) ? raw.made : 0;
  return { ...Object.fromEntries(words), id, label, state, made };
}

/** @param {any} raw @returns {Visit} @throws {TypeError} where it is not one */
export function visitOf(raw) {
  const { wearer, number, at, values } = raw ?? {};
  if (typeof wearer !== "string" || !Number.isInteger(number)) throw new TypeError("no visit");
  if (typeof values !== "object" || !values) throw new TypeError("no values");
  for (const [name, value] of Object.entries(values)) {
    // A name becomes a path in the request; no path may lead behind an object.
    if (!/^[a-z]\w*(\.\w+)*$/.test(name) || /__proto__|constructor|prototype/.test(name)) {
      throw new TypeError("no field");
    }
    if (typeof value !== "string") throw new TypeError("no text");
  }
  const before = ["state", "due", "price"].filter((name) => typeof raw[name] === "string");
  return {
    wearer,
    number,
    at: Number.isFinite(at) ? at : 0,
    values,
    ...Object.fromEntries(before.map((name) => [name, raw[name]])),
  };
}

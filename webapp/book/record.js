/**
 * What the phone has kept, made sure of before anything is done with it: an older version wrote less,
 * and a damaged entry must not take the others with it.
 * @import {Gone, Plan, Visit, Wearer} from "./types"
 */
import { countedOf, firstSockOf } from "../page/counted_of.js";
import { valuesOf } from "../page/values_of.js";
import { datesOf } from "../storage/dated.js";
import { STATES } from "./states.js";

const WORDS = /** @type {const} */ ([
  "due",
  "price",
  "asked",
  "length",
  "ease",
  "colours",
  "allergy",
  "contact",
  "deposit",
  "pairs",
]);

const ID = /^[\w-]{1,64}$/;

/** @param {any} raw @returns {Wearer} @throws {TypeError} where it is not one */
export function wearerOf(raw) {
  if (typeof raw?.id !== "string" || !ID.test(raw.id) || typeof raw.label !== "string")
    throw new TypeError("no wearer");
  const words = WORDS.map((name) => [name, raw[name] ?? ""]);
  if (words.some(([, word]) => typeof word !== "string")) throw new TypeError("no words");
  const { id, label } = raw;
  const state = STATES.find(({ name }) => name === raw.state)?.name ?? "to measure";
  const made = Number.isFinite(raw.made) ? raw.made : 0;
  return { ...Object.fromEntries(words), id, label, state, made, ...dates(raw) };
}

/** @param {any} raw @returns {Visit} @throws {TypeError} where it is not one */
export function visitOf(raw) {
  const { wearer, number, at } = raw ?? {};
  const numbered = Number.isInteger(number) && number > 0;
  if (typeof wearer !== "string" || !numbered) throw new TypeError("no visit");
  const before = ["state", "due", "price"].filter((name) => typeof raw[name] === "string");
  return {
    wearer,
    number,
    at: Number.isFinite(at) ? at : 0,
    values: valuesOf(raw.values),
    ...dates(raw),
    ...(raw.plans ? { plans: /** @type {any[]} */ (raw.plans).map(planOf) } : {}),
    ...Object.fromEntries(before.map((name) => [name, raw[name]])),
  };
}

/** @param {any} raw @returns {Gone} @throws {TypeError} where it is not one */
export function goneOf(raw) {
  const { id, at } = raw ?? {};
  if (typeof id !== "string" || !ID.test(id) || !Number.isInteger(at)) throw new TypeError("no id");
  return { id, at };
}

/** @param {any} raw @returns {Plan} @throws {TypeError} */
function planOf(raw) {
  const { at, values, counted, two, measured, knitted } = raw ?? {};
  if (knitted && typeof knitted !== "string") throw new TypeError("no plan");
  return {
    at: Number.isFinite(at) ? at : 0,
    values: valuesOf(values),
    counted: countedOf(counted),
    ...(two ? { two: countedOf(two) } : {}),
    ...(measured ? { measured: firstSockOf(measured) } : {}),
    ...(knitted ? { knitted } : {}),
  };
}

/** When its fields were changed, where that is known. @param {any} raw @returns {{ changed?: import("../storage/dated.js").Dates }} */
function dates({ changed }) {
  return changed === undefined ? {} : { changed: datesOf(changed) };
}

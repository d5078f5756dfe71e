/**
 * In which order the book lists its wearers, and which of them a search finds.
 * @import {Wearer} from "./types"
 */
import * as say from "words/book";
import { wrongDay } from "./days.js";
import { stateWords } from "./states.js";

/** @typedef {"due" | "newest" | "label"} Order */
export const ORDERS = /** @type {[Order, string][]} */ ([
  ["due", say.byDue],
  ["newest", say.byNewest],
  ["label", say.byLabel],
]);

/** Without accents and capitals. */
const fold = once((text) => {
  const plain = /^[ -~]*$/.test(text) ? text : text.normalize("NFKD").replace(/\p{M}/gu, "");
  return plain.toLowerCase();
});
/** The same with 9 before 10. */
const counted = once((text) => fold(text).replace(/\d+/g, (digits) => digits.padStart(8, "0")));

/** Two thousand labels are worked out once, not at every key. @param {(text: string) => string} work */
function once(work) {
  /** @type {Map<string, string>} */
  const known = new Map();
  return (/** @type {string} */ text) => {
    const done = known.get(text) ?? work(text);
    known.set(text, done);
    return done;
  };
}

/** What is promised soonest stands first, before it a day to correct, what has no day after it, what is handed over last. @param {Wearer} one */
function byDue(one) {
  return one.state === "handed over" ? "~~" : wrongDay(one.due) ? "" : one.due || "~";
}

/** @param {Wearer[]} wearers @param {Order} order */
export function sorted(wearers, order) {
  const key = order === "label" ? counted : null;
  const keyed = wearers.map(
    (one) => /** @type {const} */ ([key ? key(one.label) : order === "due" ? byDue(one) : "", one]),
  );
  keyed.sort(([a, one], [b, other]) => (a < b ? -1 : a > b ? 1 : other.made - one.made));
  return keyed.map(([, one]) => one);
}

/** Those in whose label or wishes every word of the search stands. @param {Wearer[]} wearers @param {string} search */
export function found(wearers, search) {
  const words = fold(search).split(/\s+/).filter(Boolean);
  if (!words.length) return wearers;
  return wearers.filter(({ label, contact, colours, allergy, length, state }) => {
    const texts = [label, contact, colours, allergy, length, stateWords(state)].map(fold);
    return words.every((word) => texts.some((text) => text.includes(word)));
  });
}

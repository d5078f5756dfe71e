/**
 * The whole book as one file, and back. A file is read whole or not at all; whatever is wrong with it
 * is told in one sentence.
 * @import {Deleted} from "./types"
 */
import { visitOf, wearerOf } from "./record.js";

const VERSION = 1;
const MOST = 20_000_000; // characters; two thousand wearers take about two million
const ID = /^[\w-]{1,64}$/;
const DAY = /^(\d{4}-\d\d-\d\d)?$/;
const ANEW = "Nothing was taken in. Save the book anew on the other phone, and pick that file.";
const NO_COPY =
  "This is not a copy of the book. Pick a file that “Save all to a file” made; its name begins with heelwise-wearers.";

/** Why a file cannot be taken in: a sentence to show as it stands. */
export class Unreadable extends Error {}

/** @param {Deleted[]} book every wearer with all visits */
export function copyOf(book) {
  return JSON.stringify({ heelwise: "wearers", version: VERSION, book });
}

/** @param {string} text @returns {Deleted[]} @throws {Unreadable} */
export function readCopy(text) {
  if (text.length > MOST) throw new Unreadable(`This file is larger than any book. ${NO_COPY}`);
  const { heelwise, version, book } = parsed(text);
  if (heelwise !== "wearers" || !Number.isInteger(version)) throw new Unreadable(NO_COPY);
  if (version > VERSION) {
    throw new Unreadable(
      "This copy was made by a newer version of this page. Load the page again where there is a network, then pick the file once more.",
    );
  }
  if (!Array.isArray(book)) throw new Unreadable(`This copy holds no list of wearers. ${ANEW}`);
  const seen = new Set();
  return book.map((raw, at) => {
    const one = entry(raw, at + 1);
    if (seen.has(one.wearer.id)) {
      throw new Unreadable(`This copy holds one wearer twice, as number ${at + 1}. ${ANEW}`);
    }
    seen.add(one.wearer.id);
    return one;
  });
}

/** @param {string} text @returns {any} */
function parsed(text) {
  try {
    return JSON.parse(text) ?? {};
  } catch {
    throw new Unreadable(NO_COPY);
  }
}

/** @param {any} raw @param {number} number @returns {Deleted} */
function entry(raw, number) {
  try {
    const wearer = wearerOf(raw?.wearer);
    const visits = /** @type {any[]} */ (raw.visits).map(visitOf);
    const numbers = new Set(visits.map((one) => one.number));
    const whole =
      ID.test(wearer.id) &&
      DAY.test(wearer.due) &&
      wearer.label.trim() !== "" &&
      numbers.size === visits.length &&
      visits.every((one) => one.wearer === wearer.id && one.number > 0);
    if (!whole) throw new TypeError("not whole");
    return { wearer, visits: visits.sort((one, other) => one.number - other.number) };
  } catch {
    throw new Unreadable(`Wearer number ${number} of this copy cannot be read. ${ANEW}`);
  }
}

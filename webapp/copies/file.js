/**
 * All that the phone keeps as one file, and back. A file is read whole or not at all; whatever is wrong
 * with it is told in one sentence. Version 1 held the wearers alone.
 * @import {Deleted} from "../book/types"
 * @import {Kept} from "../machine/types"
 * @import {Copy, SheetName, Sheets} from "./types"
 */
import { visitOf, wearerOf } from "../book/record.js";
import { happeningOf, sessionOf } from "../machine/record.js";
import { choicesOf } from "../machine/settings.js";
import { valuesOf, withUnits } from "../page/values_of.js";

const VERSION = 2;
const MOST = 64_000_000; // bytes; a pair with all its counts takes about 150 000, a wearer 1000
const DEEPEST = 12; // objects within objects; the deepest that is kept has 8
const BEHIND_OBJECTS = ["__proto__", "constructor", "prototype"];
const ID = /^[\w-]{1,64}$/;
const DAY = /^(\d{4}-\d\d-\d\d)?$/;
const ANEW = "Nothing was taken in. Save all anew on the other phone, and pick that file.";
const NO_COPY =
  "This is not a copy of what the page keeps. Pick a file that “Save all to a file” made; its name begins with heelwise-.";

const BEGINNING = '{"heelwise":"wearers"';

/** @type {Record<SheetName, string>} */
export const SHEETS = {
  mine: "Your own page",
  before: "What stood on your own page before",
  shelf: "Your cylinders and yarns",
  chart: "What was typed for the table over sizes",
};

/** Why a file cannot be taken in: a sentence to show as it stands. */
export class Unreadable extends Error {}

/** @param {Copy} copy */
export function copyOf(copy) {
  return JSON.stringify({ heelwise: "wearers", version: VERSION, ...copy });
}

/** @param {Blob} file @returns {Promise<Copy>} @throws {Unreadable} */
export async function readCopy(file) {
  if (file.size > MOST) throw new Unreadable(`This file is larger than any copy. ${NO_COPY}`);
  const { heelwise, version, ...held } = parsed(await file.text());
  if (heelwise !== "wearers" || !Number.isInteger(version)) throw new Unreadable(NO_COPY);
  if (version > VERSION) {
    throw new Unreadable(
      "This copy was made by a newer version of this page. Load the page again where there is a network, then pick the file once more.",
    );
  }
  const { book, sheets, pairs, settings } =
    version === 1 ? { book: held.book, sheets: {}, pairs: [], settings: null } : held;
  return {
    book: list(book, wearer, { all: "wearers", one: "wearer", title: "Wearer" }),
    sheets: sheetsOf(sheets),
    pairs: list(pairs, pair, { all: "pairs", one: "pair", title: "Pair at the machine" }),
    settings: settings === null ? null : told("The settings", () => choicesOf(sound(settings))),
  };
}

/** @param {string} text @returns {any} */
function parsed(text) {
  try {
    return JSON.parse(text) ?? {};
  } catch {
    throw new Unreadable(
      text.startsWith(BEGINNING) ? `This copy was cut short on its way. ${ANEW}` : NO_COPY,
    );
  }
}

/**
 * Each of them read, and none twice.
 * @template T @param {any} raw @param {(raw: any) => { id: string, whole: T }} reader
 * @param {{ all: string, one: string, title: string }} words @returns {T[]}
 */
function list(raw, reader, { all, one, title }) {
  if (!Array.isArray(raw)) throw new Unreadable(`This copy holds no list of ${all}. ${ANEW}`);
  const seen = new Set();
  return raw.map((each, at) => {
    const { id, whole } = told(`${title} number ${at + 1}`, () => reader(sound(each)));
    if (seen.has(id)) {
      throw new Unreadable(`This copy holds one ${one} twice, as number ${at + 1}. ${ANEW}`);
    }
    seen.add(id);
    return whole;
  });
}

/** @template T @param {string} title @param {() => T} read @returns {T} */
function told(title, read) {
  try {
    return read();
  } catch {
    throw new Unreadable(`${title} of this copy cannot be read. ${ANEW}`);
  }
}

/** Nothing in it leads behind an object, or is endless. @param {any} raw @param {number} [deep] */
function sound(raw, deep = 0) {
  if (typeof raw === "number" && !Number.isFinite(raw)) throw new TypeError("no number");
  if (typeof raw !== "object" || !raw) return raw;
  if (deep > DEEPEST) throw new TypeError("too deep");
  for (const [name, inside] of Object.entries(raw)) {
    if (BEHIND_OBJECTS.includes(name)) throw new TypeError("no name");
    sound(inside, deep + 1);
  }
  return raw;
}

/** @param {any} raw @returns {{ id: string, whole: Deleted }} */
function wearer(raw) {
  const one = wearerOf(raw.wearer);
  const visits = /** @type {any[]} */ (raw.visits).map(visitOf);
  const numbers = new Set(visits.map(({ number }) => number));
  const { id, due, label } = one;
  const whole =
    ID.test(id) &&
    DAY.test(due) &&
    label.trim() !== "" &&
    numbers.size === visits.length &&
    visits.every(({ wearer: whose, number }) => whose === id && number > 0);
  if (!whole) throw new TypeError("not whole");
  return { id, whole: { wearer: one, visits: visits.sort((a, b) => a.number - b.number) } };
}

/** @param {any} raw @returns {{ id: string, whole: Kept }} */
function pair(raw) {
  const session = sessionOf(raw.session);
  const happenings = /** @type {any[]} */ (raw.happenings).map(happeningOf);
  happenings.sort((one, other) => one.number - other.number);
  const { id } = session;
  const whole =
    ID.test(id) && happenings.every((one, at) => one.session === id && one.number === at + 1);
  if (!whole) throw new TypeError("not whole");
  return { id, whole: { session, happenings } };
}

/** @param {any} raw @returns {Sheets} */
function sheetsOf(raw) {
  if (typeof raw !== "object" || !raw) {
    throw new Unreadable(`This copy holds no page of your own. ${ANEW}`);
  }
  const names = /** @type {SheetName[]} */ (Object.keys(SHEETS));
  const read = names.map((name) => [
    name,
    told(SHEETS[name], () => (raw[name] ? valuesOf(raw[name]) : null)),
  ]);
  const { shelf, chart, ...own } = Object.fromEntries(read);
  const units = own.mine?.units;
  return { ...own, shelf: withUnits(shelf, units), chart: withUnits(chart, units) };
}

/**
 * A copy of all that the phone keeps, written and read back before anybody is told that it is saved.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 * @import {Copy, SheetName} from "./types"
 */
import * as say from "words/copies";
import { short } from "../page/short.js";
import { canonical } from "./canonical.js";
import { copyOf, readCopy } from "./file.js";
import { Unreadable } from "./unreadable.js";
import { visitsOf } from "./visits.js";
import { counted, inside, listed, SETTINGS, SHEETS } from "./words.js";

const DATED = /** @type {const} */ (["mine", "shelf", "chart", "sets"]);

/** Why no copy can be made just now: a sentence to show as it stands. */
export class NotNow extends Error {}

/**
 * @typedef {object} Written
 * @property {string} text of the file
 * @property {string} holds what is in it, in words
 * @property {string} lacks what is not in it, in sentences; "" where that is nothing
 * @property {boolean} whole whether all that the phone can hand out is in it
 */

/** @param {{ host: Host, wearers: Wearers }} here @returns {Promise<Written>} @throws {NotNow} */
export async function written({ host, wearers }) {
  const { all } = wearers;
  const ids = all.map(({ id }) => id);
  const visits = await visitsOf(wearers, ids);
  if (!visits) {
    throw new NotNow(say.visitsSilent);
  }
  const book = all.map((wearer) => ({ wearer, visits: visits.get(wearer.id) ?? [] }));
  const machine = await host.knitting().catch(() => {
    throw new NotNow(say.countsNotLoaded);
  });
  const { pairs, ended, settings, whole, aside, gone } = await machine.copy();
  const dates = Object.fromEntries(DATED.map((name) => [name, host.sheets.dated(name).changed]));
  const deleted = { wearers: await wearers.gone(), pairs: gone };
  const copy = { book, sheets: host.sheets.copy(), dates, pairs, ended, settings, gone: deleted };
  const text = copyOf(copy);
  const lost = await notReadBack(copy, text);
  const lacks = [
    ...lost,
    whole ? "" : say.pairsMissing,
    wearers.aside.length + aside ? say.asideLeftOut : "",
  ].filter(Boolean);
  const both = pairs.length + ended.length;
  const holds = listed([
    counted("wearer", book.length),
    ...(both ? [counted("pair", both)] : []),
    say.allYouTyped,
  ]);
  return { text, holds, lacks: lacks.join(" "), whole: whole && !lost.length };
}

/** What a fresh phone would not read from it as it is here. @param {Copy} copy @param {string} text @returns {Promise<string[]>} */
async function notReadBack(copy, text) {
  const named = await readCopy(new Blob([text])).then(
    ({ copy: read }) => differing(copy, read),
    (error) => {
      if (!(error instanceof Unreadable)) throw error;
      return [say.allOfIt];
    },
  );
  return named.length ? [say.notAsHere({ things: listed(named) })] : [];
}

/** @param {Copy} copy @param {Copy} read @returns {string[]} what differs, by name */
function differing(copy, read) {
  const [wearers, pairs, ended] = [new Map(), new Map(), new Map()];
  for (const one of read.book) wearers.set(one.wearer.id, canonical(one));
  for (const one of read.pairs) pairs.set(one.session.id, canonical(one));
  for (const one of read.ended) ended.set(one.id, canonical(one));
  const names = /** @type {SheetName[]} */ (Object.keys(SHEETS));
  return [
    ...copy.book
      .filter((one) => wearers.get(one.wearer.id) !== canonical(one))
      .map(({ wearer }) => say.quoted({ label: short(wearer.label) })),
    ...copy.pairs
      .filter((one) => pairs.get(one.session.id) !== canonical(one))
      .map(({ session }) => say.thePair({ label: short(session.label) })),
    ...copy.ended
      .filter((one) => ended.get(one.id) !== canonical(one))
      .map(({ label }) => say.thePair({ label: short(label) })),
    ...names
      .filter((name) => canonical(read.sheets[name]) !== canonical(copy.sheets[name]))
      .map((name) => inside(SHEETS[name])),
    ...(canonical([read.dates, read.gone]) === canonical([copy.dates, copy.gone])
      ? []
      : [say.datesAndDeleted]),
    ...(canonical(read.settings) === canonical(copy.settings) ? [] : [inside(SETTINGS)]),
  ];
}

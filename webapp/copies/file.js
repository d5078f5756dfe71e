/**
 * All that the phone keeps as one file, and back. Each record is read by the reader that reads it from the
 * phone, so that nothing the phone holds is refused by its own file. One that cannot be read keeps no other
 * out: it is named and stays in the file.
 *
 * Version 1 held the wearers alone; 2 the sheets, pairs and settings too; 3 has the dates of what was typed,
 * names what was deleted, says how many wearers and pairs there are, and each record has a checksum.
 * @import {Copy, Read} from "./types"
 */
import * as say from "words/copies";
import { checksum } from "./checksum.js";
import { opened } from "./lock.js";
import { Reading } from "./reading.js";
import { salvaged } from "./salvage.js";
import { Unreadable } from "./unreadable.js";

const VERSION = 3;
const MOST = 64_000_000; // bytes of a file that does not begin as a copy does, and may still be one
const BEGINNING = /^\s*\{\s*"heelwise"\s*:\s*"(wearers|locked)"/;
const STATED = /"version"\s*:\s*(-?\d+)/;

/** @param {Copy} copy @returns {string} */
export function copyOf({ book, sheets, dates, pairs, ended, settings, gone }) {
  const summed = (/** @type {object} */ one) => ({ ...one, sum: checksum(one) });
  const parts = Object.entries({ ...sheets, dates, settings, gone });
  return JSON.stringify({
    heelwise: "wearers",
    version: VERSION,
    holds: { book: book.length, pairs: pairs.length, ended: ended.length },
    sums: Object.fromEntries(parts.map(([name, value]) => [name, checksum(value)])),
    settings,
    sheets,
    dates,
    gone,
    book: book.map(summed),
    pairs: pairs.map(summed),
    ended: ended.map((one) => summed({ ended: one })),
  });
}

/**
 * @param {Blob} file @param {string} [passphrase] of a locked one @returns {Promise<Read>}
 * @throws {Unreadable} where nothing of it can be read
 * @throws {import("./lock.js").Locked} where it is locked and there is no passphrase
 */
export async function readCopy(file, passphrase) {
  const begun = BEGINNING.exec(await file.slice(0, 100).text())?.[1];
  if (!begun && file.size > MOST) throw new Unreadable(say.noCopy);
  const text = await file.text();
  const whole = parsed(text);
  const kind = whole ? whole.heelwise : begun;
  if (kind === "locked") return textRead(await opened(whole, passphrase));
  if (kind !== "wearers") throw new Unreadable(say.noCopy);
  return textRead(text, whole);
}

/** @param {string} text @returns {Read} */
function textRead(text, whole = parsed(text)) {
  const version = whole ? whole.version : Number(STATED.exec(text)?.[1] ?? VERSION);
  known(version);
  const { book, pairs, sheets } = whole ?? {};
  const good = Array.isArray(book) && (version === 1 || (Array.isArray(pairs) && isObject(sheets)));
  return new Reading(version).read(good ? whole : { ...salvaged(text), ...holdsOf(whole) }, good);
}

/** @param {string} text @returns {any} */
function parsed(text) {
  try {
    return Object(JSON.parse(text));
  } catch {
    return null;
  }
}

/** @param {unknown} value */
function isObject(value) {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** @param {unknown} version @throws {Unreadable} */
function known(version) {
  if (!Number.isInteger(version) || Number(version) < 1) {
    throw new Unreadable(
      typeof version === "number" ? say.copyOddVersion({ version }) : say.copyNoVersion,
    );
  }
  if (Number(version) > VERSION) throw new Unreadable(say.copyNewer);
}

/** What a file says to hold, where that could be read with the whole. @param {any} whole */
function holdsOf(whole) {
  return whole?.holds ? { holds: whole.holds } : {};
}

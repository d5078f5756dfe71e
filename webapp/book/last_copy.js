/** When the last copy was saved to a file, and whether it is time for another. Kept on the phone. */
import * as say from "words/book";
import { counted, listed } from "../copies/words.js";
import { copied, uncopied } from "../storage/uncopied.js";
import { dayOf, today } from "./days.js";

const SAVED = "heelwise.copied";
const PUT_OFF = "heelwise.copy_put_off";
const DAY = 24 * 60 * 60 * 1000; // ms
const MANY = 10; // wearers and pairs: a good part of a day at a fair

const KINDS = /** @type {const} */ (["wearer", "pair"]);

/** What there is one of, in the order in which it is told. */
const NAMED = Object.entries({
  mine: say.yourPage,
  shelf: say.yourShelf,
  chart: say.sizeTable,
});

/** In words. */
export function lastCopy() {
  const at = saved();
  return at ? say.lastCopy({ day: dayOf(at) }) : say.noCopy;
}

/** One was saved just now. */
export function remember() {
  keep(SAVED, String(Date.now()));
  copied();
}

/** Not today. */
export function putOff() {
  keep(PUT_OFF, today());
}

/**
 * What would be lost with the phone, in words; "" where that is little, or she has put it off.
 * @param {{ id: string, made: number }[]} [wearers] the book, where it is open
 */
export function missing(wearers = []) {
  if (read(PUT_OFF) === today()) return "";
  const at = saved();
  const fresh = wearers.filter(({ made }) => made > at);
  const noted = {
    ...Object.fromEntries(fresh.map(({ id, made }) => [`wearer ${id}`, made])),
    ...uncopied(),
  };
  const names = Object.keys(noted);
  const of = (/** @type {string} */ kind) =>
    names.filter((name) => name.startsWith(`${kind} `)).length;
  const waiting = Object.values(noted).some((since) => Date.now() - since > DAY);
  if (waiting || of("wearer") + of("pair") >= MANY) {
    const parts = [
      ...KINDS.filter(of).map((kind) => counted(kind, of(kind))),
      ...NAMED.filter(([kind]) => of(kind)).map(([, words]) => words),
    ];
    return say.notInACopy({ things: listed(parts) });
  }
  const old = at && Date.now() - at > 7 * DAY && wearers.length;
  return old ? say.copyOld : "";
}

function saved() {
  return Number(read(SAVED)) || 0;
}

/** @param {string} key */
function read(key) {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** @param {string} key @param {string} text */
function keep(key, text) {
  try {
    localStorage.setItem(key, text);
  } catch {
    // It is then not known next time.
  }
}

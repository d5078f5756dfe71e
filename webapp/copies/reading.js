/**
 * The records of a file, one by one, each by the reader that reads it from the phone.
 * @import {Deleted, Gone, Visit} from "../book/types"
 * @import {Happening, Kept} from "../machine/types"
 * @import {Copy, Read, SheetName, Unread} from "./types"
 */
import * as say from "words/copies";
import { goneOf, visitOf, wearerOf } from "../book/record.js";
import { endedOf, happeningOf, lost, sessionOf } from "../machine/record.js";
import { choicesOf } from "../machine/settings.js";
import { short } from "../page/short.js";
import { valuesOf, withUnits } from "../page/values_of.js";
import { datesOf } from "../storage/dated.js";
import { checksum } from "./checksum.js";
import { sound } from "./sound.js";
import { SETTINGS, SHEETS } from "./words.js";

/** @type {Copy["gone"]} */
const NONE_GONE = { wearers: [], pairs: [] };

/** What is read with it, and what could not be. */
export class Reading {
  /** @type {Unread[]} */
  #unread = [];
  /** What reads well and is not as it was saved. @type {unknown[]} */
  #altered = [];

  /** @param {number} version */
  constructor(version) {
    this.version = version;
  }

  /** @param {any} held @param {boolean} good whether the text as a whole could be read @returns {Read} */
  read(held, good) {
    const { book, pairs = [], ended = [], sheets = {}, settings = null, sums = {} } = held;
    const { dates = null, gone = null } = held;
    const holds = held.holds ?? {};
    const copy = {
      book: this.#list(book, "wearer", (raw) => this.#wearer(raw)),
      pairs: this.#list(pairs, "pair", (raw) => this.#pair(raw)),
      ended: this.#list(listOr(ended), "ended", (raw) => {
        const whole = endedOf(raw.ended);
        return { id: whole.id, whole };
      }),
      sheets: this.#sheets(sheets, sums),
      dates: this.#part(say.sheetDates, dates, sums?.dates, datesOfSheets) ?? {},
      settings: this.#part(SETTINGS, settings, sums?.settings, (raw) => choicesOf(raw)),
      gone: this.#part(say.whatWasDeleted, gone, sums?.gone, (raw) => this.#gone(raw)) ?? NONE_GONE,
    };
    const lacking = /** @type {const} */ ([
      ["wearer", Number(holds?.book) - book.length],
      ["pair", Number(holds?.pairs) - pairs.length],
      ["pair", Number(holds?.ended) - listOr(ended).length],
    ]).flatMap(([kind, many]) =>
      Array.from({ length: Math.max(0, Math.min(many, 1e6)) || 0 }, () => kind),
    );
    const [unread, altered] = [this.#unread, new Set(this.#altered)];
    const damaged = !good || unread.length + altered.size + lacking.length > 0;
    return { copy, unread, altered, lacking, damaged, dated: this.version > 2 };
  }

  /** @param {any} raw @returns {Copy["gone"]} */
  #gone(raw) {
    /** @param {unknown} list */
    const of = (list) => {
      /** @type {Gone[]} */
      const found = [];
      for (const [at, each] of listOf(list).entries()) {
        this.#try(say.deletedNumber({ number: at + 1 }), each, () => found.push(goneOf(each)));
      }
      return found;
    };
    return { wearers: of(raw.wearers), pairs: of(raw.pairs) };
  }

  /**
   * Each of them that can be read, and none twice.
   * @template W
   * @param {unknown[]} raw @param {"wearer" | "pair" | "ended"} kind @param {(raw: any) => { id: string, whole: W }} reader @returns {W[]}
   */
  #list(raw, kind, reader) {
    /** @type {Map<string, W>} */
    const found = new Map();
    for (const [at, each] of raw.entries()) {
      this.#try(say.numbered({ kind, number: at + 1 }), each, () => {
        const { id, whole } = reader(sound(each));
        if (found.has(id)) throw new TypeError("twice");
        found.set(id, whole);
        const { sum, ...rest } = /** @type {any} */ (each);
        if (this.version > 2 && sum !== checksum(rest)) this.#altered.push(whole);
      });
    }
    return [...found.values()];
  }

  /** @param {string} title @param {any} raw @param {() => void} read */
  #try(title, raw, read) {
    try {
      read();
    } catch (error) {
      if (!(error instanceof TypeError)) throw error;
      const called = raw?.wearer?.label ?? raw?.session?.label ?? raw?.ended?.label;
      const name =
        typeof called === "string" && called.trim()
          ? say.called({ what: title, label: short(called) })
          : title;
      this.#unread.push({ title: name, text: typeof raw === "string" ? raw : JSON.stringify(raw) });
    }
  }

  /** @param {any} raw @returns {{ id: string, whole: Deleted }} */
  #wearer(raw) {
    const wearer = wearerOf(raw.wearer);
    const { id, label } = wearer;
    /** @type {Map<number, Visit>} */
    const visits = new Map();
    for (const [at, each] of listOf(raw.visits).entries()) {
      this.#try(say.visitOf({ number: at + 1, label: short(label) }), each, () => {
        const visit = visitOf(each);
        if (visit.wearer !== id || visits.has(visit.number)) throw new TypeError("not theirs");
        visits.set(visit.number, visit);
      });
    }
    const all = [...visits.values()].sort((one, other) => one.number - other.number);
    return { id, whole: { wearer, visits: all } };
  }

  /** @param {any} raw @returns {{ id: string, whole: Kept }} */
  #pair(raw) {
    const session = sessionOf(raw.session);
    const { id } = session;
    /** @type {Map<number, Happening>} */
    const known = new Map();
    for (const [at, each] of listOf(raw.happenings).entries()) {
      this.#try(say.countOf({ number: at + 1, label: short(session.label) }), each, () => {
        const one = happeningOf(each);
        if (one.session !== id || known.has(one.number)) throw new TypeError("not of it");
        known.set(one.number, one);
      });
    }
    const last = Math.max(0, ...known.keys());
    const happenings = Array.from(
      { length: last },
      (_, at) => known.get(at + 1) ?? lost(id, at + 1),
    );
    return { id, whole: { session, happenings } };
  }

  /** @param {any} raw @param {any} sums @returns {Copy["sheets"]} */
  #sheets(raw, sums) {
    const names = /** @type {SheetName[]} */ (Object.keys(SHEETS));
    const read = names.map((name) => [
      name,
      this.#part(SHEETS[name], raw?.[name] ?? null, sums?.[name], valuesOf),
    ]);
    const { shelf, chart, ...own } = Object.fromEntries(read);
    const units = this.version < 3 ? own.mine?.units : undefined;
    return { ...own, shelf: withUnits(shelf, units), chart: withUnits(chart, units) };
  }

  /** @template T @param {string} title @param {unknown} raw @param {unknown} sum @param {(raw: any) => T} reader @returns {T | null} */
  #part(title, raw, sum, reader) {
    if (raw === null) return null;
    /** @type {T | null} */
    let found = null;
    this.#try(title, raw, () => {
      found = reader(sound(raw));
      if (this.version > 2 && sum !== checksum(raw)) this.#altered.push(found);
    });
    return found;
  }
}

/** Of a file that lacks it, none: that is told by what the file says to hold. @param {unknown} raw @returns {unknown[]} */
function listOr(raw) {
  return Array.isArray(raw) ? raw : [];
}

/** @param {any} raw @returns {Copy["dates"]} */
function datesOfSheets(raw) {
  const names = /** @type {SheetName[]} */ (Object.keys(SHEETS)).filter((name) => raw[name]);
  return Object.fromEntries(names.map((name) => [name, datesOf(raw[name])]));
}

/** @param {unknown} raw @returns {unknown[]} */
function listOf(raw) {
  if (!Array.isArray(raw)) throw new TypeError("no list");
  return raw;
}

/**
 * The phone's database of sessions and what happened in them.
 * @import {DBSchema} from "idb"
 * @import {Aside, Happening, Kept, Session} from "./types"
 */
import { Database } from "../storage/database.js";
import { happeningOf, lost, MOST, sessionOf } from "./record.js";

const NAME = "heelwise.machine";

/**
 * @typedef {object} Stores
 * @property {{ key: string, value: Session }} sessions
 * @property {{ key: [string, number], value: Happening }} happenings
 * @typedef {DBSchema & Stores} Schema
 */

/** @type {import("../storage/database.js").Upgrade<Schema>[]} */
const UPGRADES = [
  (made) => {
    made.createObjectStore("sessions", { keyPath: "id" });
    made.createObjectStore("happenings", { keyPath: ["session", "number"] });
  },
];

/** Another tab has counted in between: read again, and count on from there. */
export class NumberTaken extends Error {
  name = "NumberTaken";
}

/** @extends {Database<Schema>} */
export class Disk extends Database {
  /** @type {Map<string, Aside>} what could not be read, so far */
  aside = new Map();

  constructor() {
    super(NAME, UPGRADES, { sessions: sessionOf, happenings: happeningOf });
  }

  /** Resolves once it is open. */
  ready() {
    return this.twice(async () => {});
  }

  /** @returns {Promise<Session[]>} */
  async sessions() {
    const all = await this.twice((database) => database.getAll("sessions"));
    const damaged = all.filter((one) => !readable(sessionOf, one));
    for (const session of damaged) {
      const happenings = await this.twice((database) =>
        database.getAll("happenings", from(session.id, 0)),
      );
      this.#setAside(session.id, { session, happenings });
    }
    return all.filter((one) => !damaged.includes(one));
  }

  /** @param {string} id @returns {Promise<{ session: Session | undefined, happenings: Happening[] }>} */
  read(id) {
    return this.twice(async (database) => {
      const reading = database.transaction(["sessions", "happenings"]);
      const [session, happenings] = await Promise.all([
        reading.objectStore("sessions").get(id),
        reading.objectStore("happenings").getAll(from(id, 0)),
        reading.done,
      ]);
      return { session: readable(sessionOf, session), happenings: this.#inARow(happenings) };
    });
  }

  /** Number by number from the first: each keeps its place, also beside one that cannot be read. @param {Happening[]} raw */
  #inARow(raw) {
    const known = new Map(raw.map((one) => [one.number, this.#happening(one)]));
    const last =
      raw.findLast(({ number }) => Number.isInteger(number) && number <= MOST)?.number ?? 0;
    const [{ session = "" } = {}] = raw;
    return Array.from({ length: last }, (_, at) => known.get(at + 1) ?? lost(session, at + 1));
  }

  /** @param {Happening} raw */
  #happening(raw) {
    const good = readable(happeningOf, raw);
    if (!good) this.#setAside([raw.session, raw.number], raw);
    return good ?? lost(raw.session, raw.number);
  }

  /** @param {Aside["key"]} key @param {unknown} raw */
  #setAside(key, raw) {
    this.aside.set(String(key), { key, text: JSON.stringify(raw) });
  }

  /** For good, unless it was written anew meanwhile; of a session, all that happened in it too. @param {Aside} one */
  async drop({ key }) {
    if (Array.isArray(key)) {
      const now = await this.twice((database) => database.get("happenings", key));
      if (!readable(happeningOf, now)) {
        await this.twice((database) => database.delete("happenings", key));
        await this.forget("happenings", key);
      }
    } else {
      const now = await this.twice((database) => database.get("sessions", key));
      if (!readable(sessionOf, now)) await this.remove([key]);
    }
    this.aside.delete(String(key));
  }

  /**
   * Resolves once all of it is on disk, with what was there already left as it is. Throws NumberTaken
   * where a number has happened otherwise; then nothing is written.
   * @param {Kept} kept
   * @param {object} options
   * @param {number} options.sure so many of the happenings are there, unless all was taken from us
   * @param {boolean} options.anew write the session itself too
   */
  write({ session, happenings }, { sure, anew }) {
    return this.twice(async (database) => {
      const writing = database.transaction(["sessions", "happenings"], "readwrite", {
        durability: "strict",
      });
      writing.done.catch(() => {}); // told by what is awaited below
      const store = writing.objectStore("happenings");
      let there = await store.getAll(from(session.id, sure));
      // The phone may have thrown all away without a word.
      if (sure && there[0]?.number !== sure) there = await store.getAll(from(session.id, 0));
      const first = there[0]?.number === sure ? sure : 0;
      const known = new Map(there.map((one) => [one.number, this.#happening(one)]));
      const missing = happenings.slice(first).filter((one) => !known.has(one.number));
      if (happenings.slice(first).some((one) => !same(known.get(one.number) ?? one, one))) {
        writing.abort();
        throw new NumberTaken();
      }
      await Promise.all([
        anew || !first ? writing.objectStore("sessions").put(session) : undefined,
        ...missing.map((one) => store.add(one)),
        writing.done,
      ]);
    }, taken);
  }

  /** @param {string[]} ids sessions, with all that happened in them */
  async remove(ids) {
    await this.twice(async (database) => {
      const removing = database.transaction(["sessions", "happenings"], "readwrite");
      await Promise.all([
        ...ids.map((id) => removing.objectStore("sessions").delete(id)),
        ...ids.map((id) => removing.objectStore("happenings").delete(from(id, 0))),
        removing.done,
      ]);
    });
    for (const id of ids) {
      await this.forget("sessions", id);
      await this.forget("happenings", [id, 0], [id, Number.POSITIVE_INFINITY]);
    }
  }
}

/** @template T @param {(raw: any) => T} reader @param {unknown} raw @returns {T | undefined} */
function readable(reader, raw) {
  try {
    return reader(raw);
  } catch {
    return undefined;
  }
}

/** @param {unknown} error */
function taken(error) {
  return error instanceof NumberTaken;
}

/** Of a session, what happened from a number on. @param {string} id @param {number} number */
function from(id, number) {
  return IDBKeyRange.bound([id, number], [id, Number.POSITIVE_INFINITY]);
}

/** @param {Happening} one @param {Happening} other */
export function same(one, other) {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

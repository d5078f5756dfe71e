/**
 * The phone's database of sessions and what happened in them, and of pairs that are knitted (`ended_pairs.js`).
 * @import {DBSchema} from "idb"
 * @import {Aside, Ended, Gone, Happening, Kept, Session} from "./types"
 */
import { adding, Database } from "../storage/database.js";
import { endedOf, goneOf, happeningOf, lost, MOST, sessionOf } from "./record.js";

const NAME = "heelwise.machine";
const READERS = { sessions: sessionOf, happenings: happeningOf, ended: endedOf, gone: goneOf };

/**
 * @typedef {object} Stores
 * @property {{ key: string, value: Session }} sessions
 * @property {{ key: [string, number], value: Happening }} happenings
 * @property {{ key: string, value: Ended, indexes: { began: number } }} ended
 * @property {{ key: string, value: Gone }} gone
 * @typedef {DBSchema & Stores} Schema
 */

/** @type {import("../storage/database.js").Upgrade<Schema>[]} */
const UPGRADES = [
  (made) => {
    made.createObjectStore("sessions", { keyPath: "id" });
    made.createObjectStore("happenings", { keyPath: ["session", "number"] });
  },
  // The pairs that are knitted are brought over one by one once it is open (main.js): all of them at once
  // would hold up the counter.
  adding((made) => {
    const ended = made.createObjectStore("ended", { keyPath: "id" });
    ended.createIndex("began", "began");
    made.createObjectStore("gone", { keyPath: "id" });
  }),
];

/** Another tab has counted in between: read again, and count on from there. */
export class NumberTaken extends Error {
  name = "NumberTaken";
}

/** Another tab has found the pair to be knitted, or deleted it. */
export class Over extends Error {
  name = "Over";
}

/** @extends {Database<Schema>} */
export class Disk extends Database {
  /** @type {Map<string, Aside>} what could not be read, so far */
  aside = new Map();

  constructor() {
    super(NAME, UPGRADES, READERS);
  }

  /** Resolves once it is open. */
  ready() {
    return this.twice(async () => {});
  }

  /** @returns {Promise<Session[]>} */
  async sessions() {
    const all = await this.twice((database) => database.getAll("sessions"));
    const damaged = all.filter((one) => !readable("sessions", one));
    for (const session of damaged) {
      const happenings = await this.twice((database) =>
        database.getAll("happenings", from(session.id, 0)),
      );
      this.setAside("sessions", session.id, { session, happenings });
    }
    return all.filter((one) => !damaged.includes(one));
  }

  /**
   * @param {string} id
   * @returns {Promise<{ session: Session | undefined, happenings: Happening[], over: boolean }>} `over`: it
   *   is no longer under way
   */
  read(id) {
    return this.twice(async (database) => {
      const reading = database.transaction(["sessions", "happenings", "ended", "gone"]);
      const [session, happenings, ended, gone] = await Promise.all([
        reading.objectStore("sessions").get(id),
        reading.objectStore("happenings").getAll(from(id, 0)),
        reading.objectStore("ended").getKey(id),
        reading.objectStore("gone").getKey(id),
        reading.done,
      ]);
      return {
        session: readable("sessions", session),
        happenings: this.#inARow(happenings),
        over: !session && Boolean(ended ?? gone),
      };
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
    const good = readable("happenings", raw);
    if (!good) this.setAside("happenings", [raw.session, raw.number], raw);
    return good ?? lost(raw.session, raw.number);
  }

  /** @param {Aside["store"]} store @param {IDBValidKey} key @param {unknown} raw */
  setAside(store, key, raw) {
    this.aside.set(name(store, key), { store, key, text: JSON.stringify(raw) });
  }

  /** For good, unless it was written anew meanwhile; of a session, all that happened in it too. @param {Aside} one */
  async drop({ store, key }) {
    const now = await this.twice((database) => database.get(store, /** @type {any} */ (key)));
    if (!readable(store, now)) {
      if (store === "sessions") await this.remove([String(key)]);
      else {
        await this.twice((database) => database.delete(store, /** @type {any} */ (key)));
        await this.forget(store, key);
      }
    }
    this.aside.delete(name(store, key));
  }

  /**
   * Resolves once all of it is on disk, with what was there already left as it is. Throws NumberTaken
   * where a number has happened otherwise, and Over where it is no longer under way; then nothing is
   * written.
   * @param {Kept} kept
   * @param {object} options
   * @param {number} options.sure so many of the happenings are there, unless all was taken from us
   * @param {boolean} options.anew write the session itself too
   */
  write({ session, happenings }, { sure, anew }) {
    return this.twice(async (database) => {
      const writing = database.transaction(
        ["sessions", "happenings", "ended", "gone"],
        "readwrite",
        { durability: "strict" },
      );
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
      if (!there.length) {
        const [ended, gone] = await Promise.all([
          writing.objectStore("ended").getKey(session.id),
          writing.objectStore("gone").getKey(session.id),
        ]);
        if (ended ?? gone) {
          writing.abort();
          throw new Over();
        }
      }
      await Promise.all([
        anew || !first ? writing.objectStore("sessions").put(session) : undefined,
        ...missing.map((one) => store.add(one)),
        writing.done,
      ]);
    }, final);
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
    for (const id of ids) await this.forgetAll(id);
  }

  /** What a step to another version laid aside of a session goes too. @param {string} id */
  async forgetAll(id) {
    await this.forget("sessions", id);
    await this.forget("happenings", [id, 0], [id, Number.POSITIVE_INFINITY]);
  }
}

/** @param {Aside["store"]} store @param {IDBValidKey} key */
function name(store, key) {
  return `${store} ${key}`;
}

/** @template {keyof typeof READERS} Name @param {Name} store @param {unknown} raw @returns {ReturnType<typeof READERS[Name]> | undefined} */
export function readable(store, raw) {
  try {
    return /** @type {any} */ (READERS[store](raw));
  } catch {
    return undefined;
  }
}

/** @param {unknown} error */
function final(error) {
  return error instanceof NumberTaken || error instanceof Over;
}

/** Of a session, what happened from a number on. @param {string} id @param {number} number */
export function from(id, number) {
  return IDBKeyRange.bound([id, number], [id, Number.POSITIVE_INFINITY]);
}

/** @param {Happening} one @param {Happening} other */
export function same(one, other) {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

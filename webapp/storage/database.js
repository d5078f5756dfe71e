/**
 * A database on the phone. Each call opens it where need be, and tries a second time where it was closed
 * or emptied under us. Whoever calls says how long to wait.
 *
 * Where an older version of the page kept it otherwise, what that one kept is laid aside in the database
 * itself before anything is changed, and let go only once all that was made of it reads well. Where the
 * change fails, all stays as the older version left it.
 * @import {IDBPDatabase, IDBPTransaction} from "idb"
 */
import { openDB } from "idb";

const BEFORE = "before"; // the store for what is laid aside, by [version, store, key]

/** What another version kept could not be taken over; it is as it was. */
export class NotTakenOver extends Error {
  name = "NotTakenOver";
}

/**
 * The way from one version to the next; it may wait for what it asks of the transaction, and for nothing
 * else. Records may become others or more, never fewer.
 * @template Schema
 * @typedef {((database: IDBPDatabase<Schema>, transaction: any) => void | Promise<void>) & { adds?: true }} Upgrade
 */

/**
 * A step that only makes room for more: as no record becomes another, none is laid aside.
 * @template Schema @param {Upgrade<Schema>} step @returns {Upgrade<Schema>}
 */
export function adding(step) {
  return Object.assign(step, { adds: /** @type {const} */ (true) });
}

/**
 * Fires "open" when it can be used, and "lost" when what was kept there may be gone.
 * @template Schema
 */
export class Database extends EventTarget {
  /** @type {IDBPDatabase<Schema> | undefined} */
  #database;
  /** @type {NotTakenOver | undefined} */
  #stuck;
  /** Whether a newer version of the page has it: that one is what to go to. */
  outdated = false;
  #name;
  #upgrades;
  #readers;

  /**
   * @param {string} name
   * @param {Upgrade<Schema>[]} upgrades a change of what is kept adds one, and those that stand there are
   *   never touched again, for some phone still has that version
   * @param {Record<string, (raw: any) => unknown>} readers of each store's records; they throw where one
   *   cannot be read
   */
  constructor(name, upgrades, readers) {
    super();
    this.#name = name;
    this.#upgrades = upgrades;
    this.#readers = readers;
  }

  /** What another version kept could not be taken over: nothing is read or written until the page is loaded again. */
  get stuck() {
    return Boolean(this.#stuck);
  }

  /**
   * @template T
   * @param {(database: IDBPDatabase<Schema>) => Promise<T>} work
   * @param {(error: unknown) => boolean} [final] an error that a second try cannot help
   * @returns {Promise<T>}
   */
  async twice(work, final = () => false) {
    try {
      return await work(await this.#open());
    } catch (error) {
      const full = error instanceof Error && error.name === "QuotaExceededError";
      if (full || this.#stuck || final(error)) throw error;
      this.#lose();
      return work(await this.#open());
    }
  }

  /**
   * What is deleted goes from what is laid aside, too.
   * @param {string} store @param {IDBValidKey} first @param {IDBValidKey} [last]
   */
  forget(store, first, last = first) {
    return this.twice(async (/** @type {IDBPDatabase<any>} */ database) => {
      if (!database.objectStoreNames.contains(BEFORE)) return;
      const versions = this.#upgrades.map((_, version) =>
        IDBKeyRange.bound([version, store, first], [version, store, last]),
      );
      await Promise.all(versions.map((range) => database.delete(BEFORE, range)));
    });
  }

  /** An opening that hangs is left to itself: the next call asks anew, and the first to come is used. */
  async #open() {
    if (this.#stuck) throw this.#stuck;
    if (this.#database) return this.#database;
    const lose = () => this.#lose();
    /** @type {unknown} */
    let failed;
    /** @type {Promise<IDBPDatabase<any>>} */
    const opening = openDB(this.#name, this.#upgrades.length, {
      upgrade: (made, from, _, transaction) => {
        transaction.done.catch(() => {}); // told by the opening
        this.#upgrade(made, from, transaction).catch((error) => {
          if (from) failed = error;
          try {
            transaction.abort();
          } catch {
            // It has ended by itself.
          }
        });
      },
      blocking: (_, next) => {
        // A newer version of the page waits in another tab; or all is being thrown away, and begins anew.
        if (next) this.#leave();
        lose();
      },
      terminated: lose,
    });
    const database = await opening.catch((error) => {
      if (error.name === "VersionError") this.#leave();
      if (failed) this.#stuck = new NotTakenOver(String(failed));
      throw this.#stuck ?? error;
    });
    if (this.#database) database.close();
    else {
      this.#database = database;
      this.dispatchEvent(new Event("open"));
      this.#prove(database).catch(() => {}); // what is laid aside stays, then
    }
    return this.#database ?? database;
  }

  /** @param {IDBPDatabase<any>} made @param {number} from @param {IDBPTransaction<any, any, "versionchange">} transaction */
  async #upgrade(made, from, transaction) {
    const steps = this.#upgrades.slice(from);
    const all = [...made.objectStoreNames].filter((name) => name !== BEFORE);
    const stores = steps.every(({ adds }) => adds) ? [] : all;
    const many = await Promise.all(stores.map((name) => layAside(made, from, transaction, name)));
    for (const step of steps) await step(made, transaction);
    for (const [at, name] of stores.entries()) {
      if (!made.objectStoreNames.contains(name)) continue; // moved to another
      const now = await transaction.objectStore(name).count();
      if (now < many[at]) throw new Error(`Of ${many[at]} ${name} there are ${now}.`);
    }
  }

  /** Once all of it reads well, what is laid aside may go. @param {IDBPDatabase<any>} database */
  async #prove(database) {
    const aside = database.objectStoreNames.contains(BEFORE) && (await database.count(BEFORE));
    if (!aside) return;
    for (const [name, reader] of Object.entries(this.#readers)) {
      for (const raw of await database.getAll(name)) reader(raw);
    }
    await database.clear(BEFORE);
  }

  #leave() {
    this.outdated = true;
    this.#stuck = new NotTakenOver("A newer version of the page has it.");
  }

  #lose() {
    if (!this.#database) return;
    this.#database.close();
    this.#database = undefined;
    this.dispatchEvent(new Event("lost"));
  }
}

/**
 * @param {IDBPDatabase<any>} made @param {number} from @param {IDBPTransaction<any, any, "versionchange">} transaction
 * @param {string} name of a store @returns {Promise<number>} how many there are
 */
async function layAside(made, from, transaction, name) {
  const before = made.objectStoreNames.contains(BEFORE)
    ? transaction.objectStore(BEFORE)
    : made.createObjectStore(BEFORE);
  const store = transaction.objectStore(name);
  const [keys, records] = await Promise.all([store.getAllKeys(), store.getAll()]);
  await Promise.all(keys.map((key, at) => before.put(records[at], [from, name, key])));
  return keys.length;
}

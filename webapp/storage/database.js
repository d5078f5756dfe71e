/**
 * A database on the phone. Each call opens it where need be, and tries a second time where it was closed
 * or emptied under us. Whoever calls says how long to wait.
 * @import {IDBPDatabase} from "idb"
 */
import { openDB } from "idb";

/**
 * Fires "open" when it can be used, and "lost" when what was kept there may be gone.
 * @template Schema
 */
export class Database extends EventTarget {
  /** @type {IDBPDatabase<Schema> | undefined} */
  #database;
  #name;
  #upgrades;

  /**
   * @param {string} name
   * @param {((database: IDBPDatabase<Schema>) => void)[]} upgrades the way from each version to the next;
   *   a change of what is kept adds one, and those that stand there are never touched again, for some
   *   phone still has that version
   */
  constructor(name, upgrades) {
    super();
    this.#name = name;
    this.#upgrades = upgrades;
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
      if (full || final(error)) throw error;
      this.#lose();
      return work(await this.#open());
    }
  }

  /** An opening that hangs is left to itself: the next call asks anew, and the first to come is used. */
  async #open() {
    if (this.#database) return this.#database;
    const lose = () => this.#lose();
    /** @type {Promise<IDBPDatabase<Schema>>} */
    const opening = openDB(this.#name, this.#upgrades.length, {
      upgrade: (made, from) => {
        for (const step of this.#upgrades.slice(from)) step(made);
      },
      blocking: lose, // a newer version of the page waits in another tab
      terminated: lose,
    });
    const database = await opening;
    if (this.#database) database.close();
    else {
      this.#database = database;
      this.dispatchEvent(new Event("open"));
    }
    return this.#database ?? database;
  }

  #lose() {
    if (!this.#database) return;
    this.#database.close();
    this.#database = undefined;
    this.dispatchEvent(new Event("lost"));
  }
}

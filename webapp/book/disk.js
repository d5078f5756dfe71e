/**
 * The phone's database of the book. Each call opens it where need be, and tries a second time where it
 * was closed or emptied under us. Whoever calls says how long to wait.
 * @import {IDBPDatabase} from "idb"
 * @import {Visit, Wearer} from "./types"
 */
import { openDB } from "idb";

const NAME = "heelwise.book";
const AT_ONCE = 100; // entries a reading, so that no frame is late

/**
 * The way from each version to the next. A change of what is kept adds one; those that stand here are
 * never touched again, for some phone still has that version.
 * @type {((database: IDBPDatabase) => void)[]}
 */
const UPGRADES = [
  (database) => {
    database.createObjectStore("wearers", { keyPath: "id" });
    database.createObjectStore("visits", { keyPath: ["wearer", "number"] });
  },
];

export class Disk {
  /** @type {IDBPDatabase | undefined} */
  #database;

  /** Every wearer as it was kept, some at a time. @param {(some: any[]) => void} take */
  async wearers(take) {
    /** @type {any[]} */
    let some;
    /** @type {IDBKeyRange | undefined} */
    let rest;
    do {
      some = await this.#twice((database) => database.getAll("wearers", rest, AT_ONCE));
      take(some);
      rest = some.length ? IDBKeyRange.lowerBound(some[some.length - 1].id, true) : undefined;
    } while (some.length === AT_ONCE);
  }

  /** @param {string} id @returns {Promise<any>} */
  wearer(id) {
    return this.#twice((database) => database.get("wearers", id));
  }

  /** A wearer's visits as they were kept, the first one first. @param {string} id @returns {Promise<any[]>} */
  visits(id) {
    return this.#twice((database) => database.getAll("visits", of(id)));
  }

  /**
   * In one go, or not at all.
   * @param {{ wearer: Wearer, visits: Visit[] }[]} kept @param {string[]} gone ids
   */
  write(kept, gone) {
    return this.#twice(async (database) => {
      const writing = database.transaction(["wearers", "visits"], "readwrite");
      const [wearers, visits] = [writing.objectStore("wearers"), writing.objectStore("visits")];
      await Promise.all([
        ...kept.map((one) => wearers.put(one.wearer)),
        ...kept.flatMap((one) => one.visits.map((visit) => visits.put(visit))),
        ...gone.map((id) => wearers.delete(id)),
        ...gone.map((id) => visits.delete(of(id))),
        writing.done,
      ]);
    });
  }

  /** @param {"wearers" | "visits"} store @param {IDBValidKey} key */
  remove(store, key) {
    return this.#twice((database) => database.delete(store, key));
  }

  /** @template T @param {(database: IDBPDatabase) => Promise<T>} work @returns {Promise<T>} */
  async #twice(work) {
    try {
      return await work(await this.#open());
    } catch (error) {
      if (error instanceof Error && error.name === "QuotaExceededError") throw error;
      this.#lose();
      return work(await this.#open());
    }
  }

  async #open() {
    const lose = () => this.#lose();
    this.#database ??= await openDB(NAME, UPGRADES.length, {
      upgrade(database, from) {
        for (const step of UPGRADES.slice(from)) step(database);
      },
      blocking: lose, // a newer version of the page waits in another tab
      terminated: lose,
    });
    return this.#database;
  }

  #lose() {
    this.#database?.close();
    this.#database = undefined;
  }
}

/** The keys of a wearer's visits. @param {string} id */
function of(id) {
  return IDBKeyRange.bound([id], [id, []]);
}

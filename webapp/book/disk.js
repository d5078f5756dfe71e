/**
 * The phone's database of the book.
 * @import {Deleted, Gone} from "./types"
 */
import { Database } from "../storage/database.js";
import { goneOf, visitOf, wearerOf } from "./record.js";

const NAME = "heelwise.book";
const AT_ONCE = 100; // entries a reading, so that no frame is late

/** @type {import("../storage/database.js").Upgrade<unknown>[]} */
const UPGRADES = [
  (made) => {
    made.createObjectStore("wearers", { keyPath: "id" });
    made.createObjectStore("visits", { keyPath: ["wearer", "number"] });
  },
  (made) => {
    made.createObjectStore("gone", { keyPath: "id" });
  },
];

/** @extends {Database<unknown>} */
export class Disk extends Database {
  constructor() {
    super(NAME, UPGRADES, { wearers: wearerOf, visits: visitOf, gone: goneOf });
  }

  /** Every wearer as it was kept, some at a time. @param {(some: any[]) => void} take */
  async wearers(take) {
    /** @type {any[]} */
    let some;
    /** @type {IDBKeyRange | undefined} */
    let rest;
    do {
      some = await this.twice((database) => database.getAll("wearers", rest, AT_ONCE));
      take(some);
      rest = some.length ? IDBKeyRange.lowerBound(some[some.length - 1].id, true) : undefined;
    } while (some.length === AT_ONCE);
  }

  /** @param {string} id @returns {Promise<any>} */
  wearer(id) {
    return this.twice((database) => database.get("wearers", id));
  }

  /** A wearer's visits as they were kept, the first one first. @param {string} id @returns {Promise<any[]>} */
  visits(id) {
    return this.twice((database) => database.getAll("visits", of(id)));
  }

  /**
   * In one go, or not at all, and put together with what another tab has written meanwhile.
   * @param {Deleted[]} kept @param {Gone[]} gone those that leave no more than that they are gone
   * @param {(here: Deleted, raw: { wearer: any, visits: any[] }) => Deleted} join
   * @returns {Promise<Deleted[]>} what stands there now
   */
  async write(kept, gone, join) {
    const now = await this.twice(async (database) => {
      const writing = database.transaction(["wearers", "visits", "gone"], "readwrite", {
        durability: "strict",
      });
      writing.done.catch(() => {}); // told by what is awaited below
      const [wearers, visits] = [writing.objectStore("wearers"), writing.objectStore("visits")];
      const stones = writing.objectStore("gone");
      const both = kept.map(async (here) => {
        const { id } = here.wearer;
        const [wearer, all] = await Promise.all([wearers.get(id), visits.getAll(of(id))]);
        const one = join(here, { wearer, visits: all });
        await Promise.all([
          wearers.put(one.wearer),
          ...one.visits.map((visit) => visits.put(visit)),
          stones.delete(id),
        ]);
        return one;
      });
      const removed = gone.flatMap(({ id, at }) => [
        wearers.delete(id),
        visits.delete(of(id)),
        stones.put({ id, at }),
      ]);
      await Promise.all([...both, ...removed, writing.done]);
      return Promise.all(both);
    });
    for (const { id } of gone) {
      await this.forget("wearers", id);
      await this.forget("visits", [id], [id, []]);
    }
    return now;
  }

  /** Those that were deleted, as it was kept. @returns {Promise<any[]>} */
  gone() {
    return this.twice((database) => database.getAll("gone"));
  }

  /** @param {"wearers" | "visits" | "gone"} store @param {IDBValidKey} key */
  async remove(store, key) {
    await this.twice((database) => database.delete(store, key));
    await this.forget(store, key);
  }
}

/** The keys of a wearer's visits. @param {string} id */
function of(id) {
  return IDBKeyRange.bound([id], [id, []]);
}

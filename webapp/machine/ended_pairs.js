/**
 * The pairs that are knitted, and which were deleted, as the phone keeps them. Whatever is asked here
 * rejects where the phone does not do it.
 * @import {Disk} from "./disk.js"
 * @import {Ended, Gone} from "./types"
 */
import { within } from "../storage/within.js";
import { from, NumberTaken, readable } from "./disk.js";

const PATIENCE = 15_000; // ms: there may be thousands

export class EndedPairs {
  /** @param {Disk} disk */
  constructor(disk) {
    this.disk = disk;
  }

  /** The one ended last at the end. @returns {Promise<Ended[]>} */
  async all() {
    /** @type {Ended[]} */
    const all = await this.#soon(this.disk.twice((database) => database.getAll("ended")));
    const good = all.filter((one) => {
      const read = readable("ended", one);
      if (!read) this.disk.setAside("ended", one.id, one);
      return read;
    });
    return good.sort((one, other) => one.ended - other.ended);
  }

  /** The one begun last. @returns {Promise<Ended | undefined>} */
  async newest() {
    const cursor = await this.#soon(
      this.disk.twice((database) =>
        database.transaction("ended").store.index("began").openCursor(null, "prev"),
      ),
    );
    return readable("ended", cursor?.value);
  }

  count() {
    return this.#soon(this.disk.twice((database) => database.count("ended")));
  }

  /** @param {string} id */
  has(id) {
    return this.#soon(this.disk.twice((database) => database.getKey("ended", id))).then(Boolean);
  }

  /**
   * In the place of all that happened in it, in one go; throws NumberTaken where more has happened.
   * @param {Ended} ended
   */
  async end(ended) {
    const { id, last } = ended;
    const work = this.disk.twice(
      async (database) => {
        const moving = database.transaction(
          ["sessions", "happenings", "ended", "gone"],
          "readwrite",
          { durability: "strict" },
        );
        moving.done.catch(() => {}); // told by what is awaited below
        const happened = moving.objectStore("happenings");
        if (await happened.getKey(IDBKeyRange.bound([id, last + 1], [id, Infinity]))) {
          moving.abort();
          throw new NumberTaken();
        }
        await Promise.all([
          moving.objectStore("ended").put(ended),
          moving.objectStore("gone").delete(id),
          moving.objectStore("sessions").delete(id),
          happened.delete(from(id, 0)),
          moving.done,
        ]);
      },
      (error) => error instanceof NumberTaken,
    );
    await this.#soon(work);
    await this.disk.forgetAll(id);
  }

  /** @param {string} id @param {number} at when it was deleted */
  async remove(id, at) {
    await this.#write(({ ended, gone }) => [ended.delete(id), gone.put({ id, at })]);
    await this.disk.forget("ended", id);
  }

  /** Which were deleted. @returns {Promise<Gone[]>} */
  async gone() {
    const all = await this.#soon(this.disk.twice((database) => database.getAll("gone")));
    return all.filter((one) => readable("gone", one));
  }

  /** Whatever became of it, it is under way again. @param {string} id */
  allow(id) {
    return this.#write(({ ended, gone }) => [ended.delete(id), gone.delete(id)]);
  }

  /** One that was deleted. @param {Ended} one */
  restore(one) {
    return this.#write(({ ended, gone }) => [ended.put(one), gone.delete(one.id)]);
  }

  /** The same with other words. @param {Ended[]} all */
  put(all) {
    return this.#write(({ ended }) => all.map((one) => ended.put(one)));
  }

  /** @param {(stores: { ended: any, gone: any }) => Promise<unknown>[]} work */
  #write(work) {
    const writing = this.disk.twice(async (database) => {
      const transaction = database.transaction(["ended", "gone"], "readwrite");
      const [ended, gone] = [transaction.objectStore("ended"), transaction.objectStore("gone")];
      await Promise.all([...work({ ended, gone }), transaction.done]);
    });
    return this.#soon(writing);
  }

  /** @template T @param {Promise<T>} work */
  #soon(work) {
    return within(PATIENCE, work);
  }
}

/**
 * What happened at the machine, on the phone for good: a happening is on disk before `append` resolves.
 * Where the phone cannot keep it (storage full, closed, gone, silent), it goes on in memory, says so,
 * and writes all that is missing as soon as it can. All that was seen of a session stays in memory.
 * @import {Aside, Ended, Gone, Happening, Kept, Session} from "./types"
 */
import { within } from "../storage/within.js";
import { Disk, NumberTaken, Over } from "./disk.js";
import { EndedPairs } from "./ended_pairs.js";
import { Held } from "./held.js";

export { NumberTaken };

const AGAIN = 5000; // ms between tries of its own while something is in memory only
const BRIEFLY = 200; // ms to wait for a reading then
const WAKING = 15_000; // ms to wait for a session of which nothing is in memory: what else is there to show

export class Journal extends EventTarget {
  /** False while something is in memory only. A "kept" event tells each change; a "changed" event, that
   * what happened reads otherwise than before (two tabs counted, one of them in memory): read it again. */
  kept = true;
  #disk = new Disk();
  /** Those that are knitted. */
  ended = new EndedPairs(this.#disk);
  /** Tells what was counted here from what another tab counted at the same moment. */
  #tab = Math.random().toString(36).slice(2);
  #patience;
  /** @type {Map<string, Held>} */
  #held = new Map();
  /** @type {Promise<unknown>} */
  #last = Promise.resolve();
  /** @type {Promise<void> | undefined} */
  #catching;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #again;

  /** @param {number} patience ms that storage may take before it goes on without */
  constructor(patience) {
    super();
    this.#patience = patience;
    this.#disk.addEventListener("open", () => this.kept || this.catchUp());
    this.#disk.addEventListener("lost", () => {
      for (const held of this.#held.values()) held.doubt();
      this.catchUp();
    });
  }

  /**
   * Never rejects, and takes no longer than `patience`.
   * @param {{ patience?: number }} [options]
   */
  static async open({ patience = 2000 } = {}) {
    const journal = new Journal(patience);
    await journal.#soon(journal.#disk.ready()).catch(() => journal.#fail());
    return journal;
  }

  /** Those not put away, the one begun last at the end. @returns {Promise<Session[]>} */
  async sessions() {
    return (await this.every()).filter(({ away }) => !away);
  }

  /** Those put away. @returns {Promise<Session[]>} */
  async discarded() {
    return (await this.every()).filter(({ away }) => away);
  }

  /** What another version of the page kept could not be taken over: it is in memory only until the page is closed. */
  get stuck() {
    return this.#disk.stuck;
  }

  /** Because that one is newer. */
  get outdated() {
    return this.#disk.outdated;
  }

  /** What could not be read so far. */
  get aside() {
    return [...this.#disk.aside.values()];
  }

  /** Delete what cannot be read, for good. @param {Aside} one */
  async drop(one) {
    await this.#soon(this.#disk.drop(one)).catch(() => this.#fail());
  }

  /** @param {string} id @returns {Promise<Kept | undefined>} */
  read(id) {
    return this.#inTurn(async () => {
      const held = await this.#read(id);
      return held && { session: held.session, happenings: [...held.happenings] };
    });
  }

  /** @param {Session} session */
  begin(session) {
    return this.#inTurn(() => {
      const held = new Held(session);
      this.#held.set(session.id, held);
      return this.#save(held);
    });
  }

  /**
   * All pairs, those put away too; `whole` is false where the phone does not hand them all out.
   * @returns {Promise<{ pairs: Kept[], ended: Ended[], gone: Gone[], whole: boolean }>}
   */
  async copy() {
    const ids = new Set(this.#held.keys());
    let [whole, ended, gone] = [true, /** @type {Ended[]} */ ([]), /** @type {Gone[]} */ ([])];
    try {
      for (const { id } of await this.#soon(this.#disk.sessions(), WAKING)) ids.add(id);
      [ended, gone] = await Promise.all([this.ended.all(), this.ended.gone()]);
    } catch {
      whole = false;
    }
    const read = await Promise.all([...ids].map((id) => this.read(id)));
    const pairs = read.filter((kept) => kept !== undefined);
    const over = new Set([...ended, ...gone].map(({ id }) => id));
    const there = pairs.length + [...ids].filter((id) => over.has(id)).length;
    return { pairs, ended, gone, whole: whole && there >= ids.size };
  }

  /**
   * A pair that is knitted gives way to what is learnt from it; rejects, and leaves it as it is, where the
   * phone does not do it or more has happened in it.
   * @param {Ended} ended
   */
  end(ended) {
    return this.#inTurn(async () => {
      await this.ended.end(ended);
      this.#held.delete(ended.id);
    });
  }

  /**
   * A pair from a copy, with what it has beyond the pair that is here; rejects where that one is in the way
   * and the phone does not let it go.
   * @param {Kept} kept @param {boolean} instead of what is here
   */
  take({ session, happenings }, instead) {
    return this.#inTurn(async () => {
      if (instead) {
        await this.#soon(this.#disk.remove([session.id]));
        this.#held.delete(session.id);
      }
      const held = (await this.#read(session.id)) ?? new Held(session);
      // It is taken in whatever became of it here.
      if (this.kept) await this.ended.allow(session.id).catch(() => {});
      this.#held.set(session.id, held);
      held.happenings.push(...happenings.slice(held.happenings.length));
      await this.#save(held);
    });
  }

  /** @param {Session} session the same with other words or counts */
  update(session) {
    return this.#inTurn(async () => {
      const held = this.#held.get(session.id) ?? (await this.#read(session.id));
      if (!held) return;
      await this.#save(Object.assign(held, { session, anew: true })).catch(() => this.catchUp());
    });
  }

  /**
   * Resolves when it may be shown as counted. Throws NumberTaken where another tab has counted in
   * between; it is then nowhere, and to be made anew from what `read` says.
   * @param {Happening} happening
   */
  append(happening) {
    return this.#inTurn(async () => {
      const { session, number } = happening;
      const mine = { ...happening, tab: this.#tab };
      const held = this.#held.get(session) ?? (await this.#read(session));
      if (!held) throw new Error(`There is no session ${session}.`);
      if (number !== held.happenings.length + 1) throw new NumberTaken();
      held.happenings.push(mine);
      try {
        await this.#save(held);
      } catch (error) {
        if (held.happenings.at(-1) !== mine) return; // kept already, under a number of its own
        held.happenings.pop();
        throw error;
      }
    });
  }

  /** Put a session away; it can be brought back until it is removed. @param {string} id */
  discard(id) {
    return this.#put(id, true);
  }

  /** For good. @param {string} id @param {number} [at] when that was, by the phone's clock */
  async remove(id, at = Date.now()) {
    this.#held.delete(id);
    await this.#soon(this.#disk.remove([id])).catch(() => {});
    await this.ended.remove(id, at).catch(() => {});
  }

  /** Bring back what was put away. @param {string} id */
  restore(id) {
    return this.#put(id, false);
  }

  /** @param {string} id @param {boolean} away */
  async #put(id, away) {
    const kept = await this.read(id);
    if (kept) await this.update({ ...kept.session, away });
  }

  /** Write what is in memory only; one try at a time. */
  catchUp() {
    this.#catching ??= this.#missing()
      .then(
        () => this.#tell(true),
        () => this.#fail(),
      )
      .finally(() => {
        this.#catching = undefined;
      });
    return this.#catching;
  }

  async #missing() {
    const lacking = () => [...this.#held.values()].find((one) => one.lacking);
    await this.#soon(this.#disk.ready());
    for (let held = lacking(); held; held = lacking()) {
      try {
        await this.#write(held);
      } catch (error) {
        if (!(error instanceof NumberTaken)) throw error;
        await this.#read(held.session.id);
      }
    }
  }

  /** Those put away too, the one begun last at the end. @returns {Promise<Session[]>} */
  async every() {
    const all = new Map([...this.#held].map(([id, { session }]) => [id, session]));
    try {
      for (const one of await this.#seen(this.#disk.sessions()))
        if (!this.#held.get(one.id)?.anew) all.set(one.id, one);
    } catch {
      this.#fail();
    }
    return [...all.values()].sort((one, other) => one.began - other.began);
  }

  /** @param {string} id */
  async #read(id) {
    const held = this.#held.get(id);
    try {
      const reading = this.#disk.read(id);
      const there = await (held ? this.#seen(reading) : this.#soon(reading, WAKING));
      if (there.over && !held?.more) this.#held.delete(id);
      else if (!held) {
        if (there.session) this.#held.set(id, Held.of(there.session, there.happenings));
      } else if (held.merge(there.session, there.happenings)) {
        this.dispatchEvent(new Event("changed"));
      }
      if (held?.lacking && this.#held.has(id)) this.catchUp();
    } catch {
      this.#fail();
    }
    return this.#held.get(id);
  }

  /** @param {Held} held */
  async #save(held) {
    if (!this.kept) return void this.catchUp();
    try {
      await this.#write(held);
    } catch (error) {
      if (error instanceof NumberTaken) throw error;
      this.#fail();
    }
  }

  /** @param {Held} held */
  async #write(held) {
    const { session, sure, anew } = held;
    const happenings = [...held.happenings];
    const write = () => this.#soon(this.#disk.write({ session, happenings }, { sure, anew }));
    try {
      await write();
    } catch (error) {
      if (!(error instanceof Over)) throw error;
      // Elsewhere it was found knitted, or deleted: what was counted since then speaks against that.
      if (!held.more) return void this.#held.delete(session.id);
      await this.ended.allow(session.id);
      await write();
    }
    held.written(session, happenings);
  }

  /** One after the other, so that two numbers never cross. @template T @param {() => Promise<T>} work @returns {Promise<T>} */
  #inTurn(work) {
    const done = this.#last.then(work);
    this.#last = done.catch(() => {});
    return done;
  }

  /** A reading: not waited for long where storage does not answer anyway. @template T @param {Promise<T>} work */
  #seen(work) {
    return this.#soon(work, this.kept ? this.#patience : BRIEFLY);
  }

  /** @template T @param {Promise<T>} work */
  #soon(work, patience = this.#patience) {
    return within(patience, work);
  }

  #fail() {
    clearTimeout(this.#again);
    this.#again = setTimeout(() => this.catchUp(), AGAIN);
    this.#tell(false);
  }

  /** @param {boolean} kept */
  #tell(kept) {
    if (this.kept === kept) return;
    this.kept = kept;
    this.dispatchEvent(new Event("kept"));
  }
}

/**
 * One session as this tab has it in memory, and how much of it is on disk.
 * @import {Happening, Session} from "./types"
 */
import { same } from "./disk.js";

export class Held {
  /** @type {Happening[]} number by number, from 1 */
  happenings = [];
  /** So many of them are on disk. */
  sure = 0;
  /** The session itself is to be written. */
  anew = true;
  /** So many of them were on disk once. */
  #once = 0;

  /** @param {Session} session one that is nowhere yet */
  constructor(session) {
    this.session = session;
  }

  /** As it was read. @param {Session} session @param {Happening[]} happenings */
  static of(session, happenings) {
    const held = new Held(session);
    held.happenings = happenings;
    held.written(session, happenings);
    return held;
  }

  /** Something has happened that never was on disk. */
  get more() {
    return this.happenings.length > this.#once;
  }

  get lacking() {
    return this.anew || this.sure < this.happenings.length;
  }

  /** The disk may have lost all of it. */
  doubt() {
    this.sure = 0;
    this.anew = true;
  }

  /** The disk has this now. @param {Session} session @param {Happening[]} happenings */
  written(session, happenings) {
    if (this.session === session) this.anew = false;
    const { length } = happenings;
    if (this.happenings[length - 1] === happenings[length - 1]) this.sure = length;
    this.#once = Math.max(this.#once, this.sure);
  }

  /**
   * Take in what the disk has. Nothing of either is lost: where they differ, what is in memory comes
   * after what is on disk. A place is told whole, so the sock stands where this tab showed it.
   * @param {Session | undefined} session @param {Happening[]} there
   * @returns {boolean} whether what was in memory reads otherwise now
   */
  merge(session, there) {
    if (!session) this.anew = true;
    else if (!this.anew) this.session = session;
    const first = this.happenings.findIndex((one, at) => !there[at] || !same(one, there[at]));
    const ours = first < 0 ? [] : this.happenings.slice(first);
    const changed = first >= 0 && first < there.length;
    this.sure = there.length;
    this.#once = Math.max(this.#once, this.sure);
    this.happenings = [
      ...there,
      ...(changed ? ours.map((one, at) => ({ ...one, number: there.length + 1 + at })) : ours),
    ];
    return changed;
  }
}

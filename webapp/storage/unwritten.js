/**
 * What is in memory and not on the phone yet: written soon after each change, and where that fails,
 * again after a while.
 */

import { within } from "./within.js";

const AGAIN = 5000; // ms between tries while something is in memory only

/** Fires "kept" whenever `kept` has changed. */
export class Unwritten extends EventTarget {
  /** False while something is in memory only. */
  kept = true;
  #write;
  #patience;
  #soon;
  #ids = /** @type {Set<string>} */ (new Set());
  /** @type {Promise<void>} */
  #last = Promise.resolve();
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #timer;

  /**
   * @param {(ids: string[]) => Promise<unknown>} write
   * @param {{ patience: number, soon: number }} ms that storage may take, and that a change may wait for others
   */
  constructor(write, { patience, soon }) {
    super();
    this.#write = write;
    this.#patience = patience;
    this.#soon = soon;
    addEventListener("visibilitychange", () => document.hidden && this.flush());
  }

  /** @param {string} id */
  add(id) {
    this.#ids.add(id);
    // From the first change on, not from the last: who types on and on is kept too.
    this.#timer ??= setTimeout(() => this.flush(), this.kept ? this.#soon : AGAIN);
  }

  /** @param {string} id */
  has(id) {
    return this.#ids.has(id);
  }

  /** Write now; never rejects. */
  flush() {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#last = this.#last.then(() => this.#try());
    return this.#last;
  }

  async #try() {
    const ids = [...this.#ids];
    this.#ids.clear();
    try {
      await this.soon(this.#write(ids));
      this.#tell(true);
    } catch {
      for (const id of ids) this.#ids.add(id);
      this.fail();
    }
  }

  /** Storage has refused or is silent. */
  fail() {
    this.#timer ??= setTimeout(() => this.flush(), AGAIN);
    this.#tell(false);
  }

  /** @template T @param {Promise<T>} work */
  soon(work) {
    return within(this.#patience, work);
  }

  /** @param {boolean} kept */
  #tell(kept) {
    if (this.kept === kept) return;
    this.kept = kept;
    this.dispatchEvent(new Event("kept"));
  }
}

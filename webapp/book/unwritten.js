/**
 * What is in memory and not on the phone yet: written soon after each change, and where that fails,
 * again after a while.
 */

import { within } from "../storage/within.js";

const SOON = 300; // ms after the last key
const AGAIN = 5000; // ms between tries while something is in memory only

/** Fires "kept" whenever `kept` has changed. */
export class Unwritten extends EventTarget {
  /** False while something is in memory only. */
  kept = true;
  #write;
  #patience;
  #ids = /** @type {Set<string>} */ (new Set());
  /** @type {Promise<void>} */
  #last = Promise.resolve();
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #timer;

  /** @param {(ids: string[]) => Promise<unknown>} write @param {number} patience ms that storage may take */
  constructor(write, patience) {
    super();
    this.#write = write;
    this.#patience = patience;
    addEventListener("visibilitychange", () => document.hidden && this.flush());
  }

  /** @param {string} id */
  add(id) {
    this.#ids.add(id);
    this.#again(this.kept ? SOON : AGAIN);
  }

  /** @param {string} id */
  has(id) {
    return this.#ids.has(id);
  }

  /** Write now; never rejects. */
  flush() {
    clearTimeout(this.#timer);
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
    this.#again(AGAIN);
    this.#tell(false);
  }

  /** @template T @param {Promise<T>} work */
  soon(work) {
    return within(this.#patience, work);
  }

  /** @param {number} ms */
  #again(ms) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.flush(), ms);
  }

  /** @param {boolean} kept */
  #tell(kept) {
    if (this.kept === kept) return;
    this.kept = kept;
    this.dispatchEvent(new Event("kept"));
  }
}

/** What is ticked of a pair's lists at the machine: a phone that loads the page anew still knows it. */

const KEPT = "heelwise.ticked"; // of the pair that was ticked last

export class Ticked {
  /** @type {Set<string>} */
  #keys = new Set();

  /** @param {string} pair its id */
  constructor(pair) {
    this.pair = pair;
    try {
      const kept = JSON.parse(localStorage[KEPT]);
      if (kept.pair === pair) this.#keys = new Set(kept.keys);
    } catch {
      // Nothing is kept, or the phone keeps nothing: it is ticked again.
    }
  }

  /** @param {string} key */
  has(key) {
    return this.#keys.has(key);
  }

  /** @param {string} key @param {boolean} done */
  put(key, done) {
    done ? this.#keys.add(key) : this.#keys.delete(key);
    try {
      localStorage[KEPT] = JSON.stringify({ pair: this.pair, keys: [...this.#keys] });
    } catch {
      // As long as the counter is shown.
    }
  }
}

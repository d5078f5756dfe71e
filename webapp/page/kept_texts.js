/**
 * What is typed, as texts on the phone: in memory where the phone refuses them, and set aside where what it
 * holds cannot be read, so that nothing is written over it.
 */

const ASIDE = "heelwise.aside.";

export class KeptTexts {
  /** @type {Map<string, string>} what storage would hold, for phones that refuse it */
  #memory = new Map();
  #words;
  #aside;

  /** @param {Record<string, string>} words what stands at which key; at others stands what can be had anew */
  constructor(words) {
    this.#words = words;
    this.#aside = setAsideBefore(words);
  }

  /** False while the phone has refused something that cannot be had anew. */
  get stored() {
    return !Object.keys(this.#words).some((key) => this.#memory.has(key));
  }

  /** What was kept and cannot be read. */
  get aside() {
    return [...this.#aside].map(([place, { words, text }]) => ({ place, words, text }));
  }

  /** Delete it for good. @param {string} place */
  drop(place) {
    localStorage.removeItem(place);
    this.#aside.delete(place);
  }

  /** @param {string} key @param {(raw: any) => unknown} sure throws where it is not what is kept there @returns {any} */
  read(key, sure) {
    let text = this.#memory.get(key);
    try {
      text ??= localStorage.getItem(key) ?? undefined;
    } catch {
      return null;
    }
    if (text === undefined || this.#aside.get(key)?.text === text) return null;
    try {
      const kept = JSON.parse(text);
      if (kept) sure(kept);
      return kept;
    } catch {
      this.#setAside(key, text);
      return null;
    }
  }

  /** @param {string} key @param {object | null} value */
  write(key, value) {
    const text = JSON.stringify(value);
    try {
      if (this.#aside.has(key)) throw new Error("Something set aside stands there.");
      localStorage.setItem(key, text);
      this.#memory.delete(key);
    } catch {
      this.#memory.set(key, text);
    }
  }

  /** What is typed next must not overwrite it. @param {string} key @param {string} text */
  #setAside(key, text) {
    const words = this.#words[key];
    if (!words) return;
    let place = ASIDE + Date.now() + key;
    try {
      localStorage.setItem(place, text);
      localStorage.removeItem(key);
    } catch {
      place = key; // no room: it stays where it is, and what is typed stays in memory
    }
    this.#aside.set(place, { words, text });
  }
}

/** @param {Record<string, string>} all @returns {Map<string, { words: string, text: string }>} by where it is kept */
function setAsideBefore(all) {
  const found = new Map();
  try {
    for (const [place, text] of Object.entries(localStorage)) {
      const words = all[place.slice(place.lastIndexOf("heelwise."))];
      if (place.startsWith(ASIDE) && words) found.set(place, { words, text });
    }
  } catch {
    // The phone keeps nothing, then.
  }
  return found;
}

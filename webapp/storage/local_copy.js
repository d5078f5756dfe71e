/**
 * What is kept, as texts in local storage, where earlier versions of the page had all of it: the first guess
 * of a page that is opened. A text that cannot be read is set aside, so that nothing is written over it.
 * @import { Fact, Kind, Kinds } from "./types"
 */
import { factOf } from "./facts.js";

const OURS = "heelwise.";
const ASIDE = "heelwise.aside.";
const DATES = ".changed"; // after a key: when what stands there was changed

export class LocalCopy {
  /** Names of what it does not take, and that cannot be had anew. @type {Set<string>} */
  refused = new Set();
  #kinds;
  /** As the page found it, by key. @type {Map<string, string>} */
  #texts = new Map();
  /** @type {Map<string, Fact | undefined>} */
  #read = new Map();
  /** By key. @type {Map<string, { words: string, text: string }>} */
  #aside = new Map();

  /** @param {Kinds} kinds */
  constructor(kinds) {
    this.#kinds = kinds;
    try {
      this.#texts = new Map(Object.entries(localStorage));
    } catch {
      return; // it is closed to us
    }
    for (const [key, text] of this.#texts) {
      const words = kinds[nameOf(key.slice(key.lastIndexOf(OURS)))]?.words;
      if (key.startsWith(ASIDE) && words) this.#aside.set(key, { words, text });
    }
    for (const [name, kind] of Object.entries(kinds)) if (kind.many) this.#part(name);
  }

  /** What cannot be read. */
  get aside() {
    return [...this.#aside].map(([place, { words, text }]) => ({ place, words, text }));
  }

  /** Delete it for good. @param {string} place */
  drop(place) {
    localStorage.removeItem(place);
    this.#aside.delete(place);
  }

  /** Of what was there when the page was opened. */
  names() {
    const keys = [...this.#texts.keys()].filter((key) => key.startsWith(OURS));
    return keys.map((key) => key.slice(OURS.length)).filter((name) => this.read(name));
  }

  /** As it was when the page was opened. @param {string} name @returns {Fact | undefined} */
  read(name) {
    if (!this.#read.has(name)) this.#read.set(name, this.#parse(name));
    return this.#read.get(name);
  }

  /** @param {string} name @param {Fact} fact */
  write(name, { at, value }) {
    const kind = this.#kinds[nameOf(name)];
    const key = OURS + name;
    try {
      if (this.#aside.has(key)) throw new Error("Something set aside stands there.");
      if (value === null && kind.many) {
        localStorage.removeItem(key);
        localStorage.removeItem(key + DATES);
      } else {
        // The dates last: under old ones a new text may be written again, under new ones an old one would stay.
        const text = kind.plain ? value : JSON.stringify(kind.flat && value ? value.values : value);
        localStorage.setItem(key, text);
        const changed = kind.flat && value ? { changed: value.changed } : {};
        localStorage.setItem(key + DATES, JSON.stringify({ at, ...changed }));
      }
      this.refused.delete(name);
    } catch {
      if (kind.words) this.refused.add(name);
    }
  }

  /** @param {string} name @returns {Fact | undefined} */
  #parse(name) {
    const kind = this.#kinds[nameOf(name)];
    const text = this.#texts.get(OURS + name);
    if (!kind || text === undefined || name.endsWith(DATES)) return undefined;
    if (Boolean(kind.many) !== name.includes(".")) return undefined;
    const value = kind.plain ? text : parsed(text);
    const { at, changed } = parsed(this.#texts.get(OURS + name + DATES) ?? "{}") ?? {};
    const raw = { at, value: kind.flat && value ? { values: value, changed } : value };
    const fact = value === undefined ? undefined : factOf(raw, kind);
    if (!fact) this.#setAside(OURS + name, text, kind);
    return fact;
  }

  /** One text for several, as an earlier version had it: each its own now. @param {string} name */
  #part(name) {
    const text = this.#texts.get(OURS + name);
    if (text === undefined) return;
    const all = parsed(text);
    if (all === undefined || typeof all !== "object") {
      return this.#setAside(OURS + name, text, this.#kinds[name]);
    }
    for (const [id, value] of Object.entries(all ?? {})) {
      const one = `${name}.${id}`;
      this.#texts.set(OURS + one, JSON.stringify(value));
      const fact = this.read(one);
      if (fact) this.write(one, fact);
    }
    if (!this.refused.size) localStorage.removeItem(OURS + name);
  }

  /** What is typed next must not overwrite it. @param {string} key @param {string} text @param {Kind} kind */
  #setAside(key, text, { words }) {
    if (!words) return;
    let place = ASIDE + Date.now() + key;
    try {
      localStorage.setItem(place, text);
      localStorage.removeItem(key);
      localStorage.removeItem(key + DATES);
    } catch {
      place = key; // no room: it stays where it is, and what is typed is kept elsewhere
    }
    this.#aside.set(place, { words, text });
  }
}

/** @param {string} key or name @returns {string} that of its kind */
function nameOf(key) {
  return key.replace(OURS, "").split(".")[0];
}

/** @param {string} text @returns {any} undefined where it is no JSON */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

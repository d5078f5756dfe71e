/**
 * How the counter behaves on this phone: kept apart from any sock.
 * @import {Kept} from "../storage/kept.js"
 */

import * as say from "words/machine";

const NAME = "counter";

/**
 * @typedef {object} Choices
 * @property {number} guard ms within which a second trigger is held back
 * @property {boolean} spoken each count is spoken
 * @property {boolean} ticks a click at each count
 * @property {boolean} sounds a sound five before a stop and another at the stop
 * @property {boolean} vibration
 * @property {boolean} awake the screen stays on
 */

/** @type {Choices} */
export const USUAL = {
  guard: 250,
  spoken: false,
  ticks: false,
  sounds: true,
  vibration: true,
  awake: true,
};

/** Fires "change" after every change. */
export class Settings extends EventTarget {
  #kept;

  /** @param {Kept} kept */
  constructor(kept) {
    super();
    this.#kept = kept;
    /** @type {Choices} */
    this.choices = known(kept.read(NAME));
    kept.addEventListener("change", (event) => {
      if (!(/** @type {CustomEvent} */ (event).detail.names.includes(NAME))) return;
      this.choices = known(kept.read(NAME));
      this.dispatchEvent(new Event("change"));
    });
  }

  /** What is otherwise than usual. @returns {Partial<Choices> | null} */
  get changed() {
    const own = Object.entries(this.choices).filter(
      ([name, choice]) => choice !== USUAL[/** @type {keyof Choices} */ (name)],
    );
    return own.length ? Object.fromEntries(own) : null;
  }

  /** All as it is on another phone. @param {Partial<Choices>} changed what is otherwise than usual there */
  take(changed) {
    this.set({ ...USUAL, ...changed });
  }

  /** @param {Partial<Choices>} change */
  set(change) {
    this.choices = { ...this.choices, ...change };
    this.#kept.write(NAME, this.choices);
    this.dispatchEvent(new Event("change"));
  }
}

/** Only what is still a choice, and of its kind. @param {any} kept @returns {Choices} */
function known(kept) {
  const own = Object.entries(USUAL).filter(([name, usual]) => typeof kept?.[name] === typeof usual);
  return { ...USUAL, ...Object.fromEntries(own.map(([name]) => [name, kept[name]])) };
}

/** Of a file. @param {any} raw @returns {Partial<Choices>} @throws {TypeError} where one is none */
export function choicesOf(raw) {
  const known = Object.entries(USUAL).filter(([name]) => raw[name] !== undefined);
  for (const [name, usual] of known) {
    const right = typeof raw[name] === typeof usual && raw[name] >= 0 && raw[name] <= 10_000;
    if (!right) throw new TypeError("no choice");
  }
  return Object.fromEntries(known.map(([name]) => [name, raw[name]]));
}

/** @param {number} ms */
export function seconds(ms) {
  return say.seconds({ seconds: ms / 1000 });
}

/** How the counter behaves on this phone: kept here, apart from any sock. */

const KEY = "heelwise.counter";

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
  /** @type {Choices} */
  choices = { ...USUAL, ...read() };

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
    try {
      localStorage.setItem(KEY, JSON.stringify(this.choices));
    } catch {
      // They then hold for this visit.
    }
    this.dispatchEvent(new Event("change"));
  }
}

/** Only what is still a choice, and of its kind. @returns {Partial<Choices>} */
function read() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "null") ?? {};
    return Object.fromEntries(
      Object.entries(USUAL).map(([name, usual]) => [
        name,
        typeof kept[name] === typeof usual ? kept[name] : usual,
      ]),
    );
  } catch {
    return {};
  }
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
  return `${(ms / 1000).toLocaleString("en", { maximumFractionDigits: 2 })} s`;
}

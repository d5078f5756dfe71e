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
const USUAL = {
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

/** @param {number} ms */
export function seconds(ms) {
  return `${(ms / 1000).toLocaleString("en", { maximumFractionDigits: 2 })} s`;
}

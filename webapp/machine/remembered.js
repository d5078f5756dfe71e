/**
 * The little that the page knows of the machine before anything is loaded: whether the counter was on
 * screen when it was last closed, and whether a sock is on the machine. The socks are in the journal.
 */

const KEY = "heelwise.knitting";

/**
 * @typedef {object} Remembered
 * @property {string | null} shown the pair whose counter is on screen
 * @property {string} step the page's step that the counter lies over
 * @property {string[]} told which measurings of a sock one the page was told of
 * @property {number} ended pairs that are knitted
 * @property {number} unfinished pairs that are begun and not ended, those put away among them
 */

/** @returns {Remembered} */
export function remembered() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return {
      shown: typeof kept?.shown === "string" ? kept.shown : null,
      step: typeof kept?.step === "string" ? kept.step : "",
      unfinished: Number(kept?.unfinished) || 0,
      ended: Number(kept?.ended) || 0,
      told: Array.isArray(kept?.told) ? kept.told : [],
    };
  } catch {
    return { shown: null, step: "", unfinished: 0, ended: 0, told: [] };
  }
}

/** @param {Partial<Remembered>} change */
export function remember(change) {
  try {
    localStorage.setItem(KEY, JSON.stringify({ ...remembered(), ...change }));
  } catch {
    // The counter then does not come back by itself; its address still brings it.
  }
}

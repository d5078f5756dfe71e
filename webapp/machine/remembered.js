/**
 * The little that the page knows of the machine before anything is loaded: whether the counter was on
 * screen when it was last closed, and whether a sock is on the machine. The socks are in the journal.
 * @import {Kept} from "../storage/kept.js"
 */

const NAME = "knitting";

/**
 * @typedef {object} Remembered
 * @property {string | null} shown the pair whose counter is on screen
 * @property {string} step the page's step that the counter lies over
 * @property {string[]} told which measurings of a sock one the page was told of
 * @property {number} ended pairs that are knitted
 * @property {number} unfinished pairs that are begun and not ended, those put away among them
 */

/** @param {Kept} kept @returns {Remembered} */
export function remembered(kept) {
  const { shown, step, unfinished, ended, told } = kept.read(NAME) ?? {};
  return {
    shown: typeof shown === "string" ? shown : null,
    step: typeof step === "string" ? step : "",
    unfinished: Number(unfinished) || 0,
    ended: Number(ended) || 0,
    told: Array.isArray(told) ? told : [],
  };
}

/** @param {Kept} kept @param {Partial<Remembered>} change */
export function remember(kept, change) {
  kept.write(NAME, { ...remembered(kept), ...change });
}

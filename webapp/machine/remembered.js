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
 * @property {boolean} dark that the screen may go dark was told and read
 * @property {number} unfinished pairs that are begun and not ended, those put away among them
 */

/** @param {Kept} kept @returns {Remembered} */
export function remembered(kept) {
  const { shown, step, unfinished, ended, told, dark } = kept.read(NAME) ?? {};
  return {
    shown: typeof shown === "string" ? shown : null,
    step: typeof step === "string" ? step : "",
    unfinished: Number(unfinished) || 0,
    ended: Number(ended) || 0,
    dark: dark === true,
    told: Array.isArray(told) ? told : [],
  };
}

/**
 * What stands there already is not written: it would be newer than what the database has yet to tell.
 * @param {Kept} kept @param {Partial<Remembered>} change
 */
export function remember(kept, change) {
  const before = remembered(kept);
  const now = { ...before, ...change };
  if (JSON.stringify(now) !== JSON.stringify(before)) kept.write(NAME, now);
}

/**
 * The little that the page knows of the machine before anything is loaded: whether the counter was on
 * screen when it was last closed, and whether a sock is on the machine. The socks are in the journal.
 * @import {Kept} from "../storage/kept.js"
 */

const NAME = "knitting";
// By itself: what else the machine tells of a pair anew must not date a counter that was left as on screen.
const SHOWN = "shown";

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
  const { shown: before, step, unfinished, ended, told, dark } = kept.read(NAME) ?? {};
  const { pair = before } = kept.read(SHOWN) ?? {}; // earlier versions had it among the others
  return {
    shown: typeof pair === "string" ? pair : null,
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
export function remember(kept, { shown, ...others }) {
  const before = remembered(kept);
  if (shown !== undefined && shown !== before.shown) kept.write(SHOWN, { pair: shown });
  const now = { ...before, ...others };
  if (JSON.stringify(now) !== JSON.stringify(before))
    kept.write(NAME, { ...kept.read(NAME), ...others });
}

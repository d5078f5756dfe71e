/** Needles that come back or are lifted: none, one, or a list where several move at once. */

import * as say from "words/page";

/** @typedef {number | number[] | null | undefined} Moved */

/** @param {Moved} moved @returns {number[]} from the left */
export function each(moved) {
  return [moved ?? []].flat().sort((one, other) => one - other);
}

/** "5", or "33 and 34". @param {Moved} moved */
export function listed(moved) {
  const [first = "", ...others] = each(moved).map(String);
  return others.reduce((rest, last) => say.needlesListed({ rest, last }), first);
}

/**
 * What has changed since the last copy was saved, and since when: noted on the phone at the first change,
 * for the reminder alone. Where the phone keeps no notes, there is none.
 */

const KEY = "heelwise.uncopied";

/** @typedef {"wearer" | "pair" | "mine" | "shelf" | "chart" | "sets"} Changed */

/** @param {Changed} kind @param {string} [id] which one, where there are many */
export function note(kind, id = "") {
  const noted = uncopied();
  const name = `${kind} ${id}`;
  if (!(name in noted)) keep({ ...noted, [name]: Date.now() });
}

/** It is nowhere any longer. @param {Changed} kind @param {string} id */
export function forgotten(kind, id) {
  const { [`${kind} ${id}`]: gone, ...rest } = uncopied();
  if (gone) keep(rest);
}

/** A copy of all of it was saved. */
export function copied() {
  keep({});
}

/** @returns {Record<string, number>} ms of the first change, by kind and id */
export function uncopied() {
  try {
    const noted = Object.entries(JSON.parse(localStorage.getItem(KEY) ?? "{}") ?? {});
    return Object.fromEntries(noted.filter(([, at]) => Number.isFinite(at)));
  } catch {
    return {};
  }
}

/** @param {Record<string, number>} noted */
function keep(noted) {
  try {
    localStorage.setItem(KEY, JSON.stringify(noted));
  } catch {
    // Nobody is reminded, then.
  }
}

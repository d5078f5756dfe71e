/**
 * What a copy holds or would change, in a sentence.
 * @import {Change, SheetName} from "./types"
 */

/** @type {Record<SheetName, string>} */
export const SHEETS = {
  mine: "Your own page",
  before: "What stood on your own page before",
  shelf: "Your cylinders and yarns",
  chart: "What was typed for the table over sizes",
};
export const SETTINGS = "The settings at the machine";

export const BUSY = "One moment…";

/** What they are: how many wearers and pairs, and all else by name. @param {Change[]} changes */
export function inWords(changes) {
  const named = changes.filter(({ kind }) => kind === "sheet" || kind === "settings");
  return listed([
    ...many(changes.map(({ kind }) => kind)),
    ...named.map(({ title }) => inside(title)),
  ]);
}

/** How many wearers and pairs, where there are any. @param {Change["kind"][]} kinds */
export function many(kinds) {
  return /** @type {const} */ (["wearer", "pair"]).flatMap((which) => {
    const count = kinds.filter((kind) => kind === which).length;
    return count ? counted(which, count) : [];
  });
}

/** @param {"wearer" | "pair"} kind @param {number} many */
export function counted(kind, many) {
  const more = kind === "pair" ? " at the machine" : "";
  return many === 1 ? `one ${kind}${more}` : `${many} ${kind}s${more}`;
}

/** As it stands within a sentence. @param {string} title */
export function inside(title) {
  return title[0].toLowerCase() + title.slice(1);
}

/** @param {string[]} words */
export function listed(words) {
  return words.length < 2 ? words.join() : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

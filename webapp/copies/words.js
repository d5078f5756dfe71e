/**
 * What a copy holds or would change, in a sentence.
 * @import {Change, SheetName} from "./types"
 */
import * as say from "words/copies";

/** @type {Record<SheetName, string>} */
export const SHEETS = {
  mine: say.sheetMine,
  before: say.sheetBefore,
  shelf: say.sheetShelf,
  chart: say.sheetChart,
  sets: say.sheetSets,
};
export const SETTINGS = say.machineSettings;

export const BUSY = say.moment;

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
  return kind === "pair" ? say.pairsCounted({ many }) : say.wearersCounted({ many });
}

/** As it stands within a sentence. @param {string} title */
export function inside(title) {
  return say.inside({ title });
}

/** @param {string[]} words */
export function listed(words) {
  const [first = "", ...others] = words;
  const last = others.pop();
  const rest = others.reduce((all, next) => say.listNext({ rest: all, next }), first);
  return last === undefined ? rest : say.listLast({ rest, last });
}

/** How a pair is washed and dried: what she picks, and what the tag then says, without drawn signs. */
import * as say from "words/paper";

/** @typedef {{ name: string, words: string, says: string }} Way */

/** @type {Way[]} */
export const WASHING = [
  {
    name: "hand",
    words: say.washHand,
    says: say.saysWashHand,
  },
  {
    name: "machine",
    words: say.washMachine,
    says: say.saysWashMachine,
  },
  { name: "band", words: say.washBand, says: say.saysWashBand },
];

/** @type {Way[]} */
export const DRYING = [
  { name: "flat", words: say.dryFlat, says: say.saysDryFlat },
  { name: "line", words: say.dryLine, says: say.saysDryLine },
  { name: "band", words: say.dryBand, says: say.saysDryBand },
];

/** What the tag says of both. @param {string} wash @param {string} dry */
export function careOf(wash, dry) {
  if (wash === "band" && dry === "band") return say.saysBothBand;
  return `${saysOf(WASHING, wash)} ${saysOf(DRYING, dry)}`;
}

/** @param {Way[]} ways @param {string} name */
function saysOf(ways, name) {
  return (ways.find((way) => way.name === name) ?? ways[0]).says;
}

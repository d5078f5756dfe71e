/** How a pair is washed and dried: what she picks, and what the tag then says, without drawn signs. */

/** @typedef {{ name: string, words: string, says: string }} Way */

/** @type {Way[]} */
export const WASHING = [
  {
    name: "hand",
    words: "by hand, cold",
    says: "Wash by hand in cold water with a little wool soap; press it out, do not wring.",
  },
  {
    name: "machine",
    words: "machine, wool programme",
    says: "Wash in the machine on its wool programme, cool, inside out.",
  },
  { name: "band", words: "as the yarn’s band says", says: "Wash as the yarn’s band says." },
];

/** @type {Way[]} */
export const DRYING = [
  { name: "flat", words: "lying flat", says: "Dry flat, away from heat." },
  { name: "line", words: "on a line", says: "Dry on a line, away from heat." },
  { name: "band", words: "as the band says", says: "Dry as the yarn’s band says." },
];

/** What the tag says of both. @param {string} wash @param {string} dry */
export function careOf(wash, dry) {
  if (wash === "band" && dry === "band") return "Wash and dry as the yarn’s band says.";
  return `${saysOf(WASHING, wash)} ${saysOf(DRYING, dry)}`;
}

/** @param {Way[]} ways @param {string} name */
function saysOf(ways, name) {
  return (ways.find((way) => way.name === name) ?? ways[0]).says;
}

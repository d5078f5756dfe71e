/**
 * What is only shown of an answer, with each number tied to its fraction, unit or sign: "8 3/8 in" that
 * breaks after the 8 reads as 3/8 in. What goes back into a field, a link, a file or the book stays as it came.
 */

const SHOWN =
  /^(text|other|words|range_text|detail|label|line|lacks|message|way_out|assumptions|cautions)$/;
const BREAK = /(\d) (?=[\d%]|([cm]?m|k?g|in|oz|yd|ft)\b)/g;

/** @param {any} value @param {string} [name] the key it stands under @returns {any} */
export function tied(value, name = "") {
  if (typeof value === "string") return SHOWN.test(name) ? value.replace(BREAK, "$1\u00a0") : value;
  if (!value || typeof value !== "object" || name === "counted") return value;
  if (Array.isArray(value)) return value.map((one) => tied(one, name));
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, tied(one, key)]));
}

/** The sock as the engine drew it: an SVG text becomes part of the page, never markup of its own. */
import { drawing } from "./trusted.js";

/**
 * The pieces of a drawing as one: markup at each even place, words, which become part of it, at each odd one.
 * @param {string[]} pieces
 */
export function joined(pieces) {
  return pieces.map((piece, at) => (at % 2 ? escaped(piece) : piece)).join("");
}

/** @param {string} words */
function escaped(words) {
  return words.replace(/[&<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** @param {string} svg "" for none @param {HTMLElement} place */
export function showPicture(svg, place) {
  place.hidden = !svg; // no text would be parsed to an error with a style of its own, which is forbidden here
  place.replaceChildren(...(svg ? [drawing(svg)] : []));
}

/** The sock as the engine drew it: an SVG text becomes part of the page, never markup of its own. */
import { drawing } from "./trusted.js";

const STEPS = 6; // in which its height grows, of its width

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
  if (!svg) return place.replaceChildren();
  const drawn = drawing(svg);
  const [, , wide = 1, high = 1] = drawn.getAttribute("viewBox")?.split(" ").map(Number) ?? [];
  // Its room grows in steps: a round more or less moves nothing below it.
  drawn.style.aspectRatio = `${1 / (Math.ceil((high / wide) * STEPS) / STEPS)}`;
  place.replaceChildren(drawn);
}

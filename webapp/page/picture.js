/** The sock as the engine drew it: an SVG text becomes part of the page, never markup of its own. */
import { drawing } from "./trusted.js";

/** @param {string} svg "" for none @param {HTMLElement} place */
export function showPicture(svg, place) {
  place.hidden = !svg; // no text would be parsed to an error with a style of its own, which is forbidden here
  place.replaceChildren(...(svg ? [drawing(svg)] : []));
}

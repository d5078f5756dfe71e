/**
 * How far the whole sock is, drawn: a sock from the side that is filled row by row from the cuff to the toe,
 * with the row on the needles in red.
 * @import {Knit, Place} from "./types"
 */
import { svg } from "lit-html";
import { newest, outline, pieces } from "../drawings/drawn.js";
import { counted } from "./progress.js";

/** How many rounds and rows of each part are knitted. @param {Knit} knit @param {Place} place */
function rows({ steps }, place) {
  /** @type {Record<string, number>} */
  const done = {};
  steps.slice(0, place.step + 1).forEach((step, at) => {
    done[step.part] = (done[step.part] ?? 0) + (at < place.step ? counted(step) : place.done);
  });
  return done;
}

/** Of counts that were kept before there were drawings. */
const NONE = { box: [0, 0, 1, 1], cloth: [] };

/** @param {Knit} knit @param {Place} place @param {string} words what it says to those who listen */
export function sockPicture(knit, place, words) {
  const drawing = knit.drawing ?? NONE;
  const done = rows(knit, place);
  const now = place.step < knit.steps.length ? newest(drawing, done) : "";
  return svg`<svg class="so-far-sock" viewBox=${drawing.box.join(" ")} role="img" aria-label=${words} focusable="false">
    <path class="sock-ground" d=${outline(drawing)} />
    ${pieces(drawing, done).map(
      ({ part, dashes, knitted }) =>
        svg`<path class="sock-done of-${part} ${dashes ? "dashes" : ""}" d=${knitted} />`,
    )}
    <path class="sock-now" d=${now} />
  </svg>`;
}

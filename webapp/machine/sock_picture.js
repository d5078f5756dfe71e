/**
 * How far the whole sock is, drawn: a sock from the side that fills from the cuff to the toe, each part
 * at its own pace.
 * @import {Knit, Place} from "./types"
 */
import { svg } from "lit-html";
import { counted } from "./progress.js";

// The middle of the tube, part by part, and the lines where one part ends.
const PARTS = {
  cuff: "M21 3V10",
  leg: "M21 10V33",
  heel: "M21 33Q21 46.5 33 46.5",
  foot: "M33 46.5H50",
  toe: "M50 46.5H62",
};
const SHAPE =
  "M11 3H31V28C31 34 34 36 40 36H50C58 36 62 41 62 46.5S58 57 50 57H27C17 57 11 51 11 42Z";
const LINES = "M11 10H31M11 33H32M33 36V57M50 36V57";

/**
 * Which share of each part is knitted.
 * @param {Knit} knit @param {Place} place @returns {Record<string, number>}
 */
export function shares({ steps }, place) {
  /** @type {Record<string, [number, number]>} */
  const sums = {};
  steps.forEach((step, at) => {
    sums[step.part] ??= [0, 0];
    const sum = sums[step.part];
    sum[1] += counted(step);
    if (at < place.step) sum[0] += counted(step);
    else if (at === place.step) sum[0] += place.done;
  });
  return Object.fromEntries(
    Object.entries(sums).map(([part, [done, all]]) => [part, all ? done / all : 0]),
  );
}

/** @param {Knit} knit @param {Place} place @param {string} words what it says to those who listen */
export function sockPicture(knit, place, words) {
  const done = shares(knit, place);
  return svg`<svg class="so-far-sock" viewBox="8 0 57 60" role="img" aria-label=${words} focusable="false">
    <clipPath id="sock-shape"><path d=${SHAPE} /></clipPath>
    <path class="sock-ground" d=${SHAPE} />
    <g clip-path="url(#sock-shape)">
      ${Object.entries(PARTS).map(
        ([part, path]) =>
          svg`<path class="sock-done" d=${path} pathLength="1" stroke-dasharray="${done[part] ?? 0} 2" />`,
      )}
      <path class="sock-lines" d=${LINES} />
    </g>
    <path class="sock-edge" d=${SHAPE} />
  </svg>`;
}

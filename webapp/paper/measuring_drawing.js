/**
 * The measuring sheet in mm: the scale for a foot lies on the sheet's diagonal, the only way in which a foot
 * of 320 mm finds room, with a line for the heel across one corner.
 */
import { svg } from "lit-html";
import * as say from "words/paper";

/** mm: ISO 216; ANSI/ASME Y14.1 (8.5 × 11 in) */
export const PAPERS = { A4: [210, 297], Letter: [215.9, 279.4] };
/** @typedef {keyof typeof PAPERS} Paper */

const INCH = 25.4;
const LONGEST = 320; // mm, of a foot
const EDGE = 5; // mm that an ordinary printer leaves white (common practice)
const AT_HEEL = 0.65; // of what the longest foot leaves free: wide enough to fold, and its last line is printed
export const BAR = 100; // mm
/** ISO/IEC 7810, ID-1: 85.60 × 53.98 mm, its corners rounded by 2.88 to 3.48 mm. */
export const CARD = [85.6, 53.98, 3.18];
/** From the heel to the ball over the whole foot, men's and women's mean (ANSUR II 2012), as the engine's. */
const BALL_AT = 0.74;
const BALLS = [160, 180, 200, 220, 240, 260, 280, 300, 320];

/**
 * @param {Paper} paper @param {unknown} words at the top left, as SVG
 * @param {string} id of its own: what another hides cuts nothing off
 */
export function drawnScale(paper, words, id) {
  const [wide, high] = PAPERS[paper];
  const long = Math.hypot(wide, high);
  const zero = (long - LONGEST) * AT_HEEL;
  const turn = (-Math.atan2(high, wide) * 180) / Math.PI;
  const across = wide - 2 * EDGE;
  const down = high - 2 * EDGE;
  return svg`<svg class="measuring-page" viewBox="0 0 ${wide} ${high}" role="img" aria-label=${say.scalePicture}>
    <clipPath id=${id}><rect x=${EDGE} y=${EDGE} width=${across} height=${down} /></clipPath>
    <g clip-path="url(#${id})">
      <g transform="translate(0 ${high}) rotate(${turn}) translate(${zero} 0)">
        <path class="guide" d=${guides()} />
        <path class="ball" d=${BALLS.map((foot) => `M${round(BALL_AT * foot)}-56V-30`).join("")} />
        ${BALLS.map((foot) => svg`<text class="tiny" transform="translate(${round(BALL_AT * foot) + 0.8} -55) rotate(90)">${say.ballOf({ foot: foot / 10 })}</text>`)}
        <path class="fine" d=${ticks(LONGEST, 1, [1, 5, 10], [3, 5, 8])} />
        <path class="fine" d=${ticks(LONGEST, INCH / 8, [1, 4, 8], [-3, -5, -8])} />
        <path class="line" d="M0 0H${LONGEST}" />
        <path class="heel" d="M0-60V60" />
        ${numbers(31, 10).map(({ at, text }) => svg`<text x=${at} y="12.5">${text}</text>`)}
        ${numbers(12, INCH).map(({ at, text }) => svg`<text x=${at} y="-9.5">${text}</text>`)}
        <text class="unit" x="12" y="18">cm</text>
        <text class="unit" x="12" y="-15">in</text>
        <text class="said-on" x="4" y="24">${say.heelLine}</text>
      </g>
    </g>
    <g transform="translate(${wide - 10 - CARD[0]} ${high - 80})">
      <rect class="line measuring-card" width=${CARD[0]} height=${CARD[1]} rx=${CARD[2]} />
      ${lines([say.cardFits, say.cardTrue], CARD[0] / 2, 20)}
    </g>
    <g transform="translate(${wide - 10 - BAR} ${high - 12})">
      ${lines([say.barWords], BAR / 2, -8.5)}
      <path class="fine" d=${ticks(BAR, 1, [1, 5, 10], [-2, -3, -4])} />
      <rect class="measuring-bar" width=${BAR} height="3" />
    </g>
    ${words}
  </svg>`;
}

/** Lines across the sheet, to lay a book square to the scale. */
function guides() {
  const found = [];
  for (let at = 90; at <= LONGEST; at += 10)
    found.push(`M${at} 14V${at < 150 ? 40 : 58}M${at}-14V-27`);
  return found.join("");
}

/**
 * @param {number} to mm @param {number} step mm @param {number[]} every in steps, the finest first
 * @param {number[]} reach mm, of each
 */
function ticks(to, step, every, reach) {
  const found = [];
  for (let at = 0; at * step <= to + 0.001; at++) {
    const kind = every.findLastIndex((one) => at % one === 0);
    found.push(`M${round(at * step)} 0V${reach[kind]}`);
  }
  return found.join("");
}

/** @param {number} last @param {number} step mm */
function numbers(last, step) {
  return Array.from({ length: last }, (_, at) => ({ at: round((at + 1) * step), text: at + 1 }));
}

/** One below the other. @param {string[]} texts @param {number} x @param {number} y of the first */
export function lines(texts, x, y) {
  return texts.map((one, at) => svg`<text x=${x} y=${round(y + 5 * at)}>${one}</text>`);
}

/** @param {number} mm */
function round(mm) {
  return Math.round(mm * 1000) / 1000;
}

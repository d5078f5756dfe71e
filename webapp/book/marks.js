/**
 * How far a pair has come, drawn: a mark for each state, and a pair of small socks as far as it is knitted.
 * @import {State} from "./types"
 * @import {SVGTemplateResult} from "lit-html"
 */
import { html, svg } from "lit-html";
import { outline, pieces } from "../drawings/drawn.js";
import { USUAL } from "../drawings/usual_sock.js";
import { STATES } from "./states.js";

const [LEFT, TOP, WIDE, HIGH] = USUAL.box;
/** Where the usual sock lies in a mark of 24 by 24. */
const LIES = `translate(${12 - (WIDE * 22) / HIGH / 2} 1) scale(${22 / HIGH}) translate(${-LEFT} ${-TOP})`;
const SOCK = svg`<path class="drawn" transform=${LIES} d=${outline(USUAL)} />`;

/** @type {Record<State, SVGTemplateResult>} */
const MARKS = {
  "to measure": svg`<path d="M2 8h20v8H2zM6 8v3M10 8v5M14 8v3M18 8v5"/>`,
  measured: svg`<path d="M9 21c-3 0-4-3-3.5-6C6 12 4.5 11 5 7.5 5.4 4.5 8 3 11 3c4 0 6 3 5.5 7-.4 3.5-2.5 4-3 7-.4 2.5-1.5 4-4.5 4z"/>`,
  planned: svg`<path d="M5 3h14v18H5zM8.5 8h7M8.5 12h7M8.5 16h4"/>`,
  "sock one": SOCK,
  "sock two": svg`<g class="far" transform="translate(4.5 -1.2) scale(.92)">${SOCK}</g><g class="near" transform="translate(-3.6 2) scale(.92)">${SOCK}</g>`,
  grafted: svg`${SOCK}<path d="m14.5 21.5 1-3 1.5 1 .5-3 2 .6.4-2.6"/>`,
  washed: svg`<path d="M12 3c3.5 4.5 6 7.6 6 11a6 6 0 0 1-12 0c0-3.4 2.5-6.5 6-11zM9 14a3 3 0 0 0 3 3"/>`,
  "handed over": svg`<circle cx="12" cy="12" r="9.5" class="full"/><path class="on-full" d="m7.5 12.5 3 3 6-7"/>`,
};

/** What is knitted of each sock of a pair, as far as a mark shows it. @param {State} state */
function knitted(state) {
  const place = STATES.findIndex(({ name }) => name === state);
  const [one, two, both] = [3, 4, 5]; // where the states of knitting stand
  const all = Object.fromEntries(USUAL.cloth.map(({ part }) => [part, Number.POSITIVE_INFINITY]));
  const half = { ...all, foot: 0, toe: 0 };
  return place >= both
    ? [all, all]
    : place === two
      ? [all, half]
      : place === one
        ? [half, {}]
        : [{}, {}];
}

/** A pair of small socks as far as it is knitted; the words beside it say the same. @param {State} state */
export function pairShown(state) {
  return html`<svg class="pair-of" viewBox="0 0 48 24" aria-hidden="true" focusable="false">${knitted(
    state,
  ).map(
    (rows, at) =>
      svg`<g transform="translate(${at * 24} 0)"><g transform=${LIES}><path class="pencil" d=${outline(USUAL)} />${pieces(
        USUAL,
        rows,
      ).map(({ part, knitted: d }) => svg`<path class="knitted of-${part}" d=${d} />`)}</g></g>`,
  )}</svg>`;
}

/** A state as people see it. @param {State} state */
export function stateShown(state) {
  const { name, words } = STATES.find((one) => one.name === state) ?? STATES[0];
  return html`<span class="state"><svg viewBox="0 0 24 24" aria-hidden="true" focusable="false">${MARKS[name]}</svg>${words}</span>`;
}

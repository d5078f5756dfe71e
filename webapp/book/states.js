/**
 * How far a pair has come: each a word and a drawn mark, in the order they are gone through.
 * @import {State} from "./types"
 * @import {SVGTemplateResult} from "lit-html"
 */
import { html, svg } from "lit-html";
import * as say from "words/book";

const SOCK = svg`<path d="M8 3h6v8.5l4.4 3.3a3.4 3.4 0 0 1-2 6.1 5 5 0 0 1-3.1-1L8 16z"/>`;

/** @type {{ name: State, words: string, mark: SVGTemplateResult }[]} */
export const STATES = [
  {
    name: "to measure",
    words: say.toMeasure,
    mark: svg`<path d="M2 8h20v8H2zM6 8v3M10 8v5M14 8v3M18 8v5"/>`,
  },
  {
    name: "measured",
    words: say.measured,
    mark: svg`<path d="M9 21c-3 0-4-3-3.5-6C6 12 4.5 11 5 7.5 5.4 4.5 8 3 11 3c4 0 6 3 5.5 7-.4 3.5-2.5 4-3 7-.4 2.5-1.5 4-4.5 4z"/>`,
  },
  {
    name: "planned",
    words: say.planned,
    mark: svg`<path d="M5 3h14v18H5zM8.5 8h7M8.5 12h7M8.5 16h4"/>`,
  },
  { name: "sock one", words: say.onSockOne, mark: SOCK },
  {
    name: "sock two",
    words: say.onSockTwo,
    mark: svg`<g class="far" transform="translate(4.5 -1.2) scale(.92)">${SOCK}</g><g class="near" transform="translate(-3.6 2) scale(.92)">${SOCK}</g>`,
  },
  {
    name: "grafted",
    words: say.grafted,
    mark: svg`${SOCK}<path d="m14.5 21.5 1-3 1.5 1 .5-3 2 .6.4-2.6"/>`,
  },
  {
    name: "washed",
    words: say.washed,
    mark: svg`<path d="M12 3c3.5 4.5 6 7.6 6 11a6 6 0 0 1-12 0c0-3.4 2.5-6.5 6-11zM9 14a3 3 0 0 0 3 3"/>`,
  },
  {
    name: "handed over",
    words: say.handedOver,
    mark: svg`<circle cx="12" cy="12" r="9.5" class="full"/><path class="on-full" d="m7.5 12.5 3 3 6-7"/>`,
  },
];

/** What it is called; an older version may have kept another. @param {string} state */
export function stateWords(state) {
  return STATES.find(({ name }) => name === state)?.words ?? state;
}

/** A state as people see it. @param {State} state */
export function stateShown(state) {
  const { words, mark } = STATES.find((one) => one.name === state) ?? STATES[0];
  return html`<span class="state"><svg viewBox="0 0 24 24" aria-hidden="true" focusable="false">${mark}</svg>${words}</span>`;
}

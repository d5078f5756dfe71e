/**
 * How far a pair has come, in words, in the order it is gone through.
 * @import {State} from "./types"
 */
import * as say from "words/book";

/** @type {{ name: State, words: string }[]} */
export const STATES = [
  { name: "to measure", words: say.toMeasure },
  { name: "measured", words: say.measured },
  { name: "planned", words: say.planned },
  { name: "sock one", words: say.onSockOne },
  { name: "sock two", words: say.onSockTwo },
  { name: "grafted", words: say.grafted },
  { name: "washed", words: say.washed },
  { name: "handed over", words: say.handedOver },
];

/** What is next to do for the pair. @type {Record<State, string>} */
const NEXT = {
  "to measure": say.measureFoot,
  measured: say.planSocks,
  planned: say.knitSock({ sock: 1 }),
  "sock one": say.knitSock({ sock: 1 }),
  "sock two": say.knitSock({ sock: 2 }),
  grafted: say.washPair,
  washed: say.handOver,
  "handed over": say.handedOver,
};

/** @param {State} state */
export function nextOf(state) {
  return NEXT[state];
}

/** What it is called; an older version may have kept another. @param {string} state */
export function stateWords(state) {
  return STATES.find(({ name }) => name === state)?.words ?? state;
}

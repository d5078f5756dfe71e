/**
 * The next thing to do for a wearer, as the one main button of their page.
 * @import {OnMachine, State, Wearer} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/book";
import { dueShown, wrongDay } from "./days.js";
import { nextOf } from "./states.js";

/**
 * @typedef {object} Ways
 * @property {(step: "measure" | "yarn" | "counts") => void} sheet
 * @property {(session: string) => void} machine
 * @property {(state: State) => void} reach it is done
 * @property {() => void} again another pair
 */

/** Where the words of the list say a thing that is done away from the page, the button says that it is done. */
const DONE = /** @type {const} */ ({
  grafted: { state: "washed", words: say.isWashed },
  washed: { state: "handed over", words: say.isHandedOver },
});

/** @param {Wearer} wearer @param {Partial<OnMachine>} pair on the machine @param {Ways} ways */
export function nextThing({ state, due }, { session, words }, ways) {
  if (state === "handed over") return button("next-thing", say.anotherPair, ways.again);
  const by = due && !wrongDay(due) ? say.nextBy({ day: dueShown(due) }) : say.next;
  if (state === "grafted" || state === "washed") {
    const done = DONE[state];
    return button("next-thing", done.words, () => ways.reach(done.state), by);
  }
  if (session && /^sock/.test(state)) {
    const place = words ? say.atMachine({ place: words }) : nextOf(state);
    return button(`to-machine-${session}`, place, () => ways.machine(session), by);
  }
  if (state === "to measure") {
    return button("open-sheet", nextOf(state), () => ways.sheet("measure"), by);
  }
  const step = state === "measured" ? "yarn" : "counts";
  return button("next-thing", nextOf(state), () => ways.sheet(step), by);
}

/** @param {string} id @param {string} words @param {() => void} act @param {string} [by] */
function button(id, words, act, by = "") {
  return html`<button type="button" class="go next-thing" id=${id} @click=${act}>
    <span>${by ? html`<small>${by}</small> ` : nothing}${words}</span></button>`;
}

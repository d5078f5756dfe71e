/**
 * What the page is told of a pair while it is counted: of a wearer's how far it is, whenever that changes, and
 * of each what was measured of its sock one.
 * @import {Kept} from "../storage/kept.js"
 * @import {KnittedPair, State as Reached} from "../book/types"
 * @import {Counter} from "./counter.js"
 * @import {MeasuredPair, Session, State} from "./types"
 */
import { hangs } from "./progress.js";
import { remember, remembered } from "./remembered.js";

const TOLD = 20; // measurings that are remembered as told

/** @param {State} state @returns {Reached} */
export function reached({ sock, socks, places, ended }) {
  const made = (/** @type {string} */ what) =>
    // What hangs below sock two is made with it.
    !socks.every(hangs) &&
    socks.every((knit, at) => {
      const making = knit.steps.findIndex((step) => step.kind === "do" && step.makes === what);
      return hangs(knit) || (making >= 0 && places[at].step > making);
    });
  if (made("washed")) return "washed";
  if (made("grafted")) return "grafted";
  return sock === 1 || ended[0] ? "sock two" : "sock one";
}

/** @param {Session} session @param {State} state @returns {KnittedPair} */
function told({ id, wearer = "", began, request }, state) {
  const [{ counted }, { counted: other }] = state.socks;
  const two = JSON.stringify(counted) === JSON.stringify(other) ? undefined : other;
  const { measured } = state;
  return { wearer, session: id, began, request, counted, two, measured, state: reached(state) };
}

/** @param {Counter} counter @param {(pair: KnittedPair) => void} tell */
export function tellOf(counter, tell) {
  const { session } = counter;
  if (!session.wearer) return;
  let before = "";
  const follow = () => {
    const pair = told(session, counter.state);
    const now = JSON.stringify([pair.state, pair.two, pair.measured]);
    if (now !== before) tell(pair);
    before = now;
  };
  follow();
  counter.addEventListener("change", follow);
}

/**
 * Each measuring is told once, for the sheet may say otherwise later; also where the page was closed just
 * before it could be told.
 * @param {Counter} counter @param {Kept} kept which were told @param {(pair: MeasuredPair) => void} tell
 */
export function tellSockOne(counter, kept, tell) {
  const { id, wearer, request } = counter.session;
  const follow = () => {
    const { measured } = counter.state;
    if (!measured) return;
    const by = counter.happenings.findLast((one) => one.measured)?.number ?? 0;
    const [name, { told }] = [`${id} ${by}`, remembered(kept)];
    if (told.includes(name)) return;
    tell({ wearer, request, measured });
    remember(kept, { told: [...told, name].slice(-TOLD) });
  };
  follow();
  counter.addEventListener("change", follow);
}

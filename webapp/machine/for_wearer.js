/**
 * A pair that is for a wearer of the book: how far it is, told whenever that changes.
 * @import {KnittedPair, State as Reached} from "../book/types"
 * @import {Counter} from "./counter.js"
 * @import {Session, State} from "./types"
 */

/** @param {State} state @returns {Reached} */
export function reached({ sock, socks, places, ended }) {
  const made = (/** @type {string} */ what) =>
    socks.every(({ steps }, at) => {
      const making = steps.findIndex((step) => step.kind === "do" && step.makes === what);
      return making >= 0 && places[at].step > making;
    });
  if (made("washed")) return "washed";
  if (made("grafted")) return "grafted";
  return sock === 1 || ended[0] ? "sock two" : "sock one";
}

/** @param {Session} session @param {State} state @returns {KnittedPair} */
function told({ id, wearer = "", began, request }, state) {
  const [{ counted }, { counted: other }] = state.socks;
  const two = JSON.stringify(counted) === JSON.stringify(other) ? undefined : other;
  return { wearer, session: id, began, request, counted, two, state: reached(state) };
}

/** @param {Counter} counter @param {(pair: KnittedPair) => void} tell */
export function tellOf(counter, tell) {
  const { session } = counter;
  if (!session.wearer) return;
  let before = "";
  const follow = () => {
    const pair = told(session, counter.state);
    const now = JSON.stringify([pair.state, pair.two]);
    if (now !== before) tell(pair);
    before = now;
  };
  follow();
  counter.addEventListener("change", follow);
}

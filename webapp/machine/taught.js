/**
 * What the pairs that are knitted taught of the knitter, for a plan. The calculator plans each once and
 * remembers it; a few at a time, so that what is typed meanwhile need not wait for all.
 * @import {OfKnitter} from "../page/answers"
 * @import {Request} from "../page/types"
 * @import {Ended} from "./types"
 */

const MOST = 100; // the calculator looks at no more
const FEW = 8;

/**
 * @param {Ended[]} all the one ended last at the end @param {Request} request
 * @param {(call: object) => Promise<any>} ask the calculator
 */
export async function taught(all, request, ask) {
  const pairs = all
    .filter((one) => one.measured?.length)
    .slice(-MOST)
    .map((one) => ({ request: one.request, measured: one.measured }));
  for (let at = 0; at < pairs.length; at += FEW)
    await ask({ do: "knitter", request, pairs: pairs.slice(at, at + FEW) });
  const answer = /** @type {OfKnitter} */ (await ask({ do: "knitter", request, pairs }));
  return answer.knitter;
}

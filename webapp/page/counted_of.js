/**
 * What is kept of a sock's counts and of sock one's measures, made sure of before it is used.
 * @import {FirstSock} from "../machine/types"
 * @import {Counted} from "./types"
 */

/** @param {any} raw @returns {Counted} @throws {TypeError} */
export function countedOf(raw) {
  const { engine, figures, facts } = raw ?? {};
  const words = [
    engine,
    ...Object.values(figures ?? {}),
    ...facts.flatMap((/** @type {any} */ fact) => [fact?.name, fact?.text]),
  ];
  if (typeof figures !== "object" || words.some((word) => typeof word !== "string"))
    throw new TypeError("no counts");
  return { engine, figures, facts };
}

/** @param {any} raw @returns {FirstSock} sock one as it was measured, as typed @throws {TypeError} */
export function firstSockOf(raw) {
  const { foot_rounds, length, unwashed_length = "", flat_width = "", like = "" } = raw ?? {};
  if (
    [foot_rounds, length, unwashed_length, flat_width, like].some(
      (text) => typeof text !== "string",
    )
  )
    throw new TypeError("no sock");
  return {
    foot_rounds,
    length,
    ...(unwashed_length ? { unwashed_length } : {}),
    ...(flat_width ? { flat_width } : {}),
    ...(like ? { like } : {}),
  };
}

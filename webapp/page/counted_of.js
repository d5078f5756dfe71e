/**
 * What is kept of a sock's counts, made sure of before it is used.
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

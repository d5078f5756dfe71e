/** The invented example: a lifeboat station's open day, as sheets that visit and leave again. */
import day from "../data/demo.json";
import { toValues } from "./request.js";

/** @typedef {"coxswain" | "mechanic" | "helper" | "youngest"} Who */
export const feet = /** @type {{ who: Who, request: object }[]} */ (day.feet);

/**
 * @param {number} foot which of the example's feet
 * @returns {import("./types").Visit}
 */
export function choose(foot) {
  const values = toValues(day.feet[foot].request);
  return { kind: "demo", foot, opened: values, values, changed: {} };
}

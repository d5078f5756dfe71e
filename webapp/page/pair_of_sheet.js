/**
 * A sheet and the pair that was begun from it: whether it still asks for that pair, and what was measured
 * of its sock one.
 * @import {FirstSock} from "../machine/types"
 * @import {Request, Values} from "./types"
 */
import { toValues, withUsual } from "./request.js";
import { withItsUnit } from "./units_beside.js";
import { within } from "./within.js";

/** Whether both ask for the same pair, also where one was asked in other units since. @param {Request} one @param {Request} other */
export function samePlan(one, other) {
  return plain(one) === plain(other);
}

/** Without what is known later, and changes nothing of what was planned. @param {Request} request */
function plain(request) {
  const all = Object.entries(toValues(withUsual(request)))
    .filter(
      ([name, text]) => text.trim() && !within(name, "first_sock", "stock", "units", "knitter"),
    )
    .map(([name, text]) => [name, withItsUnit(name, text.trim(), request.units)]);
  return JSON.stringify(all.sort());
}

/** What was measured, with its units beside it. @param {FirstSock} measured @param {Request["units"]} units */
export function sockOneIn(measured, units) {
  const { foot_rounds, length = "", unwashed_length = "", flat_width = "", like = "" } = measured;
  return {
    foot_rounds,
    like,
    length: withItsUnit("first_sock.length", length, units),
    unwashed_length: withItsUnit("first_sock.unwashed_length", unwashed_length, units),
    flat_width: withItsUnit("first_sock.flat_width", flat_width, units),
  };
}

/** The sheet with what was measured of sock one, in its own units. @param {Values} values @param {Request} request @param {FirstSock} measured @returns {Values} */
export function withSockOne(values, { units }, measured) {
  const here = values.units === units ? measured : sockOneIn(measured, units);
  return {
    ...values,
    "first_sock.foot_rounds": here.foot_rounds,
    "first_sock.length": here.length ?? "",
    "first_sock.unwashed_length": here.unwashed_length ?? "",
    "first_sock.flat_width": here.flat_width ?? "",
    "first_sock.like": here.like ?? "",
  };
}

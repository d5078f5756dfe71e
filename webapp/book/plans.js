/**
 * A wearer's plans: the one that was looked at last, until it is knitted, and those that were. What was
 * knitted never changes.
 * @import {Values} from "../page/types"
 * @import {KnittedPair, Plan, State, Visit} from "./types"
 */
import { samePlan, withSockOne } from "../page/pair_of_sheet.js";
import { toRequest, toValues } from "../page/request.js";
import { STATES } from "./states.js";

export const BY_HAND = "by hand";

/** @param {State} state */
function place(state) {
  return STATES.findIndex(({ name }) => name === state);
}

/** Whether yarn has been knitted by then. @param {State} state */
export function begun(state) {
  return place(state) >= place("sock one");
}

/** The pair at the machine that a plan was knitted as. @param {Plan} plan */
export function sessionOf({ knitted }) {
  return knitted === BY_HAND ? undefined : knitted;
}

/** What a finished pair comes from: as it was knitted, though the sheet may say otherwise by now. @param {Visit} visit @returns {Values} */
export function knittedFrom({ values, plans = [] }) {
  const plan = plans.findLast((one) => one.knitted);
  if (!plan) return values;
  const { measured, values: planned } = plan;
  return measured ? withSockOne(planned, toRequest(planned), measured) : planned;
}

/**
 * The visits with what was measured of a pair's sock one on the sheet that it was begun from; themselves where
 * that was known, or the sheet asks for another pair by now.
 * @param {Visit[]} visits @param {KnittedPair} pair @param {Plan[]} before the plans before it was told
 */
export function withMeasured(visits, { session, request, measured }, before) {
  const known = before.find((one) => one.knitted === session)?.measured;
  if (!measured || JSON.stringify(known) === JSON.stringify(measured)) return visits;
  return visits.map((visit) => {
    const of = visit.plans?.some((one) => one.knitted === session);
    return of && samePlan(toRequest(visit.values), request)
      ? { ...visit, values: withSockOne(visit.values, request, measured) }
      : visit;
  });
}

/** Counts were looked at; what was counted from the same before stays as it was. @param {Plan[]} plans @param {Plan} plan @returns {Plan[]} */
export function lookedAt(plans, plan) {
  const last = plans.at(-1);
  if (last && same(last, plan)) return plans;
  return [...(last && !last.knitted ? plans.slice(0, -1) : plans), plan];
}

/** It is being knitted, from paper or from the screen. @param {Plan[]} plans @returns {Plan[]} */
export function knittedByHand(plans) {
  const last = plans.at(-1);
  return last && !last.knitted ? [...plans.slice(0, -1), { ...last, knitted: BY_HAND }] : plans;
}

/** The pair is, or was, on the machine. @param {Plan[]} plans @param {KnittedPair} pair @returns {Plan[]} */
export function knitted(plans, { session, began, request, counted, two, measured }) {
  const plan = { at: began, values: toValues(request), counted, two, measured, knitted: session };
  if (plans.some((one) => one.knitted === session))
    return plans.map((one) => (one.knitted === session ? plan : one));
  const last = plans.at(-1);
  const waits = last && (!last.knitted || (last.knitted === BY_HAND && same(last, plan)));
  return [...(waits ? plans.slice(0, -1) : plans), plan];
}

/** How far a wearer's pair is by what the machine says: a new pair begins anew, else it never goes back.
 * @param {Plan[]} plans before @param {State} state @param {KnittedPair} pair @returns {State} */
export function reached(plans, state, pair) {
  const known = plans.some((one) => one.knitted === pair.session);
  return known && place(state) > place(pair.state) ? state : pair.state;
}

/**
 * The visits with other plans in the one that has a plan knitted as `session`, else in the last; themselves
 * where that changes nothing.
 * @param {Visit[]} visits at least one @param {(plans: Plan[]) => Plan[]} next @param {string} [session]
 */
export function withPlans(visits, next, session) {
  const of = visits.findLast(({ plans }) => plans?.some((one) => one.knitted === session));
  const visit = (session && of) || visits[visits.length - 1];
  const [before, plans] = [visit.plans ?? [], next(visit.plans ?? [])];
  if (JSON.stringify(before) === JSON.stringify(plans)) return visits;
  return visits.map((one) => (one === visit ? { ...visit, plans } : one));
}

/** From the same, as typed. @param {Plan} one @param {Plan} other */
function same(one, other) {
  const [mine, theirs] = [one, other].map(({ values }) =>
    JSON.stringify(Object.entries(values).sort()),
  );
  return mine === theirs;
}

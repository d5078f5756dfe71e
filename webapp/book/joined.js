/**
 * A wearer as two tabs or two phones have them, put together: the later of each particular, of each field of
 * a visit, and every pair that was knitted.
 * @import { Spelled } from "../storage/types"
 * @import { Deleted, Particulars, Plan, Visit, Wearer } from "./types"
 */
import { change, merge, newest } from "../storage/dated.js";
import { BY_HAND } from "./plans.js";

/** @type {Particulars} */
const NOTHING = {
  label: "",
  state: "to measure",
  due: "",
  price: "",
  asked: "",
  length: "",
  ease: "",
  colours: "",
  allergy: "",
  contact: "",
  deposit: "",
  pairs: "",
};

/** @param {Wearer} wearer @returns {Particulars} */
export function particulars(wearer) {
  const names = /** @type {(keyof Particulars)[]} */ (Object.keys(NOTHING));
  return /** @type {any} */ (Object.fromEntries(names.map((name) => [name, wearer[name]])));
}

/** @param {Wearer} wearer */
function dated(wearer) {
  return { values: { ...particulars(wearer) }, changed: wearer.changed ?? {} };
}

/** When anything of a wearer was written last. @param {Deleted} one */
export function lastOf({ wearer, visits }) {
  const written = visits.map(({ at, changed = {} }) => Math.max(at, newest(changed)));
  return Math.max(wearer.made, newest(wearer.changed ?? {}), ...written);
}

/** Written now. @param {Wearer} wearer @param {Partial<Particulars>} particulars @returns {Wearer} */
export function changedTo(wearer, particulars) {
  const before = dated(wearer);
  const { changed } = change(before, { ...before.values, ...particulars });
  return { ...wearer, ...particulars, changed };
}

/** What is typed on a sheet by now. @param {Visit} visit @param {Visit["values"]} values @returns {Visit} */
export function typedOn({ changed = {}, ...visit }, values) {
  return { ...visit, ...change({ values: visit.values, changed }, values) };
}

/** @param {Wearer} one @param {Wearer} other @returns {Wearer} */
export function joinedWearer(one, other) {
  const { values, changed } = merge(dated(one), dated(other));
  const made = Math.min(one.made, other.made);
  return { ...one, ...NOTHING, .../** @type {Partial<Particulars>} */ (values), made, changed };
}

/** The same visit of the same wearer. @param {Visit} one @param {Visit} other @param {Spelled} spelled @returns {Visit} */
export function joinedVisit(one, other, spelled) {
  const [mine, theirs] = [one, other].map(({ values, changed = {} }) => ({ values, changed }));
  const late = newest(mine.changed) < newest(theirs.changed) ? other : one;
  const plans = joinedPlans(one.plans ?? [], other.plans ?? []);
  const both = { ...one, ...other, ...late, ...merge(mine, theirs, spelled) };
  return plans.length ? { ...both, plans } : both;
}

/** @param {Deleted} one @param {Deleted} other @param {Spelled} spelled @returns {Deleted} */
export function joined(one, other, spelled) {
  return {
    wearer: joinedWearer(one.wearer, other.wearer),
    visits: joinedVisits(one.visits, other.visits, spelled),
  };
}

/** The first one first. @param {Visit[]} one @param {Visit[]} other @param {Spelled} spelled */
export function joinedVisits(one, other, spelled) {
  const visits = new Map(one.map((visit) => [visit.number, visit]));
  for (const visit of other) {
    const same = visits.get(visit.number);
    visits.set(visit.number, same ? joinedVisit(same, visit, spelled) : visit);
  }
  return [...visits.values()].sort((a, b) => a.number - b.number);
}

/** Every pair that was knitted, and what is planned since. @param {Plan[]} one @param {Plan[]} other @returns {Plan[]} */
function joinedPlans(one, other) {
  /** @type {Map<string, Plan>} */
  const knitted = new Map();
  for (const plan of [...one, ...other].filter((each) => each.knitted)) {
    const key = plan.knitted === BY_HAND ? `${BY_HAND} ${plan.at}` : `${plan.knitted}`;
    const same = knitted.get(key);
    if (!same || fuller(plan) > fuller(same)) knitted.set(key, plan);
  }
  const done = [...knitted.values()].sort((a, b) => a.at - b.at);
  const last = done.at(-1)?.at ?? 0;
  const open = [...one, ...other].filter(({ knitted: as, at }) => !as && at > last);
  return [...done, ...open.sort((a, b) => b.at - a.at).slice(0, 1)];
}

/** With sock two's counts rather than without. @param {Plan} plan */
function fuller(plan) {
  const text = JSON.stringify(plan);
  return `${String(text.length).padStart(9, "0")} ${text}`;
}

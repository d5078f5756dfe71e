/**
 * How long a round or row takes her, section by section, and how long is left. Only clocks that never
 * go back count: each happening holds how long it took since the one before in the same visit.
 * @import {Kept, Knit, Pace, Place, Session, Step, TimeLeft} from "./types"
 */
import { apply, counted, fold, section } from "./progress.js";

const PAUSE = 90_000; // ms: whoever takes longer has put the crank down
const ENOUGH = 5; // of her own rounds, before they say more than those of the pair before

/** @param {Step} step */
function key({ part, kind }) {
  return `${part} ${kind === "row" ? "row" : "round"}`;
}

/**
 * Medians, in seconds; where this pair tells little yet, those of the pairs before.
 * @param {Kept} kept @returns {Pace}
 */
export function learned({ session, happenings }) {
  /** @type {Map<string, number[]>} */
  const byKey = new Map();
  for (const { name, ms } of rounds(session, happenings)) {
    if (!name || ms === null || ms > PAUSE) continue;
    if (!byKey.has(name)) byKey.set(name, []);
    byKey.get(name)?.push(ms);
  }
  const pace = { ...session.earlier };
  for (const [name, all] of byKey) {
    if (all.length >= ENOUGH || !(name in pace)) pace[name] = median(all) / 1000;
  }
  return pace;
}

/**
 * What every round and row took that was not taken back, all that was done in between included.
 * @param {Session} session @param {Kept["happenings"]} happenings
 */
function rounds(session, happenings) {
  /** @type {{ name: string, ms: number | null }[]} */
  const found = [];
  let state = fold(session, []);
  /** @type {number | null} */
  let since = 0;
  for (const happening of happenings) {
    const { kind, sock, took } = happening;
    const step = state.socks[sock].steps[state.places[sock].step];
    since = took === null || since === null ? null : since + took;
    if (kind === "done") {
      found.push({ name: step && step.kind !== "do" ? key(step) : "", ms: since });
      since = 0;
    } else if (kind === "back") {
      const gone = found.pop()?.ms ?? null;
      since = since === null || gone === null ? null : since + gone;
    } else if (kind !== "note") {
      if (kind === "jump") found.push({ name: "", ms: null }); // can be taken back too
      since = null;
    }
    state = apply(state, happening);
  }
  return found;
}

/** @param {number[]} values */
function median(values) {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** @param {Knit} knit @param {Place} place @param {Pace} pace @returns {TimeLeft} */
export function timeLeft(knit, place, pace) {
  const left = knit.steps.map((step, at) =>
    at < place.step ? 0 : counted(step) - (at === place.step ? place.done : 0),
  );
  const [first, end] = section(knit, place.step);
  return {
    section: seconds(knit.steps.slice(first, end), left.slice(first, end), pace),
    sock: seconds(knit.steps, left, pace),
  };
}

/** @param {Step[]} steps @param {number[]} left @param {Pace} pace */
function seconds(steps, left, pace) {
  let sum = 0;
  for (const [at, step] of steps.entries()) {
    const each = left[at] ? known(step, pace) : 0;
    if (each === null) return null;
    sum += left[at] * each;
  }
  return sum;
}

/** A section not knitted yet goes like the others that are knitted alike. @param {Step} step @param {Pace} pace */
function known(step, pace) {
  const own = pace[key(step)];
  if (own !== undefined) return own;
  const kind = key(step).split(" ")[1];
  const alike = Object.keys(pace).filter((name) => name.endsWith(kind));
  return alike.length ? median(alike.map((name) => pace[name])) : null;
}

/** What to begin a pair with. @param {Kept[]} before earlier pairs, the newest last @returns {Pace} */
export function fromBefore(before) {
  return Object.assign({}, ...before.map(learned));
}

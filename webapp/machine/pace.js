/**
 * How long a round or row takes her, section by section, and how long is left. Only clocks that never
 * go back count: each happening holds how long it took since the one before in the same visit.
 * @import {Ended, Kept, Knit, Pace, Place, SectionTime, Session, Sock, Step, TimeLeft} from "./types"
 */
import { apply, counted, fold, section } from "./progress.js";

const PAUSE = 90_000; // ms: whoever takes longer has put the crank down
const ENOUGH = 5; // of her own rounds, before they say more than those of the pair before

/** @param {Step} step @returns {"round" | "row"} */
function unit({ kind }) {
  return kind === "row" ? "row" : "round";
}

/** @param {Step} step */
function key(step) {
  return `${step.part} ${unit(step)}`;
}

/** A key's section and unit. @param {string} name @returns {[string, string]} */
function split(name) {
  const at = name.lastIndexOf(" ");
  return [name.slice(0, at), name.slice(at + 1)];
}

/**
 * Medians, in seconds; where this pair tells little yet, those of the pairs before.
 * @param {Kept} kept @returns {Pace}
 */
export function learned({ session, happenings }) {
  /** @type {Map<string, number[]>} */
  const byKey = new Map();
  for (const { step, ms } of rounds(session, happenings)) {
    if (!step || step.kind === "do" || ms === null || ms > PAUSE) continue;
    const name = key(step);
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
 * What stays of a pair's times once it is knitted, by section: those that were timed, and how long a round took
 * in the pairs before where this one does not tell.
 * @param {Kept} kept @returns {Record<string, SectionTime>}
 */
export function timesOf({ session, happenings }) {
  const pace = learned({ session, happenings });
  /** @type {Map<string, SectionTime>} */
  const times = new Map();
  for (const { step, sock, ms } of rounds(session, happenings)) {
    if (!step || ms === null || ms > PAUSE) continue;
    const time = times.get(step.part) ?? { took: [0, 0] };
    time.took[sock] += ms / 1000;
    times.set(step.part, time);
  }
  for (const [name, seconds] of Object.entries(pace)) {
    const [section, by] = split(name);
    const time = times.get(section) ?? { took: [0, 0] };
    times.set(section, { ...time, [by]: Number(seconds.toFixed(2)) });
  }
  for (const time of times.values()) {
    const [one, two] = time.took.map(Math.round);
    time.took = [one, two];
  }
  return Object.fromEntries(times);
}

/**
 * What every round, row and thing took that was not taken back, all that was done in between included; a
 * jump can be taken back too, and has no step.
 * @param {Session} session @param {Kept["happenings"]} happenings
 */
function rounds(session, happenings) {
  /** @type {{ step?: Step, sock: Sock, ms: number | null }[]} */
  const found = [];
  let state = fold(session, []);
  /** @type {number | null} */
  let since = 0;
  for (const happening of happenings) {
    const { kind, sock, took } = happening;
    const step = state.socks[sock].steps[state.places[sock].step];
    since = took === null || since === null ? null : since + took;
    if (kind === "done") {
      found.push({ step, sock, ms: since });
      since = 0;
    } else if (kind === "back") {
      const gone = found.pop()?.ms ?? null;
      since = since === null || gone === null ? null : since + gone;
    } else if (kind !== "note") {
      if (kind === "jump") found.push({ sock, ms: null });
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

/** What to begin a pair with. @param {Pace[]} before of earlier pairs, the newest last @returns {Pace} */
export function fromBefore(before) {
  return Object.assign({}, ...before);
}

/** Seconds that both socks of a pair took, pauses left out. @param {Ended} ended @returns {number} */
export function tookOf({ times }) {
  return Object.values(times).reduce((sum, { took: [one, two] }) => sum + one + two, 0);
}

/** Of a pair that is knitted. @param {Ended} ended @returns {Pace} */
export function paceOf({ times }) {
  const each = Object.entries(times).flatMap(([section, { round, row }]) => [
    [`${section} round`, round],
    [`${section} row`, row],
  ]);
  return Object.fromEntries(each.filter(([, seconds]) => seconds !== undefined));
}

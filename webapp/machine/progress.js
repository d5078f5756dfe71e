/**
 * Where a sock stands: what happened in, place out. Nothing here knows a clock, a screen or storage.
 * @import {Happening, Knit, Place, Session, Sock, State, Step, View} from "./types"
 */

const UNDO = 10;
/** @type {Place} */
const START = { step: 0, done: 0 };

/** Taps a step takes. @param {Step} step */
export function size(step) {
  return step.kind === "rounds" ? step.rounds : 1;
}

/** Rounds or rows in a step: what is done by hand has none. @param {Step} step */
export function counted(step) {
  return step.kind === "do" ? 0 : size(step);
}

/** Whether another sock follows it on the machine, so that it hangs there once it is knitted. @param {Knit} knit */
export function hangs({ steps }) {
  return steps.at(-1)?.part === "between";
}

/** The place one tap on; the end stays the end. @param {Knit} knit @param {Place} place @returns {Place} */
export function after(knit, { step, done }) {
  if (step >= knit.steps.length) return { step: knit.steps.length, done: 0 };
  return done + 1 < size(knit.steps[step]) ? { step, done: done + 1 } : { step: step + 1, done: 0 };
}

/**
 * The first step of the section that holds a step, and the one after its last.
 * @param {Knit} knit @param {number} step @returns {[number, number]}
 */
export function section({ steps }, step) {
  if (step >= steps.length) return [steps.length, steps.length];
  const { part } = steps[step];
  let [first, end] = [step, step + 1];
  while (steps[first - 1]?.part === part) first -= 1;
  while (steps[end]?.part === part) end += 1;
  return [first, end];
}

/** What a section is counted in. @param {Step[]} steps @returns {View["unit"]} */
function unitOf(steps) {
  if (steps.some(({ kind }) => kind === "row")) return "row";
  return steps.some(({ kind }) => kind === "rounds") ? "round" : "thing";
}

/** @param {Knit} knit @param {Place} place @returns {View} */
export function view(knit, place) {
  const { steps } = knit;
  const step = steps[place.step];
  const [first, end] = section(knit, place.step);
  const inside = steps.slice(first, end);
  const unit = unitOf(inside);
  const sum = unit === "thing" ? total(inside, size) : total(inside, counted);
  const done =
    total(steps.slice(first, place.step), unit === "thing" ? size : counted) + place.done;
  const whole = total(steps, counted);
  const knitted = total(steps.slice(0, place.step), counted) + place.done;
  return {
    step,
    title: step?.title ?? "",
    unit,
    done,
    total: sum,
    left: sum - done,
    stepLeft: step ? counted(step) - place.done : 0,
    next: steps[place.step + 1]?.text ?? "",
    share: whole ? knitted / whole : 1,
    ended: !step,
  };
}

/** @param {Step[]} steps @param {(step: Step) => number} of */
function total(steps, of) {
  return steps.reduce((sum, step) => sum + of(step), 0);
}

/** The place in these counts that is nearest to a wished one. @param {Knit} knit @param {Place} place @returns {Place} */
export function within(knit, { step, done }) {
  const at = Math.max(0, Math.min(Math.trunc(step) || 0, knit.steps.length));
  const most = at < knit.steps.length ? size(knit.steps[at]) - 1 : 0;
  return { step: at, done: Math.max(0, Math.min(Math.trunc(done) || 0, most)) };
}

/**
 * Where a sock stands when its counts become others: the same step of the same section, and as many
 * rounds into it, as far as there are so many.
 * @param {Knit} from @param {Knit} to @param {Place} place @returns {Place}
 */
export function moved(from, to, place) {
  const step = from.steps[place.step];
  if (!step) return { step: to.steps.length, done: 0 };
  // A row is the same row, however much is done by hand before it.
  if (step.kind === "row") {
    const row = to.steps.findIndex(
      (one) => one.kind === "row" && one.part === step.part && one.row === step.row,
    );
    if (row >= 0) return { step: row, done: 0 };
  }
  const [first] = section(from, place.step);
  const start = to.steps.findIndex(({ part }) => part === step.part);
  if (start < 0) return within(to, place);
  const [, end] = section(to, start);
  const at = start + place.step - first;
  if (at >= end) return { step: end, done: 0 };
  // More rounds than the new counts ask for: that step is done.
  return place.done < size(to.steps[at])
    ? { step: at, done: place.done }
    : { step: at + 1, done: 0 };
}

/** The state before anything has happened. @param {Session} session @returns {State} */
function begun({ socks, measured }) {
  const empty = socks.map(({ steps }) => !steps.length);
  return {
    sock: 0,
    places: [START, START],
    undo: [],
    notes: [],
    yarn: ["", ""],
    socks,
    measured,
    ended: [empty[0], empty[1]],
    last: 0,
  };
}

/** The state after one happening more. @param {State} state @param {Happening} happening @returns {State} */
export function apply(state, { kind, number, sock, place, text, knit, measured }) {
  const here = state.places[sock];
  const next = { ...state, last: number };
  if (kind === "lost") return next;
  if (kind === "note") {
    next.notes = [...state.notes, { sock, place: here, text: text ?? "", number }];
    return next;
  }
  if (kind === "yarn") {
    next.yarn = put(state.yarn, sock, text ?? "");
    return next;
  }
  if (kind === "plan") {
    next.socks = put(state.socks, sock, knit ?? state.socks[sock]);
    next.measured = measured ?? state.measured;
  } else next.sock = sock;
  // Places on the other sock, or of other counts, are no way back on this one.
  if (next.sock !== state.sock || (kind === "plan" && sock === state.sock)) next.undo = [];
  if (kind === "back") next.undo = next.undo.slice(0, -1);
  if (kind === "done" || kind === "jump") next.undo = [...next.undo, here].slice(-UNDO);
  const stands = within(next.socks[sock], place ?? here);
  next.places = put(state.places, sock, stands);
  next.ended = put(state.ended, sock, stands.step >= next.socks[sock].steps.length);
  return next;
}

/** The state after all that happened. @param {Session} session @param {Happening[]} happenings @returns {State} */
export function fold(session, happenings) {
  return happenings.reduce(apply, begun(session));
}

/** @template T @param {[T, T]} pair @param {Sock} sock @param {T} value @returns {[T, T]} */
function put(pair, sock, value) {
  return sock ? [pair[0], value] : [value, pair[1]];
}

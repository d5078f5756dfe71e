/**
 * A pair that is knitted, as it is kept from then on: what is learnt from it, and no longer every tap. It
 * never takes more than `MOST` bytes: a knitter has thousands of pairs, and their copies go by mail.
 * @import {Ended, FirstSock, Kept, State} from "./types"
 */
import { short } from "../page/short.js";
import { timesOf } from "./pace.js";
import { fold, view } from "./progress.js";

export const MOST = 3000; // bytes as JSON
const YARN = 160; // characters of what is told of it, or of whose instructions it is from
const FIGURE = 40; // and of what was typed of sock one

/** Whether a pair is knitted; sock one need not have been on this counter. @param {State} state */
export function over({ ended, places: [one] }) {
  return ended[1] && (ended[0] || (!one.step && !one.done));
}

/** @param {Kept} kept @returns {Ended | null} null while it is under way */
export function endedFrom({ session, happenings }) {
  const state = fold(session, happenings);
  if (!over(state)) return null;
  const { id, began, label, wearer, who, request, socks: planned } = session;
  const [one, two] = [planned[0], state.socks[1]].map(({ counted }) => counted);
  const same = JSON.stringify(one?.figures) === JSON.stringify(two?.figures);
  return fitting({
    id,
    began,
    ended: happenings.at(-1)?.at ?? began,
    label: short(label),
    ...(wearer === undefined ? {} : { wearer }),
    ...(who ? { who: short(who) } : {}),
    ...(planned[0].origin ? { origin: cut(planned[0].origin, YARN) } : {}),
    request,
    // What the first was counted for holds for both.
    counted: (same ? [one] : [one, { ...two, facts: [] }]).filter((each) => each?.figures),
    ...(state.measured ? { measured: brief(state.measured) } : {}),
    times: timesOf({ session, happenings }),
    notes: state.notes.map(({ sock, place, text }) => {
      const { step, done } = view(state.socks[sock], place);
      return { sock, section: step?.part ?? "", done, text };
    }),
    yarn: [cut(state.yarn[0], YARN), cut(state.yarn[1], YARN)],
    last: state.last,
  });
}

/**
 * Nothing of a wearer who is deleted: neither their words and measures nor what was knitted to them.
 * @param {Ended} ended @returns {Ended}
 */
export function withoutWearer({ who, measured, notes, request, counted, ...rest }) {
  const figures = counted.map((one) => ({ ...one, facts: [] }));
  return { ...rest, request: { units: request.units }, counted: figures, notes: [] };
}

/** What goes where there is no room, in turn: first what the plan or the sheet says too, her own words last. */
const LESS = [
  /** @param {Ended} one @returns {Ended} */
  (one) => ({ ...one, counted: one.counted.map((each) => ({ ...each, facts: [] })) }),
  /** @param {Ended} one @returns {Ended} */
  ({ request: { stock, ...request }, ...one }) => ({ ...one, request }),
  /** @param {Ended} one @returns {Ended} */
  ({ request, ...one }) => {
    const { swatches, ...fabric } = /** @type {any} */ (request.fabric ?? {});
    return { ...one, request: swatches ? { ...request, fabric } : request };
  },
  ...[200, 100, 50].map((most) => (/** @type {Ended} */ one) => shortened(one, most)),
  /** @param {Ended} one @returns {Ended} */
  (one) => ({ ...one, request: { units: one.request.units } }),
  ...[30, 15, 5, 0].map((many) => (/** @type {Ended} */ one) => ({
    ...one,
    notes: one.notes.slice(0, many),
  })),
  /** @param {Ended} one @returns {Ended} */
  (one) => ({ ...one, counted: [], times: {} }),
];

/** @param {Ended} whole @returns {Ended} */
function fitting(whole) {
  let one = whole;
  for (const less of LESS) {
    if (bytes(one) <= MOST) break;
    one = less(one);
  }
  return one;
}

/** @param {Ended} one @param {number} most characters a note @returns {Ended} */
function shortened(one, most) {
  const notes = one.notes.map((note) => ({ ...note, text: cut(note.text, most) }));
  return { ...one, notes, cut: true };
}

/** @param {FirstSock} measured @returns {FirstSock} */
function brief({ foot_rounds, length, unwashed_length, flat_width, like }) {
  return {
    foot_rounds: cut(foot_rounds, FIGURE),
    length: cut(length, FIGURE),
    ...(unwashed_length ? { unwashed_length: cut(unwashed_length, FIGURE) } : {}),
    ...(flat_width ? { flat_width: cut(flat_width, FIGURE) } : {}),
    ...(like ? { like: cut(like, FIGURE) } : {}),
  };
}

/** @param {string} text @param {number} most characters */
function cut(text, most) {
  const characters = Array.from(text);
  return characters.length > most ? `${characters.slice(0, most - 1).join("")}…` : text;
}

/** @param {Ended} one */
export function bytes(one) {
  return new TextEncoder().encode(JSON.stringify(one)).length;
}

/**
 * What the phone or a file holds of a pair, made sure of before anything is done with it: a damaged entry
 * must not take the others with it.
 * @import {Ended, Gone, Happening, Session} from "./types"
 */
import { countedOf, firstSockOf } from "../page/counted_of.js";
import { each } from "../page/needles.js";
import { requestAsKept } from "../page/spelled.js";

const KINDS = ["done", "back", "jump", "note", "turn", "plan", "yarn", "lost"];
/** Rounds, rows, steps or things that happened; needles are far fewer, and are drawn. */
export const MOST = 100_000;
const SLOTS = 1000;
const ID = /^[\w-]{1,64}$/;

/** @param {any} raw @returns {Session} the same @throws {TypeError} where it is none */
export function sessionOf(raw) {
  sure(raw, Object);
  const { id, began, label, request, socks, earlier = {}, away = false, wearer, who = "" } = raw;
  sure(typeof id === "string" && ID.test(id));
  sure(Number.isFinite(began) && typeof label === "string");
  sure(request, Object);
  sure(Array.isArray(socks) && socks.length === 2 && typeof away === "boolean");
  sure(typeof who === "string");
  const { cautions = [] } = raw;
  sure(Array.isArray(cautions) && cautions.every((one) => typeof one === "string"));
  socks.forEach(knit);
  if (raw.measured !== undefined) firstSockOf(raw.measured);
  if (wearer !== undefined) {
    sure(typeof wearer === "string"); // the book is told what was counted for them
    for (const { counted } of socks) countedOf(counted);
  }
  sure(earlier, Object);
  sure(Object.values(earlier).every(Number.isFinite));
  return { ...raw, request: requestAsKept(request) };
}

/** @param {any} raw @returns {Happening} the same @throws {TypeError} where it is none */
export function happeningOf(raw) {
  sure(raw, Object);
  const { session, number, sock, kind, place, text = "", took, at } = raw;
  sure(typeof session === "string" && whole(number) && number > 0 && KINDS.includes(kind));
  sure(sock === 0 || sock === 1);
  sure(typeof text === "string" && (took === null || Number.isFinite(took)));
  sure(Number.isFinite(at));
  if (place !== undefined) sure(whole(place?.step) && whole(place.done));
  if (raw.knit !== undefined) knit(raw.knit);
  if (raw.measured !== undefined) firstSockOf(raw.measured);
  return raw;
}

/** @param {any} raw @returns {Ended} the same @throws {TypeError} where it is none */
export function endedOf(raw) {
  sure(raw, Object);
  const { id, began, ended, label, wearer = "", who = "", origin = "" } = raw;
  const { request, counted, cut = true } = raw;
  sure([id, label, wearer, who, origin].every((one) => typeof one === "string") && ID.test(id));
  sure(Number.isFinite(began) && Number.isFinite(ended) && whole(raw.last) && cut === true);
  sure(request, Object);
  sure(Array.isArray(counted) && counted.length <= 2);
  counted.forEach(countedOf);
  if (raw.measured !== undefined) firstSockOf(raw.measured);
  sure(raw.times, Object);
  for (const { round = 0, row = 0, took } of Object.values(raw.times)) {
    sure(Array.isArray(took) && took.length === 2);
    sure([round, row, ...took].every((one) => Number.isFinite(one) && one >= 0));
  }
  sure(Array.isArray(raw.notes) && Array.isArray(raw.yarn) && raw.yarn.length === 2);
  for (const { sock, section, done, text } of raw.notes) {
    sure((sock === 0 || sock === 1) && whole(done));
    sure(typeof section === "string" && typeof text === "string");
  }
  sure(raw.yarn.every((/** @type {unknown} */ one) => typeof one === "string"));
  return raw;
}

/** @param {any} raw @returns {Gone} the same @throws {TypeError} where it is none */
export function goneOf(raw) {
  sure(typeof raw?.id === "string" && ID.test(raw.id) && Number.isFinite(raw.at));
  return raw;
}

/** What stands where something happened that cannot be read. @param {string} session @param {number} number @returns {Happening} */
export function lost(session, number) {
  return { session, number, sock: 0, kind: "lost", took: null, at: 0 };
}

/** @param {any} raw */
function knit(raw) {
  const { slots, words, origin = "", foot_rounds, steps, pockets, every = null } = raw ?? {};
  sure(whole(slots, SLOTS) && texts([words, origin]) && whole(foot_rounds));
  sure(every === null || (whole(every) && every > 0));
  sure(pockets, Object);
  for (const { needles, first_slot, left, rows } of Object.values(pockets)) {
    sure(whole(needles, SLOTS) && Number.isInteger(first_slot) && whole(left) && whole(rows));
  }
  sure(Array.isArray(steps));
  for (const one of steps) step(one, pockets);
}

/** @param {any} raw @param {object} pockets of its sock */
function step(raw, pockets) {
  const { part, title, text, tension = "", kind } = raw ?? {};
  sure([part, title, text, tension].every((one) => typeof one === "string"));
  if (kind === "rounds") return sure(whole(raw.rounds));
  if (kind !== "row") return sure(kind === "do" && texts(raw.ticks ?? []));
  sure(Object.hasOwn(pockets, part)); // the cylinder is drawn from it
  const { row, direction, half, knits, in_work, back, hold, remind } = raw;
  sure([row, in_work, ...each(back), ...each(hold), ...each(raw.joins)].every((one) => whole(one)));
  sure(["right", "left"].includes(direction) && ["narrow", "widen"].includes(half));
  sure(Array.isArray(knits) && knits.length === 2 && knits.every((one) => whole(one)));
  sure(
    [raw.back_where ?? "", raw.hold_where ?? "", raw.joins_where ?? ""].every(
      (one) => typeof one === "string",
    ),
  );
  sure(texts(remind));
}

/** @param {unknown} all */
function texts(all) {
  return Array.isArray(all) && all.every((one) => typeof one === "string");
}

/** @param {unknown} number @param {number} [most] */
function whole(number, most = MOST) {
  return Number.isInteger(number) && Number(number) >= 0 && Number(number) <= most;
}

/** @param {unknown} holds @param {ObjectConstructor} [kind] where it is to be an object and no list */
function sure(holds, kind) {
  const good = kind ? typeof holds === "object" && holds && !Array.isArray(holds) : holds;
  if (!good) throw new TypeError("no such record");
}

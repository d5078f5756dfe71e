/**
 * What a count brings with it: five to go, a place to stop the crank, another section, a reminder.
 * Told in one place, so that sound, vibration, speech, screen and live region say the same.
 * @import {Knit, Place, Sock, Step, View} from "./types"
 */
import * as say from "words/machine";
import { each, listed } from "../page/needles.js";
import { after, counted, hangs, view } from "./progress.js";

const FIVE = 5;

/**
 * @typedef {object} Moment
 * @property {"count" | "five" | "stop"} kind
 * @property {string} words for those who listen; "" where nothing is to be said
 * @property {string} spoken what a spoken count says
 */

/** Rounds or rows until the crank must stop: something by hand, or another section. @param {Knit} knit @param {Place} place */
export function untilStop({ steps }, { step, done }) {
  const part = steps[step]?.part;
  let left = -done;
  for (let at = step; steps[at] && steps[at].kind !== "do" && steps[at].part === part; at += 1) {
    left += counted(steps[at]);
  }
  return Math.max(0, left);
}

/** A sock as messages name it. @param {Sock} sock */
export function which(sock) {
  return sock ? "two" : "one";
}

/** What a section is counted in, as messages name it. @param {View["unit"]} unit */
export function inUnit(unit) {
  return unit === "row" ? "row" : "round";
}

/**
 * @param {Knit} knit @param {Place} before @param {Place} now
 * @param {boolean} onward false where she went to this place, or back
 * @returns {Moment}
 */
export function moment(knit, before, now, onward) {
  const [was, is] = [view(knit, before), view(knit, now)];
  const step = is.step;
  if (!step) return told("stop", [hangs(knit) ? say.sockHangs : say.sockOff], []);
  // A row says what to do, for no two are alike; a round, where it is spoken, how many are left.
  const row = step.kind === "row" ? [step.text] : [];
  const round = step.kind === "rounds" ? [`${is.left}`] : [];
  if (!onward)
    return told("count", [say.inSection({ section: step.title, where: where(knit, now) })], []);
  const other = was.step?.part !== step.part;
  const cranked = was.step && was.step.kind !== "do";
  const section = other && was.title ? say.sectionDone({ section: was.title }) : "";
  const reminders = step.kind === "row" ? step.remind : [];
  if (other || step.kind === "do") {
    const stop = cranked ? "stop" : "count";
    return told(stop, [section, other ? named(step) : step.text, ...ticks(step), ...reminders], []);
  }
  const five = untilStop(knit, now) === FIVE && cranked && untilStop(knit, before) > FIVE;
  if (!five) return told("count", [...reminders, ...row], round);
  return told("five", [say.toGo({ left: FIVE, unit: inUnit(is.unit) }), ...reminders, ...row], []);
}

/** What is done at one stop, thing by thing; none where it is one. @param {Step} step @returns {string[]} */
export function ticks(step) {
  return (step.kind === "do" && step.ticks) || [];
}

/** @param {Moment["kind"]} kind @param {string[]} words @param {string[]} more what only a spoken count adds @returns {Moment} */
function told(kind, words, more) {
  return { kind, words: said(words), spoken: said([...words, ...more]) };
}

/** A place in words: how far into its section. @param {Knit} knit @param {Place} place */
export function where(knit, place) {
  const { unit, done, total, ended, step } = view(knit, place);
  if (ended) return hangs(knit) ? say.hangsBelow : say.offMachine;
  if (unit === "thing") return step?.text ?? "";
  return say.doneOf({ done, total, unit: inUnit(unit) });
}

/** What comes after this step, short: a row's own words are long. @param {Knit} knit @param {Place} place */
export function nextWords(knit, place) {
  const [step, next] = [knit.steps[place.step], knit.steps[place.step + 1]];
  if (!step) return "";
  if (!next) return say.sockDone;
  if (next.kind !== "row") {
    // Of a list its first thing too: it says where the crank stops.
    const text = said([next.text, ticks(next)[0]]);
    return next.part === step.part ? text : named({ ...next, text });
  }
  const { back, hold, direction } = next;
  const moves = back ? (hold ? "both" : "back") : hold ? "hold" : "none";
  const [backs, holds] = [each(back).length, each(hold).length];
  return say.nextRow({ moves, direction, back: listed(back), backs, hold: listed(hold), holds });
}

/** What to do, with its section before it where the words do not begin with that. @param {Step} step */
function named({ title, text }) {
  return text.startsWith(`${title}:`) ? text : say.sectionToDo({ section: title, todo: text });
}

/** Whether one tap does not lead from there to here. @param {Knit} knit @param {Place} from @param {Place} to */
export function jumped(knit, from, to) {
  const { step, done } = after(knit, from);
  return step !== to.step || done !== to.done;
}

/**
 * What taking back undoes: one count, or a jump with the place it came from.
 * @param {Knit} knit @param {Place} from where the sock would stand again @param {Place} now
 * @returns {{ what: "jump" | "step" | "row" | "round", section: string, where: string }}
 */
export function taken(knit, from, now) {
  const { step, title } = view(knit, from);
  const place = { section: title, where: where(knit, from) };
  if (jumped(knit, from, now)) return { what: "jump", ...place };
  const what = step?.kind === "do" ? "step" : step?.kind === "row" ? "row" : "round";
  return { what, ...place };
}

/** @param {(string | undefined)[]} words */
function said(words) {
  return words.filter(Boolean).join(" ");
}

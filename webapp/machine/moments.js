/**
 * What a count brings with it: five to go, a place to stop the crank, another section, a reminder.
 * Told in one place, so that sound, vibration, speech, screen and live region say the same.
 * @import {Knit, Place} from "./types"
 */
import { counted, view } from "./progress.js";

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

/** @param {number} number @param {string} unit */
export function plural(number, unit) {
  return `${number} ${number === 1 ? unit : `${unit}s`}`;
}

/**
 * @param {Knit} knit @param {Place} before @param {Place} now
 * @param {boolean} onward false where she went to this place, or back
 * @returns {Moment}
 */
export function moment(knit, before, now, onward) {
  const [was, is] = [view(knit, before), view(knit, now)];
  const step = is.step;
  if (!step) return told("stop", ["The sock is off the machine."], []);
  // Each count says how many are left, each row what to do.
  const each = step.kind === "row" ? step.text : step.kind === "rounds" ? `${is.left}` : "";
  if (!onward) return told("count", [`${step.title}. ${where(knit, now)}`], []);
  const other = was.step?.part !== step.part;
  const cranked = was.step && was.step.kind !== "do";
  const section = other && was.title ? `${was.title} done. ${step.title}.` : "";
  const reminders = step.kind === "row" ? step.remind : [];
  if (other || step.kind === "do") {
    const stop = cranked ? "stop" : "count";
    return told(stop, [section, step.text, ...reminders], []);
  }
  const five = untilStop(knit, now) === FIVE && cranked && untilStop(knit, before) > FIVE;
  if (!five) return told("count", reminders, [each]);
  const rows = step.kind === "row" ? [each] : [];
  return told("five", [`${plural(FIVE, is.unit)} to go.`, ...reminders], rows);
}

/** @param {Moment["kind"]} kind @param {string[]} words @param {string[]} more what only a spoken count adds @returns {Moment} */
function told(kind, words, more) {
  return { kind, words: said(words), spoken: said([...words, ...more]) };
}

/** A place in words: how far into its section. @param {Knit} knit @param {Place} place */
export function where(knit, place) {
  const { unit, done, total, ended, step } = view(knit, place);
  if (ended) return "Off the machine";
  if (unit === "thing") return step?.text ?? "";
  return `${done} of ${plural(total, unit)} done`;
}

/** What comes after this step, short: a row's own words are long. @param {Knit} knit @param {Place} place */
export function nextWords(knit, place) {
  const [step, next] = [knit.steps[place.step], knit.steps[place.step + 1]];
  if (!step) return "";
  if (!next) return "the sock is done.";
  const section = next.part === step.part ? "" : `${next.title}. `;
  if (next.kind !== "row") return `${section}${next.text}`;
  const hold = next.hold ? `, then lift needle ${next.hold}` : "";
  return `${section}${next.back ? `needle ${next.back} back, then ` : ""}to the ${next.direction}${hold}.`;
}

/** @param {string[]} words */
function said(words) {
  return words.filter(Boolean).join(" ");
}

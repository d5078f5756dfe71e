/** Days as the phone's owner writes them. */
import * as say from "words/book";

const SHOWN = new Intl.DateTimeFormat(document.documentElement.lang, {
  weekday: "short",
  day: "numeric",
  month: "short",
});
const WHOLE = new Intl.DateTimeFormat(document.documentElement.lang, { dateStyle: "long" });

/** Nobody promises a pair before or after these. */
export const FIRST = "2000-01-01";
export const LAST = "2199-12-31";

/**
 * What is wrong with a day that somebody wrote, and the day that was likely meant.
 * @param {string} due like 2026-11-28, or ""
 * @returns {{ message: string, offer?: string } | null} null where it is a day within the limits
 */
export function wrongDay(due) {
  if (!due || (due.length === LAST.length && due >= FIRST && due <= LAST)) return null;
  const [, year = due, rest = ""] = /^(\d+)(-\d\d-\d\d)$/.exec(due) ?? [];
  const likely = year.slice(0, 4) + rest;
  const offer = rest && year.length > 4 && !wrongDay(likely) ? likely : undefined;
  const message = say.wrongYear({ year });
  return { message, offer };
}

/** @param {string} due like 2026-11-28 */
export function dueShown(due) {
  const day = new Date(`${due}T00:00`);
  if (wrongDay(due) || Number.isNaN(day.getTime())) return due;
  return (due.slice(0, 4) === today().slice(0, 4) ? SHOWN : WHOLE).format(day);
}

/** @param {string} day like 2026-11-28 */
export function dayShown(day) {
  const at = new Date(`${day}T00:00`);
  return Number.isNaN(at.getTime()) ? day : WHOLE.format(at);
}

/** @param {number} at ms */
export function dayOf(at) {
  return WHOLE.format(at);
}

/** The day it is here, like 2026-11-28. */
export function today() {
  const now = new Date();
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

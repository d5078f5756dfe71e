/** Days as the phone's owner writes them. */

const SHOWN = new Intl.DateTimeFormat(undefined, {
  weekday: "short",
  day: "numeric",
  month: "short",
});
const WHOLE = new Intl.DateTimeFormat(undefined, { dateStyle: "long" });

/** @param {string} due like 2026-11-28 */
export function dueShown(due) {
  const day = new Date(`${due}T00:00`);
  if (Number.isNaN(day.getTime())) return due;
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

/**
 * On the installed page's icon (W3C, Badging API): how many pairs are promised by today, or by a day that is
 * past, and are not handed over.
 */
import { peeked } from "../storage/peeked.js";

/** @typedef {{ setAppBadge?: (count: number) => Promise<void>, clearAppBadge?: () => Promise<void> }} Icon */

const FIRST = "2000-01-01"; // nobody promises a pair before: it is a day to correct

/** Tell it now, and whenever the page is left. */
export function tellDue() {
  if (!("setAppBadge" in navigator) || !matchMedia("(display-mode: standalone)").matches) return;
  const tell = async () => {
    const icon = /** @type {Icon} */ (navigator);
    const due = await count();
    await (due ? icon.setAppBadge?.(due) : icon.clearAppBadge?.());
  };
  const told = () => tell().catch(() => {}); // the platform has none, or refuses it
  document.addEventListener("visibilitychange", told);
  told();
}

async function count() {
  const all = await peeked("heelwise.book", "wearers", (store) => store.getAll());
  const today = day();
  return (all ?? []).filter(
    (/** @type {{ due?: string, state: string }} */ { due = "", state }) =>
      due.length === FIRST.length && due >= FIRST && due <= today && state !== "handed over",
  ).length;
}

/** The day it is here, like 2026-11-28. */
function day() {
  const now = new Date();
  now.setMinutes(now.getMinutes() - now.getTimezoneOffset());
  return now.toISOString().slice(0, FIRST.length);
}

/** When the last copy was saved to a file, and whether it is time for another. Kept on the phone. */
import { dayOf, today } from "./days.js";

const SAVED = "heelwise.copied";
const PUT_OFF = "heelwise.copy_put_off";
const DAY = 24 * 60 * 60 * 1000; // ms
const MANY = 10; // wearers: a good part of a day at a fair

/** In words. */
export function lastCopy() {
  const at = saved();
  return at ? `Last copy: ${dayOf(at)}.` : "No copy was saved yet.";
}

/** One was saved just now. */
export function remember() {
  keep(SAVED, String(Date.now()));
}

/** Not today. */
export function putOff() {
  keep(PUT_OFF, today());
}

/** What would be lost with the phone, in words; "" where that is little, or she has put it off. @param {{ made: number }[]} wearers */
export function missing(wearers) {
  const at = saved();
  if (!wearers.length || read(PUT_OFF) === today()) return "";
  const fresh = wearers.filter(({ made }) => made > at);
  const waiting = fresh.some(({ made }) => Date.now() - made > DAY);
  if (fresh.length >= MANY || waiting) {
    const many = fresh.length === 1 ? "One wearer is" : `${fresh.length} wearers are`;
    return `${many} in no copy yet: with the phone, they would be lost.`;
  }
  return at && Date.now() - at > 7 * DAY ? "The last copy is more than a week old." : "";
}

function saved() {
  return Number(read(SAVED)) || 0;
}

/** @param {string} key */
function read(key) {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

/** @param {string} key @param {string} text */
function keep(key, text) {
  try {
    localStorage.setItem(key, text);
  } catch {
    // It is then not known next time.
  }
}

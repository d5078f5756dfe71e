/**
 * How far what comes over the line has come: for the calculator, and then for what is stored on the phone.
 * @import {Engine} from "../worker/client.js"
 */
import * as say from "words/progress";

const KNOWN_MS = 3000; // so long must it have come before a time left is told
const SLOW_S = 8; // less to wait is not worth a sentence
const MEGABYTE = 1e6;

const inMegabytes = new Intl.NumberFormat(document.documentElement.lang, {
  minimumFractionDigits: 1,
  maximumFractionDigits: 1,
});

/** @param {number} bytes */
export function megabytes(bytes) {
  return inMegabytes.format(bytes / MEGABYTE);
}

/** Say on the line above the work how far the calculator is. @param {Engine} engine */
export function showComing(engine) {
  const waiting = document.getElementById("waiting");
  const { textContent: words } = waiting ?? {};
  /** @type {{ at: number, come: number } | undefined} */
  let first;
  engine.addEventListener("progress", (event) => {
    const { come, of } = /** @type {CustomEvent} */ (event).detail;
    const at = performance.now();
    if (!first || come < first.come) first = { at, come };
    const seconds = left(first, { at, come }, of);
    const told = { come: megabytes(come), of: megabytes(of) };
    if (waiting) {
      waiting.textContent =
        seconds === null ? say.calculatorComes(told) : say.calculatorLeft({ ...told, seconds });
    }
    const notYet = document.getElementById("not-yet");
    if (notYet && seconds !== null && seconds >= SLOW_S)
      notYet.textContent = say.meanwhile({ seconds });
  });
  engine.addEventListener("state", () => {
    first = undefined;
    if (waiting) waiting.textContent = words ?? "";
  });
  // Where it was given up, it goes on by itself as soon as there is a line again.
  addEventListener("online", () => engine.state === "failed" && engine.start());
}

/**
 * Whole seconds until all is here at the rate so far, null while that cannot be told.
 * @param {{ at: number, come: number }} first @param {{ at: number, come: number }} now @param {number} of
 */
function left(first, now, of) {
  const taken = now.at - first.at;
  const came = now.come - first.come;
  if (taken < KNOWN_MS || !came) return null;
  return Math.max(1, Math.round(((of - now.come) * taken) / came / 1000));
}

/** A line at the foot of the page, "" for none. @param {string} words @returns {HTMLElement} */
export function atFoot(words) {
  const found = document.getElementById("storing");
  const line = found ?? document.createElement("p");
  line.id = "storing";
  line.textContent = words;
  line.hidden = !words;
  if (!found) document.getElementById("stored-line")?.before(line);
  return line;
}

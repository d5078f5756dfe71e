/**
 * A tape that is slid to a measure, for hands with wool on them: an input of the browser's own over the few
 * inches round what is typed or guessed. It writes as one would write: 24.6, or 9 5/8. It comes behind the
 * first screen, with what stores the site.
 */

/** Steps in a unit, how far it reaches to either side, and where it begins where nothing is known. */
const TAPES = { cm: { per: 10, reach: 50, from: 240 }, in: { per: 8, reach: 20, from: 76 } };
const TYPED = /^\s*(\d+(?:[.,]\d+)?)?\s*(?:(\d+)\/(\d+))?\s*$/; // a bare number
const GUESSED = /(\d+(?:\.\d+)?)?(?:\s*(\d+)\/(\d+))?\s(?:cm|in)$/;

/** Each field's own: it keeps still under the finger. @type {WeakMap<HTMLInputElement, HTMLInputElement>} */
const tapes = new WeakMap();

/**
 * @param {HTMLInputElement} field @param {"cm" | "in"} unit @param {string} label
 * @returns {HTMLInputElement | null} none beside what is no bare number
 */
export function slidingTape(field, unit, label) {
  const { per, reach, from } = TAPES[unit];
  const typed = read(TYPED, field.value, per);
  if (typed === null) return null;
  const at = typed || read(GUESSED, field.placeholder, per) || from;
  const tape = tapes.get(field) ?? made(field, label);
  if (
    tape.dataset.unit !== unit ||
    tape.dataset.free ||
    at < Number(tape.min) ||
    at > Number(tape.max)
  ) {
    tape.dataset.unit = unit;
    delete tape.dataset.free;
    tape.min = String(Math.max(1, at - reach));
    tape.max = String(at + reach);
  }
  tape.value = String(at);
  tape.setAttribute("aria-valuetext", `${written(at, per, unit)} ${unit}`);
  return tape;
}

/** @param {HTMLInputElement} field @param {string} label */
function made(field, label) {
  const tape = document.createElement("input");
  tape.type = "range";
  tape.className = "slid";
  tape.setAttribute("aria-label", label);
  tape.addEventListener("input", () => {
    const unit = tape.dataset.unit === "in" ? "in" : "cm";
    field.value = written(Number(tape.value), TAPES[unit].per, unit);
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  });
  tape.addEventListener("change", () => {
    tape.dataset.free = "yes"; // let go, it lies round what it says
  });
  tapes.set(field, tape);
  return tape;
}

/** In steps; 0 where nothing is written, null for what is no bare number. @param {RegExp} shape @param {string} text @param {number} per */
function read(shape, text, per) {
  const found = shape.exec(text);
  if (!found) return text.trim() ? null : 0;
  const [, whole = "0", above = "0", below = "1"] = found;
  return Math.round((Number(whole.replace(",", ".")) + Number(above) / Number(below)) * per);
}

/** @param {number} steps @param {number} per @param {"cm" | "in"} unit */
function written(steps, per, unit) {
  if (unit === "cm") return String(steps / per);
  const [whole, rest] = [Math.floor(steps / per), steps % per];
  const by = [8, 4, 2].find((part) => rest % part === 0 && rest) ?? 1;
  return [whole || "", rest ? `${rest / by}/${per / by}` : ""].filter(Boolean).join(" ") || "0";
}

/** The unit that a bare number in a field of the page is read in, as it stands beside the field. */
import { asKept, spelled } from "./spelled.js";
import { inAnyRow } from "./within.js";

/** Of fields that come behind the first screen, until they are there. @type {[cm: string, inches: string, fields: string[]][]} */
export const UNITS_LATER = [
  [
    "cm",
    "in",
    [
      "sock.leg.height",
      "sock.leg.girths.ROW.height",
      "sock.leg.girths.ROW.girth",
      "sock.cuff.flat_width",
      "sock.cuff.pulled_width",
      "sock.foot_length_of_sock",
    ],
  ],
  [
    "/ 10 cm",
    "/ in",
    [
      "sock.leg.bands.ROW.stitches",
      "shelf.yarns.ROW.marks.0.stitches",
      "shelf.yarns.ROW.marks.0.rounds",
      "chart.loosest",
      "chart.firmest",
      "chart.between",
    ],
  ],
  ["g", "g", ["shelf.yarns.ROW.left"]],
  ["%", "%", ["sock.length_ease"]],
];

/** A field of the page, or of a row that may come to stand on it. @param {string} name @returns {Element | undefined} */
export function inputOf(name) {
  const templates = [...document.querySelectorAll("template")].map(({ content }) => content);
  const row = inAnyRow(name);
  for (const [place, named] of [[document, name], ...templates.map((one) => [one, row])]) {
    const input = /** @type {ParentNode} */ (place).querySelector(
      `:is(input, select)[name="${CSS.escape(/** @type {string} */ (named))}"]`,
    );
    if (input) return input;
  }
}

/** A text with that unit; what has one already stays. @param {string} name of the field @param {string} text @param {string} units "cm" or "in" */
export function withItsUnit(name, text, units) {
  const place = inputOf(name)?.closest(".with-unit");
  const beside = place
    ? place.querySelector(`[data-units="${CSS.escape(units)}"]`)?.textContent
    : later(name, units);
  const kept = asKept(name, text, units);
  return beside ? spelled(kept, beside) : kept;
}

/** @param {string} name @param {string} units */
function later(name, units) {
  const row = inAnyRow(name);
  const [cm, inches] = UNITS_LATER.find(([, , fields]) => fields.includes(row)) ?? [];
  return units === "in" ? inches : cm;
}

/** The unit that a bare number in a field of the page is read in, as it stands beside the field. */
import { asKept, spelled } from "./spelled.js";
import { inAnyRow } from "./within.js";

/** A text with that unit; what has one already stays. @param {string} name of the field @param {string} text @param {string} units "cm" or "in" */
export function withItsUnit(name, text, units) {
  const input = inputOf(document, name) ?? inTemplates(name);
  const beside = input?.closest(".with-unit")?.querySelector(`[data-units="${CSS.escape(units)}"]`);
  const kept = asKept(name, text, units);
  return beside?.textContent ? spelled(kept, beside.textContent) : kept;
}

/** A field of a row that does not stand on the page just now. @param {string} name */
function inTemplates(name) {
  for (const template of document.querySelectorAll("template")) {
    const input = inputOf(template.content, inAnyRow(name));
    if (input) return input;
  }
}

/** @param {ParentNode} place @param {string} name */
function inputOf(place, name) {
  return place.querySelector(`input[name="${CSS.escape(name)}"]`);
}

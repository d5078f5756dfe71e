/** The unit that a bare number in a field of the page is read in, as it stands beside the field. */
import { inputOf } from "./form.js";
import { asKept, spelled } from "./spelled.js";

/** A text with that unit; what has one already stays. @param {string} name of the field @param {string} text @param {string} units "cm" or "in" */
export function withItsUnit(name, text, units) {
  const place = inputOf(name)?.closest(".with-unit");
  const beside = place?.querySelector(`[data-units="${CSS.escape(units)}"]`);
  const kept = asKept(name, text, units);
  return beside?.textContent ? spelled(kept, beside.textContent) : kept;
}

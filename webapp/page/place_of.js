/** Where on the page the field of a request stands, by the dotted name that the engine knows it by. @import {StepName} from "./steps_nav.js" */

/** @param {string} field */
export function idOf(field) {
  return field.replaceAll(".", "-");
}

/**
 * Where a problem's words stand: at its field, else at the nearest group round it.
 * @param {string} field
 * @returns {Element | null}
 */
export function placeOf(field) {
  const parts = field.split(".");
  while (parts.length && parts[0]) {
    const place = document.getElementById(`${parts.join("-")}-error`);
    if (place) return place;
    parts.pop();
  }
  return null;
}

/**
 * The step, or the page behind it, in which a field stands.
 * @param {string} field
 * @returns {StepName | undefined}
 */
export function stepOf(field) {
  const step = placeOf(field)?.closest(".step");
  return /** @type {StepName | undefined} */ (step?.id);
}

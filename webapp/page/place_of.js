/** Where on the page the field of a request stands, by the dotted name that the engine knows it by. */

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
 * The step in which a field stands.
 * @param {string} field
 * @returns {"measure" | "yarn" | "counts" | undefined}
 */
export function stepOf(field) {
  const step = placeOf(field)?.closest(".step");
  return /** @type {"measure" | "yarn" | "counts" | undefined} */ (step?.id);
}

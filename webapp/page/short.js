/** A label as long as a line can show: whole characters, and a sign that there is more. */

const MOST = 80;

/** @param {string} label */
export function short(label) {
  const characters = Array.from(label.slice(0, 2 * MOST + 2));
  return characters.length > MOST || label.length > 2 * MOST + 2
    ? `${characters.slice(0, MOST).join("").trimEnd()}…`
    : label;
}

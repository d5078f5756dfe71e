/**
 * Where a field belongs, by its dotted name.
 * @import {Field, Group, InRow} from "./fields.js"
 */

/** @typedef {Field | Group | InRow | "way" | "who" | "band"} Place the last three are the page's own */

/** Whether a field is one of these or in one of these groups. @param {string} name @param {...Place} places */
export function within(name, ...places) {
  const spelled = inAnyRow(name);
  return places.some((place) => spelled === place || name.startsWith(`${place}.`));
}

/** A field of a row as the page's templates name it. @param {string} name */
export function inAnyRow(name) {
  return name.replace(/\.\d+\./, ".ROW.");
}

/**
 * Whose each field of the sheet is, said in this one place, and what of a sheet stays for a next one. A field
 * that is not named here stays for nobody.
 * @import {Values} from "./types"
 */
import { withItsUnit } from "./units_beside.js";

/** @typedef {"machine" | "person" | "foot" | "wish" | "pair"} Owner */

/** @type {Record<Owner, RegExp>} */
const FIELDS = {
  /** Cylinder, fabric and yarn: they are the knitter's, whoever is measured. */
  machine: /^(units|way)$|^(cylinder|fabric)\.|^stock\.(ball|margin|repeat)$/,
  /** Does not change between two measurings. */
  person: /^who$/,
  /** Measured on the wearer, or told in place of a measure. */
  foot: /^(foot|other_foot|person)\.|^sock\.(leg\.girths\.|foot_length_of_sock$)/,
  /** How the wearer likes their socks. */
  wish: /^sock\.(cuff|heel|toe)\.|^sock\.leg\.(rounds$|height$|bands\.)|^sock\.length_ease$|^stock\.apart$/,
  /** Of one pair alone: once it is knitted, nothing of it holds for another. */
  pair: /^first_sock\.|^stock\.(left|sock_one|repeat_rounds)$/,
};

/**
 * What is counted in needles is wished for on that cylinder alone; what was measured on a fabric, or goes by
 * its marks, on that fabric. @type {[wish: RegExp, holdsOn: RegExp][]}
 */
const BOUND = [
  [/^sock\.(heel|toe)\./, /^cylinder\.slots$/],
  [/^sock\.(leg\.bands\.|cuff\.(flat|pulled)_width$)/, /^(cylinder|fabric)\./],
];

/** @param {string} name of a field @returns {Owner | undefined} */
export function ownerOf(name) {
  const owners = /** @type {Owner[]} */ (Object.keys(FIELDS));
  return owners.find((owner) => FIELDS[owner].test(name));
}

/** What is theirs of a sheet. @param {Values} values @param {...Owner} owners @returns {Values} */
export function only(values, ...owners) {
  const theirs = Object.entries(values).filter(([name]) => {
    const owner = ownerOf(name);
    return owner && owners.includes(owner);
  });
  return Object.fromEntries(theirs);
}

/**
 * A wearer's next sheet: on this machine and yarn, with what stays of their sheet before.
 * @param {Values} machine @param {Values} before @param {...Owner} owners @returns {Values}
 */
export function nextSheet(machine, before, ...owners) {
  const units = machine.units || before.units;
  const others = BOUND.filter(([, holdsOn]) => !same(machine, before, holdsOn));
  const stays = Object.entries(only(before, ...owners))
    .filter(([name]) => !others.some(([wish]) => wish.test(name)))
    .map(([name, text]) => [
      name,
      units === before.units ? text : withItsUnit(name, text, before.units),
    ]);
  return { ...machine, ...(units ? { units } : {}), ...Object.fromEntries(stays) };
}

/** Whether both say the same in these fields. @param {Values} one @param {Values} other @param {RegExp} fields */
function same(one, other, fields) {
  return [one, other].every((values) =>
    Object.keys(values).every(
      (name) => !fields.test(name) || (one[name] ?? "").trim() === (other[name] ?? "").trim(),
    ),
  );
}

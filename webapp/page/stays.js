/**
 * Whose each field of the sheet is, said in this one place, and what of a sheet stays for a next one. A field
 * that is not named here stays for nobody.
 * @import {Values} from "./types"
 * @import {Place} from "./within.js"
 */
import { withItsUnit } from "./units_beside.js";
import { within } from "./within.js";

/** @typedef {"machine" | "person" | "foot" | "wish" | "pair"} Owner */

/** @type {Record<Owner, Place[]>} */
const FIELDS = {
  /** Cylinder, fabric and yarn: they are the knitter's, whoever is measured. */
  machine: [
    "units",
    "way",
    "cylinder",
    "fabric",
    "band",
    "stock.ball",
    "stock.margin",
    "stock.repeat",
  ],
  /** Does not change between two measurings. */
  person: ["who"],
  /** Measured on the wearer, or told in place of a measure. */
  foot: ["foot", "other_foot", "person", "sock.leg.girths", "sock.foot_length_of_sock"],
  /** How the wearer likes their socks. */
  wish: [
    "sock.cuff",
    "sock.leg.kind",
    "sock.leg.rounds",
    "sock.leg.plain",
    "sock.leg.height",
    "sock.leg.bands",
    "sock.heel",
    "sock.toe",
    "sock.end",
    "sock.colors",
    "sock.length_ease",
    "sock.closeness",
    "sock.growing_room",
    "stock.apart",
    "origin",
  ],
  /** Of one pair alone: once it is knitted, nothing of it holds for another. */
  pair: ["sock.string", "first_sock", "stock.left", "stock.sock_one", "stock.repeat_rounds"],
};

/**
 * What is counted in needles is wished for on that cylinder alone; what was measured on a fabric, or goes by
 * its marks, on that fabric. @type {{ wish: Place[], holdsOn: Place[] }[]}
 */
const BOUND = [
  {
    wish: ["sock.heel.needles", "sock.heel.left", "sock.toe.needles", "sock.toe.left"],
    holdsOn: ["cylinder.slots"],
  },
  {
    wish: ["sock.leg.bands", "sock.cuff.flat_width", "sock.cuff.pulled_width"],
    holdsOn: ["cylinder", "fabric"],
  },
];

/** @param {string} name of a field @returns {Owner | undefined} */
export function ownerOf(name) {
  const owners = /** @type {Owner[]} */ (Object.keys(FIELDS));
  return owners.find((owner) => within(name, ...FIELDS[owner]));
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
  const others = BOUND.filter(({ holdsOn }) => !same(machine, before, holdsOn));
  const stays = Object.entries(only(before, ...owners))
    .filter(([name]) => !others.some(({ wish }) => within(name, ...wish)))
    .map(([name, text]) => [
      name,
      units === before.units ? text : withItsUnit(name, text, before.units),
    ]);
  return { ...machine, ...(units ? { units } : {}), ...Object.fromEntries(stays) };
}

/** Whether both say the same in these fields. @param {Values} one @param {Values} other @param {Place[]} fields */
function same(one, other, fields) {
  return [one, other].every((values) =>
    Object.keys(values).every(
      (name) => !within(name, ...fields) || (one[name] ?? "").trim() === (other[name] ?? "").trim(),
    ),
  );
}

/**
 * What a copy would bring to the book: those who are new, those who are the same, and those who differ,
 * for her to choose.
 * @import {Deleted, Wearer} from "./types"
 * @import {Wearers} from "./wearers.js"
 */
import { measuresOf } from "./measures.js";

/** @typedef {{ here: Deleted, file: Deleted, take: "here" | "file" }} Differing */
/** @typedef {{ fresh: Deleted[], same: number, differing: Differing[] }} Found */

/** @param {Deleted[]} copy @param {Wearers} wearers @returns {Promise<Found>} */
export async function compare(copy, wearers) {
  /** @type {Found} */
  const found = { fresh: [], same: 0, differing: [] };
  for (const file of copy) {
    const wearer = wearers.get(file.wearer.id);
    const visits = wearer && (await wearers.visits(wearer.id));
    if (!wearer) found.fresh.push(file);
    else if (plain({ wearer, visits: visits ?? [] }) === plain(file)) found.same += 1;
    else found.differing.push({ here: { wearer, visits: visits ?? [] }, file, take: "here" });
  }
  return found;
}

/** Of the visits none is dropped: where both have one, it is the chosen one's. @param {Differing} one @returns {Deleted} */
export function chosen({ here, file, take }) {
  const [first, other] = take === "file" ? [file, here] : [here, file];
  const visits = new Map([...other.visits, ...first.visits].map((visit) => [visit.number, visit]));
  return {
    wearer: first.wearer,
    visits: [...visits.values()].sort((one, two) => one.number - two.number),
  };
}

/** Only what differs, side by side. @param {Differing} one @returns {{ title: string, here: string, file: string }[]} */
export function differences({ here, file }) {
  const [mine, theirs] = [here, file].map(words);
  return [...new Set([...mine.keys(), ...theirs.keys()])]
    .map((title) => ({ title, here: mine.get(title) ?? "", file: theirs.get(title) ?? "" }))
    .filter((one) => one.here !== one.file);
}

/** @param {Deleted} one @returns {Map<string, string>} */
function words({ wearer, visits }) {
  /** @type {[keyof Wearer, string][]} */
  const titles = [
    ["label", "Label"],
    ["state", "How far"],
    ["due", "Promised for"],
    ["asked", "Who was asked"],
    ["length", "How long"],
    ["ease", "How close"],
    ["colours", "Colours"],
    ["allergy", "Allergy"],
    ["price", "Price"],
  ];
  const measures = measuresOf(visits.at(-1)?.values ?? {});
  return new Map([
    ...titles.map(
      ([name, title]) => /** @type {[string, string]} */ ([title, String(wearer[name])]),
    ),
    ...measures.map(({ title, text }) => /** @type {[string, string]} */ ([title, text])),
    ["Visits", String(visits.length)],
  ]);
}

/** The same whatever order its names are in. @param {Deleted} one */
function plain({ wearer, visits }) {
  const inOrder = (/** @type {object} */ values) =>
    Object.entries(values)
      .filter(([, value]) => value !== undefined)
      .sort(([one], [other]) => (one < other ? -1 : 1));
  return JSON.stringify([
    inOrder(wearer),
    visits.map((visit) => inOrder({ ...visit, values: inOrder(visit.values) })),
  ]);
}

/** The sizes that a set begins with, by the system they are told in: the usual grown or children's ones. */
import { onLetter } from "../paper/letter.js";

/** @type {Record<string, string>} */
const USUAL = {
  EU: "36, 38, 40, 42, 44, 46",
  UK: "3, 5, 7, 9, 11",
  "US women": "5, 6, 7, 8, 9, 10",
  "US men": "7, 8, 9, 10, 11, 12",
  Mondopoint: "230, 240, 250, 260, 270, 280",
  Japan: "22, 23, 24, 25, 26, 27",
  "EU child": "24, 26, 28, 30, 32, 34",
  "UK child": "7, 8, 9, 10, 11, 12",
  "US child": "8, 9, 10, 11, 12, 13",
  "US youth": "1, 2, 3, 4, 5, 6",
};
const LENGTHS = {
  cm: "22 cm; 23.5 cm; 25 cm; 26.5 cm; 28 cm",
  in: "8 1/2 in; 9 in; 9 1/2 in; 10 in; 10 1/2 in",
};

export const SYSTEMS = Object.keys(USUAL);

/** @param {string} by a system, or "length" @param {string} units */
export function usualSizes(by, units) {
  return USUAL[by] ?? (units === "in" ? LENGTHS.in : LENGTHS.cm);
}

/** What a new set begins with where she is. @param {string | undefined} units */
export function usualHere(units) {
  const by = onLetter ? "US women" : "EU";
  return { by, sizes: usualSizes(by, units ?? "cm") };
}

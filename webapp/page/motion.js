/**
 * What has changed moves, once and within a quarter of a second: a number rolls in, and its part of the sock
 * is knitted anew. Nothing else gives way for it, and nothing moves for those who asked for stillness.
 * @import {Part} from "./types"
 */

const ROLL = { duration: 200, easing: "ease-out" };
const KNIT = { duration: 240, easing: "linear" };
/** Along these the machine comes from the heel; the others are knitted from the top down. */
const FORWARD = ["foot", "toe"];

const still = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** @param {Element} number */
export function roll(number) {
  if (still()) return;
  number.animate([{ transform: "translateY(0.35em)" }, { transform: "none" }], ROLL);
}

/** Roll each number below `place` that `change` makes another. @param {Element} place @param {() => void} change */
export function rollChanged(place, change) {
  const before = new Map(numbersOf(place).map(([name, one]) => [name, one.textContent]));
  change();
  for (const [name, one] of numbersOf(place)) {
    if (before.has(name) && before.get(name) !== one.textContent) roll(one);
  }
}

/** By the row and the place in it. @param {Element} place @returns {[string, Element][]} */
function numbersOf(place) {
  return [...place.querySelectorAll(".tally")].flatMap((row) =>
    [...row.querySelectorAll(".figure > span")].map(
      (one, at) => /** @type {[string, Element]} */ ([`${row.className} ${at}`, one]),
    ),
  );
}

/** Parts that are counted otherwise than before. @param {Part[] | undefined} before @param {Part[]} now */
export function partsChanged(before, now) {
  const figures = new Map(before?.map(({ part, figure }) => [part, figure]));
  return now.filter(({ part, figure }) => figures.has(part) && figures.get(part) !== figure);
}

/**
 * Lay a cover over each of the parts, as far as it is not knitted again yet.
 * @param {Element} place of the drawing @param {Part[]} parts
 */
export function knitAnew(place, parts) {
  if (still()) return;
  const names = new Set(parts.map(({ part }) => (part === "before_toe" ? "foot" : part)));
  for (const name of names) {
    const cloth = place.querySelector(`.part-${name}`);
    const cover = /** @type {Element | undefined} */ (cloth?.cloneNode());
    if (!cloth || !cover) continue;
    cover.setAttribute("class", "cover");
    const words = cloth.parentNode?.querySelector(":scope > text");
    cloth.parentNode?.insertBefore(cover, words ?? null);
    const off = FORWARD.includes(name) ? "inset(0 0 0 100%)" : "inset(100% 0 0 0)";
    cover.animate([{ clipPath: "inset(0)" }, { clipPath: off }], KNIT).onfinish = () =>
      cover.remove();
  }
}

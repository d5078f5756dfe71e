/**
 * The sock as far as it is told, above what tells it: in pencil, with a wide range of foot rounds, until all
 * is known that it stands on.
 * @import {Answer, Part} from "./types"
 */
import * as say from "words/page";
import { knitAnew, partsChanged, roll } from "./motion.js";
import { showPicture } from "./picture.js";

/** Those drawn last. @type {Part[] | undefined} */
let drawn;

/** @param {Answer} answer @param {HTMLElement} place */
export function showSoFar({ plan: counted, bare, pencil }, place) {
  const plan = pencil ? undefined : counted; // on what is not told yet
  const foot = plan ? plan.range.foot : pencil?.foot;
  if (!foot) return; // what stands there is of what was told before
  place.dataset.told = plan ? "foot cylinder fabric" : (pencil?.told ?? []).join(" ");
  const between = say.between({ low: foot.low, high: foot.high });
  put(".figure", plan ? String(plan.counts.foot.rounds) : between);
  put(".detail", plan ? say.roundsLikely({ between }) : say.roundsGuessed);
  put("#so-parts", plan?.parts.map(({ title, figure }) => `${title} ${figure}`).join("\n") ?? "");
  const figure = place.querySelector("figure");
  if (figure) {
    showPicture((plan ? bare : pencil?.picture) ?? "", figure);
    if (plan) knitAnew(figure, partsChanged(drawn, plan.parts));
  }
  drawn = plan?.parts;

  /** @param {string} selector @param {string} words */
  function put(selector, words) {
    const element = place.querySelector(selector);
    if (!element || element.textContent === words) return;
    const anew = document.createElement("span"); // what changes moves
    anew.textContent = words;
    element.replaceChildren(anew);
    roll(anew);
  }
}

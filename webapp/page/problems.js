/**
 * Step three while something is missing or wrong: how many things, and one tap to each.
 * @import {Problem} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { reveal } from "./panels.js";
import { placeOf, stepOf } from "./place_of.js";

/**
 * @param {Problem[]} problems @param {HTMLElement} place
 * @param {(step: import("./steps_nav.js").StepName) => void} go
 */
export function renderProblems(problems, place, go) {
  const count = problems.length;
  const ordered = [...problems].sort((one, other) => order(one) - order(other));
  render(
    count
      ? html`<div class="line trouble">
          <p><strong>${say.toFixFirst({ things: count })}</strong></p>
          <ul class="problems">
            ${ordered.map(
              (problem) => html`<li><p>${problem.message} ${problem.way_out}</p>
                ${placeOf(problem.field) ? html`<button type="button" @click=${() => goTo(problem.field, go)}>${say.goThere}</button>` : nothing}</li>`,
            )}
          </ul>
        </div>`
      : nothing,
    place,
  );
}

/** Where on the page a problem stands, from the top. @param {Problem} problem */
function order({ field }) {
  const place = placeOf(field);
  return place ? [...document.querySelectorAll(".error")].indexOf(place) : 0;
}

/** @param {string} field @param {(step: import("./steps_nav.js").StepName) => void} go */
export function goTo(field, go) {
  const place = placeOf(field);
  const step = stepOf(field);
  if (!place || !step) return;
  for (let fold = place.closest("details"); fold; ) {
    fold.open = true;
    fold = fold.parentElement?.closest("details") ?? null;
  }
  reveal(place);
  go(step);
  const exact = document.getElementById(field.replaceAll(".", "-"));
  const target = exact ?? place.parentElement?.querySelector("input, select");
  if (target instanceof HTMLElement) {
    target.scrollIntoView({ block: "center" });
    target.focus({ preventScroll: true });
  }
}

/**
 * Every step of the sock in order, folded by section; heel and toe row by row, as the knitter faces
 * the needles.
 * @import {Plan, Step} from "./types"
 */
import { html, nothing, render } from "lit-html";
import { listed, noun } from "./needles.js";

/** Those that are open on paper alone. @type {HTMLDetailsElement[]} */
let unfolded = [];

// A step that is folded away is no use on paper, however the page is printed.
addEventListener("beforeprint", () => {
  const folded = document.querySelectorAll("#steps-place details:not([open])");
  unfolded = [.../** @type {NodeListOf<HTMLDetailsElement>} */ (folded)];
  for (const fold of unfolded) fold.open = true;
});
addEventListener("afterprint", () => {
  for (const fold of unfolded) fold.open = false;
});

/** @param {Plan} plan @param {HTMLElement} place */
export function renderSteps(plan, place) {
  /** @type {Step[][]} */
  const sections = [];
  for (const step of plan.steps) {
    const last = sections[sections.length - 1];
    if (last?.[0]?.part === step.part) last.push(step);
    else sections.push([step]);
  }
  render(
    html`
      <hr class="knit" />
      <h3>Every step, in order</h3>
      <p class="quiet">In heel and toe crank to and fro, one row each way. Their needles are numbered from left to right as you face them. A needle that comes back does so before its row; one that goes into hold, after it.</p>
      ${sections.map(
        (steps) => html`<details class="section">
          <summary>${steps[0]?.title} <span class="quiet">${gist(steps)}</span></summary>
          <ol>${steps.map(one)}</ol>
        </details>`,
      )}
    `,
    place,
  );
}

/** @param {Step[]} steps */
function gist(steps) {
  const rows = steps.filter((step) => step.kind === "row");
  const rounds = steps.filter((step) => step.kind === "rounds");
  if (rows.length) return `${rows[rows.length - 1].row} rows`;
  if (!rounds.length) return "";
  const sum = rounds.reduce((soFar, step) => soFar + (step.rounds ?? 0), 0);
  return `${sum} ${sum === 1 ? "round" : "rounds"}`;
}

/** @param {Step} step */
function one(step) {
  if (step.kind !== "row") return html`<li class="do">${step.text}</li>`;
  const [first, last] = step.knits ?? [0, 0];
  return html`<li class="needles-row">
    <span class="row-number"><span class="said">Row </span>${step.row}</span>
    <span class="way-to"><span aria-hidden="true">${step.direction === "right" ? "→" : "←"}</span> to the ${step.direction}</span>
    <span class="what">
      ${step.back ? html`${noun(step.back)} <b>${listed(step.back)}</b> back · ` : nothing}knits <b>${first}</b> to
      <b>${last}</b>${step.hold ? html` · ${noun(step.hold)} <b>${listed(step.hold)}</b> into hold` : nothing}
    </span>
    <span class="in-work">${step.in_work} in work</span>
  </li>`;
}

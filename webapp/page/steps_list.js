/**
 * Every step of the sock in order, folded by section; heel and toe row by row, as the knitter faces
 * the needles.
 * @import {Plan, Step} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { each, listed } from "./needles.js";

/** Those that are open on paper alone. @type {HTMLDetailsElement[]} */
let unfolded = [];

// A step that is folded away is no use on paper, however the page is printed.
addEventListener("beforeprint", () => {
  const folded = document.querySelectorAll(":is(#steps-place details, #fit, #sizes):not([open])");
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
      <h3>${say.everyStep}</h3>
      <p class="quiet">${say.howRowsRead} ${say.whenNeedlesMove}</p>
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
  if (rows.length) return say.rowsInAll({ rows: rows[rows.length - 1].row ?? 0 });
  if (!rounds.length) return "";
  const sum = rounds.reduce((soFar, step) => soFar + (step.rounds ?? 0), 0);
  return say.roundsInAll({ rounds: sum });
}

/** @param {Step} step */
function one(step) {
  if (step.kind !== "row") return html`<li class="do">${step.text}</li>`;
  const [first, last] = step.knits ?? [0, 0];
  return html`<li class="needles-row">
    <span class="row-number"><span aria-hidden="true">${step.row}</span><span class="said">${say.rowSaid({ row: step.row ?? 0 })}</span></span>
    <span class="way-to"><span aria-hidden="true">${step.direction === "right" ? "→" : "←"}</span> ${say.toSide({ direction: step.direction ?? "right" })}</span>
    <span class="what">
      ${step.back ? html`${say.comesBack({ needles: each(step.back).length, which: listed(step.back) })} · ` : nothing}${step.joins ? html`${say.loopHung({ which: listed(step.joins) })} · ` : nothing}${say.knits({ first, last })}${step.hold ? html` · ${say.goesIntoHold({ needles: each(step.hold).length, which: listed(step.hold) })}` : nothing}
    </span>
    <span class="in-work">${say.inWork({ needles: step.in_work ?? 0 })}</span>
  </li>`;
}

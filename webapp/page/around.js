/**
 * What stands round the counts: how the sock fits in words, its sizes, why these numbers, and the
 * yarn it takes.
 * @import {Fit, Plan, Quantity} from "./types"
 */
import { html, nothing, render, svg } from "lit-html";
import * as say from "words/page";
import { idOf, stepOf } from "./place_of.js";
import { goTo } from "./problems.js";

/** Marks for the fit that differ in shape, never in colour alone. */
export const MARKS = {
  good: svg`<path class="ink-line" d="M5 13 10 18 20 6"/>`,
  loose: svg`<path class="ink-line" d="M9 12H1M5 8 1 12 5 16M15 12H23M19 8 23 12 19 16"/>`,
  tight: svg`<path class="ink-line" d="M1 12H9M5 8 9 12 5 16M23 12H15M19 8 15 12 19 16"/>`,
  bad: svg`<path class="ink-line" d="M5 5 19 19M19 5 5 19"/>`,
  apart: svg`<path class="ink-line" d="M5 12H19"/>`,
};

const SIZES = /** @type {const} */ ([
  "foot_length",
  "tube_girth",
  "heel_girth",
  "cuff_depth",
  "leg_length",
  "heel_height",
  "top_above_heel",
  "top_above_floor",
]);

/**
 * @param {Plan} plan @param {HTMLElement} place
 * @param {(step: import("./steps_nav.js").StepName) => void} go
 */
export function renderAround(plan, place, go) {
  const notes = plan.notes.filter((note) => note.field === null);
  render(
    html`
      ${notes.map((note) => html`<p class="note">${note.text}</p>`)}
      ${plan.notes.map((note) => elsewhere(note, go))}
      <details id="fit" ?hidden=${!plan.fit.length}>
        <summary>${say.howItFits}</summary>
        <ul class="fits">${plan.fit.map(fit)}</ul>
      </details>
      <details id="sizes">
        <summary>${say.sizesFlat}</summary>
        <dl class="sizes">
          ${SIZES.filter((size) => plan.sizes[size]).map((size) => pair(say.size({ size }), plan.sizes[size]))}
        </dl>
      </details>
      <details class="whole">
        <summary>${say.whyThese}</summary>
        <p>${plan.fabric.words}</p>
        <p>${plan.range.foot.words}</p>
        <dl class="whys">
          ${plan.parts.map((part) => html`<dt>${part.title}</dt><dd>${plan.counts[part.part]?.words}</dd>`)}
        </dl>
      </details>
    `,
    place,
  );
}

/**
 * What is asked beside a field of another step; a guess for an empty field of the fabric is said above.
 * @param {Plan["notes"][number]} note @param {(step: import("./steps_nav.js").StepName) => void} go
 */
function elsewhere({ field, text }, go) {
  if (!field || (stepOf(field) ?? "counts") === "counts") return nothing;
  const input = /** @type {HTMLInputElement | null} */ (document.getElementById(idOf(field)));
  if (!input || (field.startsWith("fabric.") && !input.value.trim())) return nothing;
  return html`${titled({ field, text })}
    <button type="button" @click=${() => goTo(field, go)}>${say.goThere}</button>`;
}

/** A note that stands away from its field begins with the field's title. @param {Plan["notes"][number]} note */
export function titled({ field, text }) {
  const input = /** @type {HTMLInputElement | null} */ (
    field && document.getElementById(idOf(field))
  );
  const title = input?.labels?.[0]?.textContent;
  return html`<p class="note">${title ? html`<strong>${title}.</strong> ` : nothing}${text}</p>`;
}

/** @param {Fit} found */
function fit(found) {
  const apart = found.level === "apart";
  return html`<li class="fit fit-${found.level}">
    <svg class="fit-mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${MARKS[found.level]}</svg>
    <p><strong>${found.title}.</strong> ${found.words}
      ${apart ? nothing : html`<span class="quiet">${around(found)}</span>`}</p>
  </li>`;
}

/** @param {Fit} found */
function around({ body, fabric, from }) {
  const both = { body: body?.text ?? "", sock: fabric?.text ?? "" };
  return from === "estimated" ? say.fitGuessed(both) : say.fitMeasured(both);
}

/** The yarn of the pair. @param {Plan} plan @param {HTMLElement} place */
export function renderNeed({ yarn: need, parts }, place) {
  const titles = new Map(
    parts.map(({ part, title }) => /** @type {[string, string]} */ ([part, title])),
  );
  render(
    html`
    <p class="need">${need.grams ? html`<span><strong>${need.grams.text}</strong> ${need.grams.other}</span>` : nothing} <span><strong>${need.metres.text}</strong> ${need.metres.other}</span></p>
    <p>${need.words}</p>
    <details>
      <summary>${say.bySection}</summary>
      <table class="by-section">
        <thead><tr><th scope="col">${say.bothSocks}</th><th scope="col">${say.length}</th>${need.grams ? html`<th scope="col">${say.weight}</th>` : nothing}</tr></thead>
        <tbody>
          ${Object.entries(need.sections).map(([part, of]) => line(titles.get(part) ?? say.ends, of, need.grams))}
          ${line(say.wasteApart, need.waste, need.grams)}
        </tbody>
      </table>
    </details>`,
    place,
  );
}

/** @param {string} title @param {import("./types").Length | undefined} length @param {Quantity | null} grams */
function line(title, length, grams) {
  if (!length) return nothing;
  return html`<tr><th scope="row">${title}</th><td>${both(length.metres)}</td>${grams ? html`<td>${both(length.grams)}</td>` : nothing}</tr>`;
}

/** @param {Quantity | null} found */
function both(found) {
  return found ? html`${found.text} <span class="quiet">${found.other}</span>` : nothing;
}

/** @param {string} title @param {Quantity | undefined} size */
function pair(title, size) {
  if (!size) return nothing;
  return html`<div><dt>${title}</dt><dd><strong>${size.text}</strong> <span class="quiet">${size.other}</span></dd></div>`;
}

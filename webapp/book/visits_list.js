/**
 * What was measured of a wearer, now and at earlier visits.
 * @import {Values} from "../page/types"
 * @import {PlansList} from "./plans_list.js"
 * @import {Visit} from "./types"
 */
import { html, nothing } from "lit-html";
import { dayOf, dueShown } from "./days.js";
import { measuresOf } from "./measures.js";

/** @param {Values} values @param {string} none what to say where nothing was measured */
export function measures(values, none) {
  const found = measuresOf(values);
  return found.length
    ? html`<dl class="sizes">${found.map(({ title, text }) => html`<div><dt>${title}</dt><dd><bdi>${text}</bdi></dd></div>`)}</dl>`
    : html`<p class="quiet">${none}</p>`;
}

/** @param {Visit[]} visits the first one first @param {PlansList} list */
export function earlierVisits(visits, list) {
  return html`<h3>Earlier visits</h3>
    ${visits.toReversed().map(
      ({
        at,
        values,
        plans,
        state,
        due,
        price,
      }) => html`<details class="visit-before"><summary>${dayOf(at)}</summary>
        ${measures(values, "Nothing was measured then.")}
        ${plans ? list.template(plans) : nothing}
        <p class="quiet">${state ? html`Left at “<bdi>${state}</bdi>”` : nothing}${due ? html`, promised for <bdi>${dueShown(due)}</bdi>` : nothing}${price ? html`, price <bdi>${price}</bdi>` : nothing}.</p>
      </details>`,
    )}`;
}

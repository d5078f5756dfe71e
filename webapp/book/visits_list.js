/**
 * What was measured of a wearer, now and at earlier visits.
 * @import {Values} from "../page/types"
 * @import {PlansList} from "./plans_list.js"
 * @import {Visit} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/book";
import { dayOf, dueShown } from "./days.js";
import { measuresOf } from "./measures.js";
import { stateWords } from "./states.js";

/** @param {Values} values @param {string} none what to say where nothing was measured */
export function measures(values, none) {
  const found = measuresOf(values);
  return found.length
    ? html`<dl class="sizes">${found.map(({ title, text }) => html`<div><dt>${title}</dt><dd><bdi>${text}</bdi></dd></div>`)}</dl>`
    : html`<p class="quiet">${none}</p>`;
}

/** @param {Visit[]} visits the first one first @param {PlansList} list */
export function earlierVisits(visits, list) {
  return html`<h3>${say.earlierVisits}</h3>
    ${visits.toReversed().map(
      ({
        at,
        values,
        plans,
        state,
        due,
        price,
      }) => html`<details class="visit-before"><summary>${dayOf(at)}</summary>
        ${measures(values, say.nothingThen)}
        ${plans ? list.template(plans) : nothing}
        <p class="quiet">${state ? say.leftAt({ state: stateWords(state) }) : nothing} ${due ? say.wasPromised({ day: dueShown(due) }) : nothing} ${price ? say.priceWas({ price }) : nothing}</p>
      </details>`,
    )}`;
}

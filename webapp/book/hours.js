/**
 * How long a pair took at the machine: the sum of the times between one counted thing and the next. Whoever
 * paused for longer than 90 seconds is not counted (`machine/pace.js`), nor is what was never counted.
 * @import {Plan} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/book";
import { sessionOf } from "./plans.js";

/** @param {Plan} plan @param {Map<string, number>} took seconds, by the pair at the machine */
export function hours(plan, took) {
  const seconds = took.get(sessionOf(plan) ?? "") ?? 0;
  const minutes = Math.round(seconds / 60);
  if (!minutes) return nothing;
  const time = { hours: Math.floor(minutes / 60), minutes: minutes % 60 };
  return html`<p>${say.pairTook(time)} <span class="quiet">${say.tookHow}</span></p>`;
}

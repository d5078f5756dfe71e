/**
 * The orders to work by: one a row, with a box to tick, on as many sheets as it takes.
 * @import {Order} from "../book/types"
 */
import { html, nothing } from "lit-html";
import * as book from "words/book";
import * as say from "words/paper";
import { dayOf, dueShown, today } from "../book/days.js";
import { stateShown } from "../book/marks.js";
import { toPaper } from "./to_paper.js";

/** @type {Record<string, string>} */
const EASES = { snug: book.snug, loose: book.loose };

/** @param {string} title @param {Order[]} orders in order */
export function printOrders(title, orders) {
  const now = today();
  toPaper(html`<table class="orders">
    <colgroup><col /><col /><col /><col /><col /></colgroup>
    <thead>
      <tr><th colspan="5"><h2>${say.ordersTitle({ title, day: dayOf(Date.now()) })}</h2></th></tr>
      <tr><th><span class="said">${say.done}</span></th><th>${say.forLine}</th><th>${say.promisedFor}</th><th>${say.howFar}</th><th>${say.price}</th></tr>
    </thead>
    <tbody>${orders.map((order) => row(order, now))}</tbody>
  </table>`);
}

/** @param {Order} order @param {string} now */
function row({ wearer, measures }, now) {
  const { label, due, state, price, allergy } = wearer;
  const late = due && due < now && state !== "handed over";
  return html`<tr>
    <td><i class="orders-box"></i></td>
    <td>
      <b><bdi>${label}</bdi></b>
      ${listed(wishes(wearer))}
      ${allergy.trim() ? html`<p class="orders-allergy">${say.allergy({ allergy })}</p>` : nothing}
      ${listed(measures.map(({ title, text }) => `${title} ${text}`))}
    </td>
    <td>${late ? html`${say.late} ` : nothing}${due ? dueShown(due) : nothing}</td>
    <td>${stateShown(state)}</td>
    <td><bdi>${price}</bdi></td>
  </tr>`;
}

/** @param {Order["wearer"]} wearer */
function wishes({ length, ease, colours }) {
  return [length, EASES[ease] ?? ease, colours].filter((wish) => wish.trim());
}

/** @param {string[]} words */
function listed(words) {
  return words.length
    ? html`<p>${words.map((word, at) => html`${at ? " · " : nothing}<bdi>${word}</bdi>`)}</p>`
    : nothing;
}

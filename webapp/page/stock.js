/**
 * The yarn at hand: whether what is left is a sock, what each colour takes, and stripes in step.
 * @import {Color, Enough, Plan, Quantity} from "./types"
 */
import { html, nothing, render, svg } from "lit-html";
import * as say from "words/page";

const WIDTH = 300;

/** @param {string} id */
const place = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** @param {Plan | undefined} plan */
export function renderStock(plan) {
  const { enough, stripes, colors = [] } = plan?.yarn ?? {};
  render(
    enough ? weighed(enough) : html`<p class="verdict pencil">${say.stockWaits}</p>`,
    place("enough-place"),
  );
  const told = colors.length > 1 || colors.some(({ balls }) => balls !== null);
  render(
    told ? html`<p>${say.forThePair}</p><ul class="colours">${colors.map(color)}</ul>` : nothing,
    place("colours-place"),
  );
  render(stripes ? html`<p class="verdict">${stripes.words}</p>` : nothing, place("stripes-place"));
}

/** @param {Enough} found */
function weighed({ level, words, left, needed }) {
  const most = Math.max(left.value, needed.value);
  return html`<p class="verdict verdict-${level}">${words}</p>
    <dl class="bars" aria-hidden="true">
      ${bar(true, left, most)} ${bar(false, needed, most)}
    </dl>`;
}

/**
 * Two bars that differ in pattern: yarn there is stands full, yarn wanted is hatched.
 * @param {boolean} there @param {Quantity} weight @param {number} most
 */
function bar(there, weight, most) {
  const width = (WIDTH * weight.value) / most;
  const hatch = there ? [] : Array.from({ length: Math.floor(width / 10) }, (_, at) => at);
  return html`<dt>${there ? say.left : say.twoTakes} <strong>${weight.text}</strong> <span class="quiet">${weight.other}</span></dt>
    <dd><svg viewBox="-1 -1 302 22" focusable="false">
      <rect class=${there ? "bar-full" : "bar-wanted"} width=${width} height="20"/>
      ${hatch.map((at) => svg`<path class="bar-hatch" d="M${at * 10} 20l10-20"/>`)}
    </svg></dd>`;
}

/** @param {Color} found */
function color({ name, with_margin, balls }) {
  return html`<li><strong>${name}</strong>
    ${with_margin.grams?.text}, ${with_margin.metres.text}${
      balls === null ? nothing : html`, <strong>${say.balls({ balls })}</strong>`
    }</li>`;
}

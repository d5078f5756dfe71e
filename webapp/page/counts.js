/**
 * Step three, first of all the counts: big enough to read at arm's length beside the machine.
 * @import {Part, Shown} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { wordsOfSockTwo } from "./first_sock.js";

/** @param {Shown} plan @param {HTMLElement} place */
export function renderCounts(plan, place) {
  render(
    html`
      ${
        plan.fabric.swatch_first || plan.fabric.guessed.length
          ? html`<p class="swatch-first"><strong>${say.swatchFirst}</strong> ${plan.fabric.words}</p>`
          : nothing
      }
      <p class="which-sock">${wordsOfSockTwo(plan) ? say.sockTwo : say.forBoth}</p>
      <ol class="counts">
        ${plan.parts.map((part) => row(part, plan))}
      </ol>
    `,
    place,
  );
}

/** @param {Part} part @param {Shown} plan */
function row(part, plan) {
  const count = plan.counts[part.part];
  const pocket = count && "left" in count ? count : null;
  return html`<li class="tally tally-${part.part}">
    <h3>${part.title}${part.part === "foot" && wordsOfSockTwo(plan) ? html` <small>${say.ofSockTwo}</small>` : nothing}</h3>
    ${
      pocket
        ? html`<p class="figure" aria-hidden="true">
              ${pocket.needles}<i>→</i>${pocket.left}<i>→</i>${pocket.needles}
            </p>
            <p class="said">${say.pocketSaid({ needles: pocket.needles, left: pocket.left })}</p>
            <p class="detail"><strong aria-hidden="true">${say.needles}</strong> ${say.inRows({ rows: pocket.rows })}</p>`
        : html`<p class="figure">${part.count}</p>
            <p class="detail"><strong>${part.unit}</strong> · ${part.detail}</p>`
    }
  </li>`;
}

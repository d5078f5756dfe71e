/**
 * Step three, first of all the counts: big enough to read at arm's length beside the machine.
 * @import {Part, Shown} from "./types"
 */
import { html, nothing, render } from "lit-html";
import { wordsOfSockTwo } from "./first_sock.js";

/** @param {Shown} plan @param {HTMLElement} place */
export function renderCounts(plan, place) {
  render(
    html`
      ${
        plan.fabric.swatch_first || plan.fabric.guessed.length
          ? html`<p class="swatch-first"><strong>Swatch first.</strong> ${plan.fabric.words}</p>`
          : nothing
      }
      <p class="which-sock">${wordsOfSockTwo(plan) ? "Sock two" : "For both socks"}</p>
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
  const pocket = "left" in count ? count : null;
  return html`<li class="tally tally-${part.part}">
    <h3>${part.title}${part.part === "foot" && wordsOfSockTwo(plan) ? html` <small>sock two</small>` : nothing}</h3>
    ${
      pocket
        ? html`<p class="figure" aria-hidden="true">
              ${pocket.needles}<i>→</i>${pocket.left}<i>→</i>${pocket.needles}
            </p>
            <p class="said">
              ${pocket.needles} needles down to ${pocket.left} and back to ${pocket.needles}
            </p>
            <p class="detail"><strong aria-hidden="true">needles</strong> in ${pocket.rows} rows</p>`
        : html`<p class="figure">${part.count}</p>
            <p class="detail"><strong>${part.unit}</strong> · ${part.detail}</p>`
    }
  </li>`;
}

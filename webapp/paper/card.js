/**
 * A quarter of a sheet of paper with the counts of a pair, to tick off beside the machine.
 * @import {Asks, Card, Request} from "../page/types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/paper";
import { toPaper } from "./to_paper.js";

/**
 * @param {Asks} engine @param {Request} request
 * @param {string} address of the counts alone, "" where there is none
 */
export async function printCard(engine, request, address) {
  const card = /** @type {Card} */ (await engine.ask({ do: "card", request, text: address }));
  toPaper(
    html`<section class="card">
      <h2>${card.title}</h2>
      <ol class="card-parts">${card.parts.map((part) => row(part, card.socks))}</ol>
      ${card.bands.length ? html`<ol class="card-bands">${card.bands.map((band) => html`<li>${band}</li>`)}</ol>` : nothing}
      ${card.code_words ? html`<p class="card-code-words">${card.code_words}</p>` : nothing}
      <div class="card-end">
        <dl>${[...card.facts, { name: say.forLine, text: "" }, { name: say.dateLine, text: "" }].map(fact)}</dl>
        <div class="card-code code-place"></div>
      </div>
    </section>`,
    [card.code],
  );
}

/** @param {Card["parts"][number]} part @param {string[]} socks */
function row({ title, figure, words, boxes }, socks) {
  return html`<li>
    <h3>${title}</h3>
    <p class="card-figure ${/→/.test(figure) ? "turned" : ""}">${figure}</p>
    <div class="card-ticks">
      <p>${words}</p>
      ${socks.map(
        (sock) =>
          html`<div class="card-boxes"><b>${sock}</b>${boxes.map((box) => html`<i>${box}</i>`)}</div>`,
      )}
    </div>
  </li>`;
}

/** @param {{name: string, text: string}} fact a line to write on where there is no text */
function fact({ name, text }) {
  return html`<div><dt>${name}</dt><dd class=${text ? "" : "to-write"}>${text}</dd></div>`;
}

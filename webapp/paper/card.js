/**
 * A quarter of a sheet of paper with the counts of a pair, to tick off beside the machine: shown as it will
 * be printed, with the two lines that may be written on.
 * @import {Asks, Card, Request} from "../page/types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/paper";
import { dayShown, today } from "../book/days.js";
import { showPicture } from "../page/picture.js";
import { short } from "../page/short.js";
import { paperSheet } from "./sheet.js";
import { toPaper } from "./to_paper.js";

/**
 * @param {Asks} engine @param {Request} request
 * @param {string} address of the counts alone, "" where there is none
 */
export async function showCard(engine, request, address) {
  const card = /** @type {Card} */ (await engine.ask({ do: "card", request, text: address }));
  const written = { label: "", date: "" };
  const sheet = paperSheet("card-sheet");
  const print = () => {
    const { label, date } = written;
    const lines = [fact(say.forLine, short(label)), fact(say.dateLine, date && dayShown(date))];
    sheet.close();
    toPaper(drawn(card, lines), [card.drawing, card.code]);
  };
  const lines = [
    html`<div><dt><label for="card-label">${say.forLine}</label></dt><dd><input class="tag-line" id="card-label" dir="auto" autocomplete="off" enterkeyhint="next"
      @input=${(/** @type {any} */ { target }) => (written.label = target.value)} /></dd></div>`,
    html`<div><dt><label for="card-date">${say.dateLine}</label></dt><dd><input class="tag-line" id="card-date" type="date" max=${`${today().slice(0, 2)}99-12-31`}
      @input=${(/** @type {any} */ { target }) => (written.date = target.value)} /></dd></div>`,
  ];
  render(
    html`<div class="paper-sheet-head">
        <h2 id="card-sheet-title" tabindex="-1" autofocus>${say.cardTitle}</h2>
        <button type="button" @click=${() => sheet.close()}>${say.close}</button>
      </div>
      <p class="quiet">${say.tapToWriteCard}</p>
      <div class="preview">${drawn(card, lines)}</div>
      <div class="row paper-ways"><button type="button" class="go" id="print-this-card" @click=${print}>${say.printCard}</button></div>`,
    sheet,
  );
  const places = /** @type {NodeListOf<HTMLElement>} */ (sheet.querySelectorAll(".code-place"));
  showPicture(card.drawing, places[0]);
  showPicture(card.code ?? "", places[1]);
  sheet.showModal();
}

/** @param {Card} card @param {unknown[]} lines to write on */
function drawn({ title, parts, socks, bands, code_words, facts }, lines) {
  return html`<section class="card">
    <div class="card-head">
      <h2>${title}</h2>
      <div class="card-sock code-place"></div>
    </div>
    <ol class="card-parts">${parts.map((part) => row(part, socks))}</ol>
    ${bands.length ? html`<ol class="card-bands">${bands.map((band) => html`<li>${band}</li>`)}</ol>` : nothing}
    ${code_words ? html`<p class="card-code-words">${code_words}</p>` : nothing}
    <div class="card-end">
      <dl>${facts.map(({ name, text }) => fact(name, text))} ${lines}</dl>
      <div class="card-code code-place"></div>
    </div>
  </section>`;
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

/** @param {string} name @param {string} text a line to write on where there is none */
function fact(name, text) {
  return html`<div><dt>${name}</dt><dd class=${text ? "" : "to-write"}><bdi>${text}</bdi></dd></div>`;
}

/**
 * The table over sizes as it stands on screen, on paper and in a file.
 * @import {Chart, Request} from "../page/types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { csv } from "../page/csv.js";
import { printOnly } from "../page/paper.js";
import { save } from "../page/save.js";

/** @type {IntersectionObserver | undefined} */
let looking;

/** @param {Chart["rows"][number]} row @param {Chart} chart @param {"own" | ""} own this very foot's, on the screen alone */
function drawn({ label, length, rounds }, { by, column: mine }, own = "") {
  return html`<tr class=${own}>
    <th scope="row"><b>${label}</b> <small>${by === "length" && !own ? length.other : length.text}</small></th>
    ${rounds.map((count, column) => html`<td class=${column === mine?.at ? "own" : ""}>${count ?? "–"}</td>`)}
  </tr>`;
}

/**
 * @param {Chart | null} chart null while there is none to show
 * @param {HTMLElement} place @param {Request} [request]
 */
export function renderTable(chart, place, request) {
  if (!chart) {
    const none = html`<p class="quiet">${say.tableWaits}</p>`;
    return render(none, place);
  }
  const slots = String(/** @type {any} */ (request).cylinder?.slots ?? "").trim();
  const per = chart.columns[0].text.split(" / ")[1];
  const { own, column: mine } = chart;
  const rows = chart.rows.map((row) => drawn(row, chart));
  if (own) rows.splice(own.at, 0, drawn(own, chart, "own"));
  render(
    html`
      <div class="scroll" tabindex="0" role="region" aria-label=${say.table}>
        <table class="chart">
          <caption>${chart.title}</caption>
          <thead>
            <tr>
              <th scope="col" rowspan="2">${chart.head}</th>
              <th scope="colgroup" colspan=${chart.columns.length}>${say.roundsPer({ unit: per })}</th>
            </tr>
            <tr>
              ${chart.columns.map(
                (column, at) => html`<th scope="col" class=${at === mine?.at ? "own" : ""}>
                  ${column.text.split(" / ")[0]}${at === mine?.at ? html`<small class="this">${mine.exact ? say.yours : say.nearYours}</small>` : nothing}</th>`,
              )}
            </tr>
          </thead>
          <tbody>
            ${rows}
          </tbody>
        </table>
      </div>
      <ul class="assumptions">${chart.assumptions.map((line) => html`<li>${line}</li>`)}</ul>
      <div class="row">
        <button type="button" id="print-table" @click=${() => printOnly("table")}>${say.printTable}</button>
        <button type="button" id="save-table" @click=${() => save(csv(chart.cells), `heelwise-${slots}-slots.csv`, "text/csv")}>${say.saveCsv}</button>
      </div>
    `,
    place,
  );
  looking?.disconnect();
  const box = /** @type {HTMLElement} */ (place.querySelector(".scroll"));
  looking = new IntersectionObserver(
    ([last]) => box.classList.toggle("wider", last.intersectionRatio < 0.9),
    { root: box, threshold: 0.9 },
  );
  looking.observe(/** @type {HTMLElement} */ (box.querySelector("thead tr + tr > :last-child")));
}

/**
 * The table over sizes as it stands on screen, on paper and in a file.
 * @import {Chart, Request} from "./types"
 */
import { html, nothing, render } from "lit-html";
import { printOnly } from "./paper.js";
import { save } from "./save.js";

/** @type {IntersectionObserver | undefined} */
let looking;

/**
 * @param {Chart | null} chart null while there is none to show
 * @param {HTMLElement} place @param {Request} [request]
 */
export function renderTable(chart, place, request) {
  if (!chart) {
    const none = html`<p class="quiet">The table stands here once there are counts and nothing is to mend.</p>`;
    return render(none, place);
  }
  const slots = String(/** @type {any} */ (request).cylinder?.slots ?? "").trim();
  const per = chart.columns[0].text.split(" / ")[1];
  const own = chart.nearest;
  render(
    html`
      <div class="scroll" tabindex="0" role="region" aria-label="Table over sizes">
        <table class="chart">
          <caption>${chart.title}</caption>
          <thead>
            <tr>
              <th scope="col" rowspan="2">${chart.head}</th>
              <th scope="colgroup" colspan=${chart.columns.length}>Rounds per ${per}, loose to firm</th>
            </tr>
            <tr>
              ${chart.columns.map(
                (column, at) => html`<th scope="col" class=${at === own.column ? "own" : ""}>
                  ${column.text.split(" / ")[0]}${at === own.column ? html`<small>yours</small>` : nothing}</th>`,
              )}
            </tr>
          </thead>
          <tbody>
            ${chart.rows.map(
              (row, at) => html`<tr class=${at === own.row ? "own" : ""}>
                <th scope="row"><b>${row.label}</b>
                  <small>${chart.by === "length" ? row.length.other : row.length.text}</small>
                  ${at === own.row ? html`<small class="this">nearest to<br />this foot</small>` : nothing}</th>
                ${row.rounds.map((rounds, column) => html`<td class=${column === own.column ? "own" : ""}>${rounds ?? "–"}</td>`)}
              </tr>`,
            )}
          </tbody>
        </table>
      </div>
      <ul class="assumptions">${chart.assumptions.map((line) => html`<li>${line}</li>`)}</ul>
      <div class="row">
        <button type="button" id="print-table" @click=${() => printOnly("table")}>Print the table</button>
        <button type="button" id="save-table" @click=${() => save(chart.csv, `heelwise-${slots}-slots.csv`, "text/csv")}>Save as CSV</button>
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
  looking.observe(/** @type {HTMLElement} */ (box.querySelector("thead tr + tr :last-child")));
}

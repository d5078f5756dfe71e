/**
 * How the knitted socks came out: of each sock one that was measured, the range that was promised and what the
 * tape said, one under the other; what that says of the knitter; and all of it as a file. It stays on the phone.
 * @import {KnittedRecord, CameOut as Row} from "../page/answers"
 * @import {Ended} from "./types"
 */
import { html, nothing, svg } from "lit-html";
import * as say from "words/machine";
import { csv } from "../page/csv.js";
import { save } from "../page/save.js";
import { short } from "../page/short.js";
import { day } from "./on_machine.js";

const [WIDE, HIGH] = [300, 32];
const DATE = new Intl.DateTimeFormat("sv-SE"); // as ISO 8601 and spreadsheets write it: 2026-11-14
const LEAST = 0.05; // of the planned length, to either side
const SOME = 20; // drawn; the file has all

export class CameOut {
  /** @type {KnittedRecord | null} */
  #record = null;
  #words = "";

  /** @param {(call: object) => Promise<any>} ask the calculator @param {() => void} draw */
  constructor(ask, draw) {
    this.ask = ask;
    this.redraw = draw;
  }

  /** The pairs have changed. */
  forget() {
    this.#record = null;
    this.#words = "";
  }

  /** @param {Ended[]} all the one ended last first */
  template(all) {
    const measured = all.filter((one) => one.measured?.length);
    if (!measured.length) return nothing;
    const record = this.#record;
    if (!record)
      return html`<button type="button" id="came-out" @click=${() => this.#look(measured)}>${say.howTheyCameOut}</button>
        <p role="status">${this.#words}</p>`;
    const newest = record.rows.slice(-SOME).reverse();
    return html`<section class="came-out" aria-labelledby="came-out-title">
      <h3 id="came-out-title" tabindex="-1">${say.howTheyCameOut}</h3>
      ${record.words.map((words) => html`<p>${words}</p>`)}
      ${record.left_out ? html`<p class="quiet">${say.leftOut({ pairs: record.left_out })}</p>` : nothing}
      <p class="quiet">${say.howToRead}</p>
      <ol>${newest.map((row) => html`<li><b><bdi>${row.name}</bdi></b> ${day(Date.parse(`${row.day}T12:00`))}${plot(row, newest)}<p>${row.words}</p></li>`)}</ol>
      <button type="button" id="save-record" @click=${() => save(csv(record.cells), "heelwise-socks.csv", "text/csv")}>${say.saveRecord}</button>
    </section>`;
  }

  /** @param {Ended[]} measured */
  async #look(measured) {
    this.#words = say.workingOut;
    this.redraw();
    try {
      // The one ended first leads, as a table has it.
      const pairs = measured.toReversed().map(({ request, measured: one, who, label, ended }) => ({
        request,
        measured: one,
        name: short(who ?? label),
        day: DATE.format(ended),
      }));
      this.#record = await this.ask({ do: "record", pairs });
      this.#words = "";
    } catch {
      this.#words = say.notDone;
    }
    this.redraw();
    document.getElementById("came-out-title")?.focus();
  }
}

/** The promised range as a bar about the planned length; in it a dot, beyond it a cross. @param {Row} row @param {Row[]} rows */
function plot({ off, promised, held }, rows) {
  const most = Math.max(LEAST, ...rows.flatMap((one) => [one.off, ...one.promised].map(Math.abs)));
  const at = (/** @type {number} */ share) => WIDE / 2 + (share / most) * (WIDE / 2 - 10);
  const [low, high] = [at(promised[0] ?? 0), at(promised[1] ?? 0)];
  const [x, y] = [at(off), HIGH / 2];
  const mark = held
    ? svg`<circle cx=${x} cy=${y} r="6" />`
    : svg`<path class="cross" d="M${x - 6} ${y - 6}l12 12m0-12l-12 12" />`;
  return html`<svg viewBox="0 0 ${WIDE} ${HIGH}" aria-hidden="true" focusable="false">
    ${svg`<rect x=${low} y="8" width=${high - low} height=${HIGH - 16} /><path d="M${WIDE / 2} 2v${HIGH - 4}" />${mark}`}
  </svg>`;
}

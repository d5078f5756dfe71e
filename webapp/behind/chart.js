/**
 * The table over sizes: asked for only while it is open on screen, with what is typed for it kept apart
 * from the plan's own fields.
 * @import {Answer, Asks, Chart, Problem, Request, Values} from "../page/types"
 * @import {Draft} from "../page/draft.js"
 * @import {StepsNav} from "../page/steps_nav.js"
 */
import { FOLLOWED, Form } from "../page/form.js";
import { Newest } from "../page/newest.js";
import { ProblemsBeside } from "../page/problems_beside.js";
import { toRequest } from "../page/request.js";
import { spelled } from "../page/spelled.js";
import { renderTable } from "./table.js";

const ROWS = ["chart.first", "chart.last", "chart.step"];
const ALL = [...ROWS, "chart.loosest", "chart.firmest", "chart.between"];

export class ChartScreen {
  /** @type {Request | undefined} the request that the counts on screen answer */
  #request;
  /** @type {Map<string, Values>} what was typed for the rows of each kind */
  #rows = new Map();
  #by = "";

  /** @param {{engine: Asks, nav: StepsNav, draft: Draft, onTrouble: (sentence: string) => void}} parts */
  constructor({ engine, nav, draft, onTrouble }) {
    this.nav = nav;
    this.draft = draft;
    this.onTrouble = onTrouble;
    this.newest = new Newest(engine);
    this.fold = /** @type {HTMLDetailsElement} */ (document.getElementById("chart"));
    this.place = /** @type {HTMLElement} */ (document.getElementById("chart-place"));
    this.form = new Form(/** @type {HTMLFormElement} */ (document.getElementById("chart-form")));
    this.problems = new ProblemsBeside(this.form);
    this.take(draft.chart ?? {});
    this.form.addEventListener("asked", () => this.place.focus());
    this.form.addEventListener("change", (event) => {
      this.#typed(/** @type {CustomEvent} */ (event).detail);
    });
    draft.addEventListener("change", (event) => {
      const { names, all } = /** @type {CustomEvent} */ (event).detail;
      if (!names.includes("chart")) return;
      this.#by = draft.chart?.["chart.by"] || this.#by;
      this.form.follow(draft.chart ?? {}, all);
      this.#showUnitOfRows();
    });
    this.fold.addEventListener("toggle", () => this.#work());
    nav.addEventListener("step", () => this.#work());
  }

  /** The counts have changed, and the table with them. @param {Answer} answer */
  follow(answer) {
    this.#request = answer.plan && answer.request;
    this.#work();
  }

  /** As `Form.showIn`, the lengths put by as well. @param {string} units */
  showIn(units) {
    if (units === this.form.units) return;
    const lengths = this.#rows.get("length") ?? {};
    for (const [name, text] of Object.entries(lengths)) {
      lengths[name] = spelled(text, this.form.units);
    }
    this.form.showIn(units);
  }

  /** @param {Values} values typed elsewhere or before */
  take(values) {
    this.#by = values["chart.by"] || this.form.value("chart.by");
    this.form.fill(values);
    this.#showUnitOfRows();
  }

  /** @param {string} name of the field */
  #typed(name) {
    const by = this.form.value("chart.by");
    if (by !== this.#by) this.#exchangeRows(by);
    if (name !== FOLLOWED) this.draft.type("chart", this.form);
    this.problems.touch(ALL); // what is typed in one may be wrong with another
    this.#work();
  }

  /** From 36 to 42 means nothing in another system: each keeps its own. @param {string} by */
  #exchangeRows(by) {
    const values = this.form.values();
    this.#rows.set(this.#by, Object.fromEntries(ROWS.map((name) => [name, values[name] ?? ""])));
    this.#by = by;
    const blank = Object.fromEntries(ROWS.map((name) => [name, ""]));
    this.form.fill({ ...values, ...blank, ...this.#rows.get(by) });
    this.#showUnitOfRows();
  }

  #showUnitOfRows() {
    for (const typed of document.querySelectorAll("#chart-rows .typed")) {
      typed.classList.toggle("with-unit", this.#by === "length");
    }
  }

  #work() {
    this.newest.drop();
    if (!this.fold.open || this.nav.step !== "counts") return;
    if (!this.#request) return renderTable(null, this.place);
    const request = this.#request;
    const { chart = {} } = toRequest(this.form.values());
    this.newest.work(async (ask) => {
      /** @type {Chart & {errors?: Problem[]}} */
      const answer = await ask({ do: "chart", request, chart });
      this.problems.show(answer.errors ?? []);
      if (answer.errors) return renderTable(null, this.place);
      this.#showTaken(answer.taken);
      renderTable(answer, this.place, request);
    }, this.onTrouble);
  }

  /** What the table goes by stands in grey in the fields that were left out. @param {Values} taken */
  #showTaken(taken) {
    for (const [name, text] of Object.entries(taken)) {
      const input = this.form.input(`chart.${name}`);
      const unit = input?.parentElement?.classList.contains("with-unit");
      if (input instanceof HTMLInputElement) {
        input.placeholder = unit ? text.replace(/ (cm|in|\/ .*)$/, "") : text;
      }
    }
  }
}

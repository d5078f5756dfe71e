/**
 * Copies of all that the phone keeps: saved to a file, taken in from one with nothing overwritten unasked;
 * and the orders as a table.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 * @import {Change, Found, Machine} from "./types"
 */
import { html, nothing } from "lit-html";
import { today } from "../book/days.js";
import { lastCopy, remember } from "../book/last_copy.js";
import { sorted } from "../book/orders.js";
import { save } from "../page/save.js";
import { compare } from "./compare.js";
import { copyOf, readCopy, Unreadable } from "./file.js";
import { merging } from "./merging.js";
import { OrdersPaper } from "./orders_paper.js";
import { ordersTable } from "./orders_table.js";
import { visitsOf } from "./visits.js";
import { counted, inWords, listed } from "./words.js";

const BUSY = "One moment…";
const NOT_KEPT =
  " The phone does not keep all of it just now. Do not delete the file: what is not kept is gone once the page is closed.";

export class Copies {
  #said = "";
  #wrong = "";
  /** @type {Found | null} */
  #found = null;
  #ways = {
    take: (/** @type {Change[]} */ changes) => this.#take(changes),
    leave: () => this.#say({ said: "Nothing was changed." }),
    redraw: () => this.redraw(),
  };

  /** @param {{ host: Host, wearers: Wearers, draw: () => void }} parts */
  constructor({ host, wearers, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.redraw = draw;
    this.paper = new OrdersPaper({ host, wearers, draw });
  }

  shown() {
    this.paper.shown();
    this.#say({});
  }

  template() {
    const none = !this.wearers.all.length;
    return html`
      <h2 id="book-title" tabindex="-1">Copies and lists</h2>
      <div role="status">${this.#said ? html`<p class="note">${this.#said}</p>` : nothing}</div>
      ${this.#found ? merging(this.#found, this.#ways) : nothing}
      <h3>Save a copy</h3>
      <p>All that this page keeps on the phone, in one file: every wearer with every visit, your own page, your cylinders and yarns, the table over sizes, and what was counted and set at the machine. Keep it away from this phone: it holds people’s measures. ${lastCopy()}</p>
      <button type="button" id="save-copy" @click=${() => this.save()}>Save all to a file</button>
      <hr class="knit" />
      <div class="field">
        <label for="take-copy">Take a copy in</label>
        <p class="where" id="take-copy-where">A file saved here or on another phone. You see what it would change before anything is changed.</p>
        <div class="entry"><div class="typed"><input id="take-copy" type="file" accept=".json,application/json" aria-describedby="take-copy-where take-copy-error"
          @change=${(/** @type {Event} */ event) => this.#read(/** @type {HTMLInputElement} */ (event.target))} /></div></div>
        <p class="error" id="take-copy-error" role="alert">${this.#wrong}</p>
      </div>
      <hr class="knit" />
      ${this.paper.template()}
      <hr class="knit" />
      <h3>Orders for a spreadsheet</h3>
      <p>Labels, promised days, wishes and prices, without measures.</p>
      <button type="button" id="save-orders" ?disabled=${none} @click=${() => this.#saveOrders()}>Save the orders as CSV</button>`;
  }

  async save() {
    this.#say({ said: BUSY });
    const { all } = this.wearers;
    const visits = await visitsOf(
      this.wearers,
      all.map(({ id }) => id),
    );
    if (!visits) {
      return this.#say({
        said: "The phone does not hand out all visits just now. Try again in a while; nothing was saved.",
      });
    }
    const book = all.map((wearer) => ({ wearer, visits: visits.get(wearer.id) ?? [] }));
    const machine = await this.#machine();
    if (!machine) return;
    const { pairs, settings, whole } = await machine.copy();
    const sheets = this.host.sheets.copy();
    const name = `heelwise-all-${today()}.json`;
    save(copyOf({ book, sheets, pairs, settings }), name, "application/json");
    remember();
    const what = listed([
      counted("wearer", book.length),
      ...(pairs.length ? [counted("pair", pairs.length)] : []),
      "all that you typed",
    ]);
    const lacking = whole
      ? ""
      : " The phone did not hand out all pairs at the machine: some are not in it. Save another copy in a while.";
    const aside = this.wearers.aside.length ? " What was set aside is not in it." : "";
    this.#say({ said: `Saved to a file: ${what}.${lacking}${aside}` });
  }

  /** @returns {Promise<Machine | undefined>} */
  async #machine() {
    try {
      return await this.host.knitting();
    } catch {
      this.#say({
        said: "What was counted at the machine could not be loaded, so nothing was saved. Look whether there is a network, and try again.",
      });
    }
  }

  #saveOrders() {
    const table = ordersTable(sorted(this.wearers.all, "due"));
    save(table, `heelwise-orders-${today()}.csv`, "text/csv");
    this.#say({ said: "The orders were saved." });
  }

  /** @param {HTMLInputElement} input */
  async #read(input) {
    const file = input.files?.[0];
    if (!file) return;
    this.#say({ said: BUSY });
    try {
      const found = await compare(await readCopy(file), this);
      if (found.changes.length) this.#say({ found });
      else this.#say({ said: "All of that copy is here already. Nothing was changed." });
    } catch (error) {
      const wrong =
        error instanceof Unreadable
          ? error.message
          : "The file could not be opened. Nothing was taken in. Pick it once more.";
      this.#say({ wrong });
    }
    input.value = "";
    document.getElementById("book-title")?.focus();
  }

  /** @param {Change[]} changes */
  async #take(changes) {
    /** @type {Change[]} */
    const left = [];
    this.#say({ said: BUSY });
    for (const one of changes) {
      try {
        // Waited for only where there is something to wait for: else the page is drawn for each anew.
        const storing = one.put();
        if (storing) await storing;
      } catch {
        left.push(one);
      }
    }
    const pairs = changes.some(({ kind }) => kind === "pair");
    const machine = pairs ? await this.host.knitting() : undefined;
    await machine?.taken();
    await this.wearers.flush();
    if (left.length) {
      return this.#say({
        wrong: `The phone did not store ${inWords(left)}: that is as it was. All else is taken in. Pick the file once more.`,
      });
    }
    const chosen = changes.filter(({ how }) => how === "other");
    const added = changes.filter(({ how }) => how !== "other");
    const kept = this.wearers.kept && this.host.sheets.kept() && machine?.kept !== false;
    this.#say({
      said: `Taken in: ${added.length ? inWords(added) : "nothing"} added${chosen.length ? `, ${inWords(chosen)} as you chose` : ""}.${kept ? "" : NOT_KEPT}`,
    });
  }

  /** @param {{ said?: string, wrong?: string, found?: Found | null }} what */
  #say({ said = "", wrong = "", found = null }) {
    [this.#said, this.#wrong, this.#found] = [said, wrong, found];
    this.redraw();
  }
}

/**
 * Copies of the book: saved to a file, taken in from one with nothing overwritten unasked, and the
 * orders as a table.
 * @import {Deleted, Host} from "./types"
 * @import {Differing, Found} from "./merge.js"
 * @import {Wearers} from "./wearers.js"
 */
import { html, nothing } from "lit-html";
import { save } from "../page/save.js";
import { short } from "../page/short.js";
import { copyOf, readCopy, Unreadable } from "./copy.js";
import { dayOf, today } from "./days.js";
import { chosen, compare, differences } from "./merge.js";
import { sorted } from "./orders.js";
import { OrdersPaper } from "./orders_paper.js";
import { ordersTable } from "./orders_table.js";

const SAVED = "heelwise.copied";

/** When the last copy was saved, in words. */
export function lastCopy() {
  try {
    const at = Number(localStorage.getItem(SAVED));
    return at ? `Last copy: ${dayOf(at)}.` : "No copy of the book was saved yet.";
  } catch {
    return "";
  }
}

export class CopiesScreen {
  #said = "";
  #wrong = "";
  /** @type {Found | null} */
  #found = null;

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
      ${this.#found ? this.#merging(this.#found) : nothing}
      <h3>Save a copy</h3>
      <p>All wearers with every visit in one file. Keep it away from this phone: it holds people’s measures. ${lastCopy()}</p>
      <button type="button" id="save-copy" ?disabled=${none} @click=${() => this.#save()}>Save all to a file</button>
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

  async #save() {
    /** @type {Deleted[]} */
    const book = [];
    for (const wearer of this.wearers.all) {
      const visits = await this.wearers.visits(wearer.id);
      if (!visits)
        return this.#say({
          wrong:
            "The phone does not hand out all visits just now. Try again in a while; nothing was saved.",
        });
      book.push({ wearer, visits });
    }
    save(copyOf(book), `heelwise-wearers-${today()}.json`, "application/json");
    try {
      localStorage.setItem(SAVED, String(Date.now()));
    } catch {
      // The day is then not known next time.
    }
    this.#say({ said: `A copy of ${counted(book.length)} was saved.` });
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
    try {
      const found = await compare(readCopy(await file.text()), this.wearers);
      if (found.fresh.length || found.differing.length) this.#say({ found });
      else this.#say({ said: "All of that copy is in the book already. Nothing was changed." });
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

  /** @param {Found} found */
  #merging(found) {
    const { fresh, same, differing } = found;
    return html`<section class="line visit" aria-label="What the copy would change">
      <p><strong>To add: ${counted(fresh.length)}.</strong>
        ${same ? `As they are here: ${counted(same)}.` : nothing}
        ${differing.length ? `Other than here: ${counted(differing.length)}; choose which to keep.` : nothing}</p>
      ${differing.map((one, at) => this.#choice(one, at))}
      <div class="row"><button type="button" id="take-in" @click=${() => this.#take(found)}>Take it in</button>
        <button type="button" id="leave-copy" @click=${() => this.#say({ said: "Nothing was changed." })}>Leave all as it is</button></div>
    </section>`;
  }

  /** @param {Differing} one @param {number} at */
  #choice(one, at) {
    const take = (/** @type {Differing["take"]} */ which) => {
      one.take = which;
      this.redraw();
    };
    return html`<fieldset class="differing">
      <legend><bdi>${short(one.here.wearer.label)}</bdi></legend>
      <table><thead><tr><td></td><th scope="col">here</th><th scope="col">in the file</th></tr></thead>
        <tbody>${differences(one).map(
          ({ title, here, file }) =>
            html`<tr><th scope="row">${title}</th><td><bdi>${short(here) || "–"}</bdi></td><td><bdi>${short(file) || "–"}</bdi></td></tr>`,
        )}</tbody></table>
      <div class="choice">${
        /** @type {const} */ ([
          ["here", "keep what is here"],
          ["file", "take the file’s"],
        ]).map(
          ([which, words]) =>
            html`<label><input type="radio" name="differing-${at}" .checked=${one.take === which} @change=${() => take(which)} /><span>${words}</span></label>`,
        )
      }</div>
    </fieldset>`;
  }

  /** @param {Found} found */
  #take({ fresh, differing }) {
    for (const one of fresh) this.wearers.restore(one);
    for (const one of differing) {
      // A sheet that still lies on the table would be written over the file's.
      if (one.take === "file") this.host.forget(one.here.wearer.id);
      this.wearers.restore(chosen(one));
    }
    this.#say({
      said: `Taken in: ${counted(fresh.length)} added${differing.length ? `, ${counted(differing.length)} as you chose` : ""}.`,
    });
  }

  /** @param {{ said?: string, wrong?: string, found?: Found | null }} what */
  #say({ said = "", wrong = "", found = null }) {
    [this.#said, this.#wrong, this.#found] = [said, wrong, found];
    this.redraw();
  }
}

/** @param {number} many */
function counted(many) {
  return many === 1 ? "one wearer" : `${many} wearers`;
}

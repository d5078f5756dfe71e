/**
 * Copies of all that the phone keeps, saved to a file and taken in from one; and the orders on paper and as
 * a table.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/copies";
import { today } from "../book/days.js";
import { sorted } from "../book/orders.js";
import { save } from "../page/save.js";
import { OrdersPaper } from "./orders_paper.js";
import { ordersTable } from "./orders_table.js";
import { SaveCopy } from "./save_copy.js";
import { TakeIn } from "./take_in.js";

export class Copies {
  #said = "";

  /** @param {{ host: Host, wearers: Wearers, draw: () => void }} parts */
  constructor({ host, wearers, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.redraw = draw;
    const tell = (/** @type {string} */ said) => this.#tell(said);
    this.paper = new OrdersPaper({ host, wearers, draw });
    this.saving = new SaveCopy({ host, wearers, tell, draw });
    this.taking = new TakeIn({ host, wearers, tell, draw });
  }

  shown() {
    this.paper.shown();
    this.saving.shown();
    this.taking.shown();
    this.#tell("");
    const came = this.host.came();
    if (came) this.taking.take(came.file);
  }

  template() {
    return html`
      <h2 id="book-title" tabindex="-1">${say.copiesAndLists}</h2>
      <div role="status">${this.#said ? html`<p class="note">${this.#said}</p>` : nothing}</div>
      ${this.taking.found()}
      ${this.saving.template()}
      <hr class="knit" />
      ${this.taking.template()}
      <hr class="knit" />
      ${this.paper.template()}
      <hr class="knit" />
      <h3>${say.ordersTable}</h3>
      <p>${say.ordersTableHolds}</p>
      <button type="button" id="save-orders" ?disabled=${!this.wearers.all.length} @click=${() => this.#saveOrders()}>${say.saveOrders}</button>`;
  }

  save() {
    return this.saving.save();
  }

  #saveOrders() {
    const table = ordersTable(sorted(this.wearers.all, "due"));
    save(table, `heelwise-orders-${today()}.csv`, "text/csv");
    this.#tell(say.ordersSaved);
  }

  /** @param {string} said what has been done */
  #tell(said) {
    this.#said = said;
    this.redraw();
  }
}

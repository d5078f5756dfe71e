/**
 * What is asked before the orders go to paper: which of them, and whether the measures go along.
 * @import {Host, Order} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 */
import { html, nothing } from "lit-html";
import { measuresOf } from "../book/measures.js";
import { sorted } from "../book/orders.js";

const NOT_NOW = "The list could not be made just now. Tap once more, or load the page again.";

export class OrdersPaper {
  #all = false;
  #measures = false;
  #wrong = "";

  /** @param {{ host: Host, wearers: Wearers, draw: () => void }} parts */
  constructor({ host, wearers, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.redraw = draw;
  }

  shown() {
    this.#wrong = "";
  }

  template() {
    const none = !this.#listed().length;
    return html`
      <h3>Orders on paper</h3>
      <p>A list with a box to tick for each, the day promised soonest first.</p>
      ${this.#choice("orders-which", "Which orders", this.#all, ["still open", "all"], (all) => {
        this.#all = all;
      })}
      ${this.#choice(
        "orders-measures",
        "Measures",
        this.#measures,
        ["without", "with them"],
        (measures) => {
          this.#measures = measures;
        },
      )}
      ${none ? html`<p class="quiet">There is no order to print.</p>` : nothing}
      <button type="button" id="print-orders" ?disabled=${none} @click=${() => this.#print()}>Print the orders</button>
      <div role="status">${this.#wrong ? html`<p class="note">${this.#wrong}</p>` : nothing}</div>`;
  }

  /**
   * @param {string} name @param {string} title @param {boolean} now
   * @param {[string, string]} words for no and for yes @param {(yes: boolean) => void} take
   */
  #choice(name, title, now, words, take) {
    return html`<fieldset>
      <legend>${title}</legend>
      <div class="choice">${words.map(
        (word, at) =>
          html`<label><input type="radio" name=${name} .checked=${now === Boolean(at)} @change=${() => {
            take(Boolean(at));
            this.redraw();
          }} /><span>${word}</span></label>`,
      )}</div>
    </fieldset>`;
  }

  #listed() {
    const all = sorted(this.wearers.all, "due");
    return this.#all ? all : all.filter(({ state }) => state !== "handed over");
  }

  async #print() {
    try {
      const title = this.#all ? "All orders" : "Open orders";
      await this.host.printOrders(title, await this.#orders());
      this.#wrong = "";
    } catch {
      this.#wrong = NOT_NOW;
    }
    this.redraw();
  }

  /** @returns {Promise<Order[]>} */
  async #orders() {
    const orders = [];
    for (const wearer of this.#listed()) {
      const visits = this.#measures ? await this.wearers.visits(wearer.id) : [];
      if (!visits) throw new Error("the phone does not hand out the visits");
      orders.push({ wearer, measures: measuresOf(visits.at(-1)?.values ?? {}) });
    }
    return orders;
  }
}

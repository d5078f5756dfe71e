/**
 * What is asked before the orders go to paper: which of them, and whether the measures go along.
 * @import {Host, Order} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/copies";
import { measuresOf } from "../book/measures.js";
import { sorted } from "../book/orders.js";

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
      <h3>${say.ordersOnPaper}</h3>
      <p>${say.ordersListed}</p>
      ${this.#choice(
        "orders-which",
        say.whichOrders,
        this.#all,
        [say.stillOpen, say.all],
        (all) => {
          this.#all = all;
        },
      )}
      ${this.#choice(
        "orders-measures",
        say.measures,
        this.#measures,
        [say.without, say.withThem],
        (measures) => {
          this.#measures = measures;
        },
      )}
      ${none ? html`<p class="quiet">${say.noOrder}</p>` : nothing}
      <button type="button" id="print-orders" ?disabled=${none} @click=${() => this.#print()}>${say.printOrders}</button>
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
      const title = this.#all ? say.allOrders : say.openOrders;
      await this.host.printOrders(title, await this.#orders());
      this.#wrong = "";
    } catch {
      this.#wrong = say.listNotMade;
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

/**
 * The line that says whose sheet is on the table when it is not her own: a wearer's, a shared plan, with
 * the way back and the way to make it hers, or the invented example, with its feet to pick and its way out.
 * @import {Visit} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { choose, feet } from "./demo.js";
import { oneLine } from "./one_line.js";
import { short } from "./short.js";
import { hasFoot } from "./values_of.js";

/**
 * @typedef {object} Ways
 * @property {() => void} back leave the visiting sheet for her own
 * @property {() => void} copy make it her own
 * @property {() => void} bringBack put back what stood on her sheet before it was emptied or replaced
 * @property {() => boolean} before whether there is such a thing
 * @property {() => boolean} mineEmpty
 * @property {(visit: Visit) => void} visit put another visiting sheet on the table
 */

export class VisitLine {
  #sure = false;
  /** What was wrong with a link, until it is read. */
  #refused = "";

  /** @param {Ways} ways */
  constructor(ways) {
    this.ways = ways;
    this.place = /** @type {HTMLElement} */ (document.getElementById("visit-line"));
    this.top = /** @type {HTMLElement} */ (document.getElementById("before-line"));
    this.end = /** @type {HTMLElement} */ (document.getElementById("measure-end"));
  }

  /** A link's plan is on its way: the calculator may still be starting. */
  opening() {
    render(html`<div class="line"><p>${say.openingShared}</p></div>`, this.place);
  }

  /** @param {Visit | null} visit @param {string} [refused] what was wrong with a link */
  show(visit, refused = "") {
    this.#sure = false;
    this.#refused = refused;
    const told = this.place.querySelector("details");
    if (told && visit?.kind !== "demo") told.open = false;
    this.#draw(visit);
  }

  /** Another step is on screen: what was wrong with a link is read. @param {Visit | null} visit */
  read(visit) {
    if (this.#refused) this.show(visit);
  }

  /** @param {Visit | null} visit */
  #draw(visit) {
    const understood = () => {
      this.read(visit);
      document.getElementById(`${document.documentElement.dataset.step}-title`)?.focus();
    };
    const kinds = { wearer: this.#wearer, link: this.#shared, demo: this.#example };
    const line = visit ? kinds[visit.kind].call(this, visit) : nothing;
    const no = this.#refused
      ? html`<div class="line trouble" role="alert"><p>${say.linkRefused({ problem: this.#refused })}</p>
          <button type="button" id="link-understood" @click=${understood}>${say.understood}</button></div>`
      : nothing;
    render(html`${no}${line}`, this.place);
    render(
      visit || !this.ways.before()
        ? nothing
        : html`<div class="line one-line">
            <p>${say.beforeKept}</p>
            <button type="button" id="bring-back" @click=${this.ways.bringBack}>${say.bringItBack}</button>
          </div>`,
      this.top,
    );
    render(
      visit
        ? visit.kind === "wearer"
          ? html`<hr class="knit" /><div class="row"><button type="button" data-book="new">${say.measureNext}</button>
              <button type="button" data-book="list">${say.backToBook}</button></div>`
          : nothing
        : html`<hr class="knit" />
            <p><button type="button" data-book="keep">${say.keepInBook({ what: "foot" })}</button></p>
            <p class="quiet">${say.seeExample}</p>
            <button type="button" id="load-demo" @click=${() => this.#showExample()}>${say.showExample}</button>`,
      this.end,
    );
  }

  /** Shown from its top: the button stands at the end of the page. */
  #showExample() {
    this.ways.visit(choose(0));
    scrollTo({ top: 0, behavior: "instant" });
    document.getElementById("measure-title")?.focus({ preventScroll: true });
  }

  /** Allergies are seen without a tap. @param {Visit} visit */
  #wearer({ label = "", allergy = "", wishes = "", old = "" }) {
    const whose = say.wearersSheet({ label: short(label) });
    return oneLine(
      allergy ? html`${whose}. ${say.allergy({ allergy: short(allergy) })}` : whose,
      html`<p>${say.wearersSaved}</p>
        ${old ? html`<p>${old}</p>` : nothing}
        ${wishes ? html`<p>${say.wished({ wishes: short(wishes) })}</p>` : nothing}`,
      this.#mine,
      "visit",
    );
  }

  get #mine() {
    return html`<button type="button" @click=${this.ways.back}>${say.backToMine}</button>`;
  }

  /** @param {Visit} visit */
  #shared(visit) {
    if (this.#sure) {
      return html`<div class="line visit">
        <p>${say.replacesMine}</p>
        <div class="row"><button type="button" @click=${this.ways.copy}>${say.replaceMine}</button>
          <button type="button" @click=${() => this.show(visit)}>${say.leaveMine}</button></div>
      </div>`;
    }
    const copy = () => {
      if (this.ways.mineEmpty()) return this.ways.copy();
      this.#sure = true;
      this.#draw(visit);
    };
    return oneLine(
      say.sharedPlan,
      html`<p>${say.sharedAbout}</p>
        <div class="row"><button type="button" @click=${copy}>${say.copyIntoMine}</button>
          <button type="button" data-book="keep">${say.keepInBook({ what: hasFoot(visit.values) ? "foot" : "counts" })}</button></div>`,
      this.#mine,
      "visit",
    );
  }

  /** @param {Visit} visit */
  #example(visit) {
    const who = feet[visit.foot ?? 0]?.who ?? "youngest";
    return oneLine(
      say.example({ who: say.exampleWho({ who }) }),
      html`<p>${say.exampleOf} ${say.exampleAbout({ who })}</p>
        <div class="row" role="group" aria-label=${say.exampleFeet}>
          ${feet.map(
            (foot, index) =>
              html`<button type="button" class="chosen" aria-pressed=${index === visit.foot} @click=${() => this.ways.visit(choose(index))}>${say.exampleWho({ who: foot.who })}</button>`,
          )}
        </div>`,
      this.#mine,
      "visit",
    );
  }
}

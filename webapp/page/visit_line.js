/**
 * The line that says whose sheet is on the table when it is not her own: a wearer's, a shared plan, with
 * the way back and the way to make it hers, or the invented example, with its feet to pick and its way out.
 * @import {Visit} from "./types"
 */
import { html, nothing, render } from "lit-html";
import { choose, feet, title } from "./demo.js";
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
    render(html`<div class="line"><p>Opening the shared plan…</p></div>`, this.place);
  }

  /** @param {Visit | null} visit @param {string} [refused] what was wrong with a link */
  show(visit, refused = "") {
    this.#sure = false;
    this.#refused = refused;
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
      ? html`<div class="line trouble" role="alert"><p>${this.#refused} Your own page is below, as you left it.</p>
          <button type="button" id="link-understood" @click=${understood}>Understood</button></div>`
      : nothing;
    render(html`${no}${line}`, this.place);
    render(
      visit || !this.ways.before()
        ? nothing
        : html`<div class="line row">
            <p>What stood here before is kept.</p>
            <button type="button" id="bring-back" @click=${this.ways.bringBack}>Bring it back</button>
          </div>`,
      this.top,
    );
    render(
      visit
        ? visit.kind === "wearer"
          ? html`<hr class="knit" /><div class="row"><button type="button" data-book="new">Measure the next wearer</button>
              <button type="button" data-book="list">Back to the book</button></div>`
          : nothing
        : html`<hr class="knit" />
            <p><button type="button" data-book="keep">Keep this foot in the book</button></p>
            <p class="quiet">Only looking? See it with an invented example: ${title}.</p>
            <button type="button" id="load-demo" @click=${() => this.#showExample()}>
              Show the example
            </button>`,
      this.end,
    );
  }

  /** Shown from its top: the button stands at the end of the page. */
  #showExample() {
    this.ways.visit(choose(0));
    scrollTo({ top: 0, behavior: "instant" });
    document.getElementById("measure-title")?.focus({ preventScroll: true });
  }

  /** @param {Visit} visit */
  #wearer({ label = "", allergy = "", wishes = "", old = "" }) {
    return html`<div class="line visit">
      <p><strong><bdi>${short(label)}</bdi></strong>, kept in the book as you type. Your own page is apart.</p>
      ${allergy ? html`<p><strong>Allergy: <bdi>${short(allergy)}</bdi></strong></p>` : nothing}
      ${old ? html`<p>${old}</p>` : nothing}
      ${wishes ? html`<p>Wished: <bdi>${short(wishes)}</bdi>.</p>` : nothing}
      <div class="row"><button type="button" data-book="list">Back to the book</button>
        <button type="button" @click=${this.ways.back}>Back to mine</button></div>
    </div>`;
  }

  /** @param {Visit} visit */
  #shared(visit) {
    if (this.#sure) {
      return html`<div class="line visit">
        <p>This puts the shared plan in the place of what you typed yourself.</p>
        <div class="row"><button type="button" @click=${this.ways.copy}>Replace mine</button>
          <button type="button" @click=${() => this.show(visit)}>Leave mine</button></div>
      </div>`;
    }
    const copy = () => {
      if (this.ways.mineEmpty()) return this.ways.copy();
      this.#sure = true;
      this.#draw(visit);
    };
    return html`<div class="line visit">
      <p><strong>A shared plan.</strong> It came by link. Your own is kept apart, untouched.</p>
      <div class="row"><button type="button" @click=${this.ways.back}>Back to mine</button>
        <button type="button" @click=${copy}>Copy it into mine</button>
        <button type="button" data-book="keep">Keep ${hasFoot(visit.values) ? "this foot" : "these counts"} in the book</button></div>
    </div>`;
  }

  /** @param {Visit} visit */
  #example(visit) {
    return html`<div class="line visit">
      <p><strong>An invented example:</strong> ${title}. Your own is kept apart.</p>
      <div class="row" role="group" aria-label="Feet of the example">
        ${feet.map(
          (foot, index) =>
            html`<button type="button" class="chosen" aria-pressed=${index === visit.foot} @click=${() => this.ways.visit(choose(index))}>${foot.who}</button>`,
        )}
      </div>
      <p class="quiet">${feet[visit.foot ?? 0]?.about}</p>
      <button type="button" id="remove-demo" @click=${this.ways.back}>Remove the example</button>
    </div>`;
  }
}

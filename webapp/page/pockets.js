/**
 * What a deeper heel or a blunter toe buys: those beside the planned ones, each at one tap, and the way
 * back to what was there before.
 * @import {Part, Plan, PocketChoice} from "./types"
 * @import {Form} from "./form.js"
 */
import { html, nothing, render } from "lit-html";

const FIELDS = /** @type {const} */ (["needles", "left"]);

export class Pockets {
  /** @type {Record<string, string[]>} by part, what was typed before a choice was taken */
  #before = {};

  /** @param {Form} form */
  constructor(form) {
    this.form = form;
    this.place = /** @type {HTMLElement} */ (document.getElementById("pockets-place"));
    form.addEventListener("change", (event) => {
      if (/** @type {CustomEvent} */ (event).detail === "") this.#before = {};
    });
  }

  /** @param {Plan | undefined} plan */
  show(plan) {
    render(
      plan
        ? html`<details id="pockets">
            <summary>Another heel or toe</summary>
            <p class="quiet">Fewer needles left make it deeper; foot rounds follow, so that the sock keeps its length.</p>
            ${plan.parts.map((part) => (plan.choices[part.part] ? this.#list(part, plan.choices[part.part]) : nothing))}
            <h4>How sure each count is</h4>
            <dl class="whys">
              ${plan.parts.map(({ part, title }) => html`<dt>${title}</dt><dd>${plan.range[part].words}</dd>`)}
            </dl>
          </details>`
        : nothing,
      this.place,
    );
  }

  /** @param {Part} of @param {PocketChoice[]} choices */
  #list({ part, title }, choices) {
    const typed = FIELDS.some((name) => this.form.value(`sock.${part}.${name}`).trim());
    return html`<h4>${title}, fewest left first</h4>
      <ul class="pocket-choices">
        ${choices.map(
          (choice) => html`<li>
            ${choice.words}
            ${
              choice.chosen
                ? html`<strong>This one is planned.</strong>`
                : html`<button type="button" aria-label=${`Use this ${part}: ${choice.left} left`}
                    @click=${() => this.#use(part, choice)}>Use this</button>`
            }
          </li>`,
        )}
      </ul>
      ${
        typed
          ? html`<button type="button" id=${`undo-${part}`} @click=${() => this.#undo(part)}>${
              this.#before[part] ? `Back to the ${part} before` : `Let the foot choose the ${part}`
            }</button>`
          : nothing
      }`;
  }

  /** @param {string} part @param {PocketChoice} choice */
  #use(part, choice) {
    this.#before[part] ??= FIELDS.map((name) => this.form.value(`sock.${part}.${name}`));
    for (const name of FIELDS) this.form.set(`sock.${part}.${name}`, String(choice[name]));
  }

  /** @param {string} part */
  #undo(part) {
    const before = this.#before[part] ?? ["", ""];
    delete this.#before[part];
    FIELDS.forEach((name, at) => {
      this.form.set(`sock.${part}.${name}`, before[at]);
    });
  }
}

/**
 * What a deeper heel or a blunter toe buys: those beside the planned ones, each at one tap, and the way
 * back to what was there before.
 * @import {Part, Plan, PocketChoice} from "./types"
 * @import {Form} from "./form.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";

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
            <summary>${say.anotherPocket}</summary>
            <p class="quiet">${say.fewerLeft}</p>
            ${plan.parts.map((part) => (plan.choices[part.part] ? this.#list(part, plan.choices[part.part]) : nothing))}
            <h4>${say.howSure}</h4>
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
    return html`<h4>${say.fewestFirst({ title })}</h4>
      <ul class="pocket-choices">
        ${choices.map(
          (choice) => html`<li>
            ${choice.words}
            ${
              choice.chosen
                ? html`<strong>${say.thisIsPlanned}</strong>`
                : html`<button type="button" aria-label=${say.usePocket({ title, left: choice.left })}
                    @click=${() => this.#use(part, choice)}>${say.useThis}</button>`
            }
          </li>`,
        )}
      </ul>
      ${
        typed
          ? html`<button type="button" id=${`undo-${part}`} @click=${() => this.#undo(part)}>${
              this.#before[part] ? say.backToBefore({ title }) : say.letFootChoose({ title })
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

/**
 * The way to pass a plan on: what stands behind its button is loaded once that is tapped.
 * @import {Answer, Asks} from "./types"
 * @import {Share} from "../paper/share.js"
 * @import {Sheets} from "./sheets.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { paper } from "./to_paper.js";

export class ToShare {
  /** @type {Share | undefined} */
  #share;
  /** @type {Extract<Answer, {plan: object}> | null} */
  #answer = null;
  #open = false;
  #button = /** @type {HTMLElement} */ (document.getElementById("to-share"));
  #place = /** @type {HTMLElement} */ (document.getElementById("share-place"));

  /** @param {{engine: Asks, sheets: Sheets}} parts */
  constructor(parts) {
    this.parts = parts;
    this.#button.addEventListener("click", () => {
      this.#open = !this.#open;
      this.#button.setAttribute("aria-expanded", String(this.#open));
      this.#draw();
    });
  }

  /** @param {Extract<Answer, {plan: object}> | null} answer null while there is nothing to share */
  show(answer) {
    this.#answer = answer;
    this.#button.hidden = !answer;
    this.#draw();
  }

  async #draw() {
    const place = this.#place;
    place.hidden = !this.#answer || !this.#open;
    if (place.hidden) return;
    try {
      const { Share } = await paper();
      if (!this.#share) render(nothing, place); // that it could not be loaded
      this.#share ??= new Share({ ...this.parts, place });
      if (this.#answer) this.#share.show(this.#answer);
    } catch (error) {
      console.error(error);
      render(html`<p class="note" role="alert">${say.shareNotLoaded}</p>`, place);
    }
  }
}

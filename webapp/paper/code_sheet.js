/**
 * A link as a code, white and as wide as the phone, for the other phone's camera.
 * @import {Asks, Code, Problem} from "../page/types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/paper";
import { showPicture } from "../page/picture.js";

const NOT_NOW = {
  message: say.codeNotMade,
  way_out: say.codeWayOut,
};

export class CodeSheet {
  /** @param {Asks} engine */
  constructor(engine) {
    this.engine = engine;
    this.sheet = /** @type {HTMLDialogElement} */ (document.getElementById("code"));
  }

  /** @param {string} address */
  async show(address) {
    const { svg = "", errors = [] } = await this.#asked(address);
    render(
      html`
        <div class="code-picture" role="img" aria-label=${say.codePicture}></div>
        <div class="code-words">
          <h2 id="code-title">${say.scanCode}</h2>
          ${errors.map(({ message, way_out }) => html`<p role="alert"><strong>${message}</strong> ${way_out}</p>`)}
          ${svg ? html`<p>${say.holdCamera}</p>` : nothing}
          <button type="button" autofocus @click=${() => this.sheet.close()}>${say.close}</button>
          <p class="code-address">${address}</p>
        </div>
      `,
      this.sheet,
    );
    showPicture(svg, /** @type {HTMLElement} */ (this.sheet.firstElementChild));
    if (!this.sheet.open) this.sheet.showModal();
    this.sheet.scrollTop = 0; // the code in sight, not the button that has the focus
  }

  /** @param {string} address @returns {Promise<Partial<Code> & {errors?: Problem[]}>} */
  async #asked(address) {
    try {
      return /** @type {Code} */ (await this.engine.ask({ do: "code", text: address }));
    } catch {
      return { errors: [{ field: "", ...NOT_NOW }] };
    }
  }
}

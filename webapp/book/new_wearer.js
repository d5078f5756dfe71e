/**
 * A new wearer: only the label is asked for, then the foot.
 * @import {Host, Visit} from "./types"
 * @import {Wearers} from "./wearers.js"
 */
import { html } from "lit-html";
import * as say from "words/book";

const NEW = "new-wearer";

export class NewWearer {
  #error = "";

  /** @param {{ host: Host, wearers: Wearers, draw: () => void }} parts */
  constructor({ host, wearers, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.redraw = draw;
  }

  /** @param {boolean} keep whether the sheet on the table goes along */
  template(keep) {
    return html`
      <h2 id="book-title" tabindex="-1">${keep ? say.newFromPage : say.newWearer}</h2>
      <form autocomplete="off" novalidate @submit=${(/** @type {SubmitEvent} */ event) => this.#submit(event, keep)}>
        <div class="field">
          <label for="new-label">${say.label}</label>
          <p class="where" id="new-label-where">${say.labelWhere}</p>
          <div class="entry"><div class="typed"><input id="new-label" type="text" .value=${this.host.half(NEW)} @input=${(/** @type {any} */ event) => this.host.keepHalf(NEW, event.target.value)} autocomplete="off" spellcheck="false" enterkeyhint="go"
            aria-describedby="new-label-where new-label-error" aria-invalid=${this.#error ? "true" : "false"} /></div></div>
          <p class="error" id="new-label-error">${this.#error}</p>
        </div>
        <p class="where">${say.askFirst} ${say.measuresStay}</p>
        <button class="go" id="begin-wearer">${keep ? say.keepInBook : say.measureFoot}</button>
      </form>`;
  }

  shown() {
    this.#error = "";
    document.getElementById("new-label")?.focus();
  }

  /** @param {SubmitEvent} event @param {boolean} keep */
  #submit(event, keep) {
    event.preventDefault();
    const field = /** @type {HTMLInputElement} */ (document.getElementById("new-label"));
    const label = field.value.trim();
    if (!label) {
      this.#error = say.noLabel;
      this.redraw();
      field.focus();
      return;
    }
    const values = keep ? this.host.table() : this.host.machine();
    const wearer = this.wearers.add(label, values);
    this.host.keepHalf(NEW, "");
    field.value = "";
    if (keep) this.host.go({ name: "card", id: wearer.id }, { replace: true });
    else this.host.open(wearer, /** @type {Visit} */ (this.wearers.visit(wearer.id)));
  }
}

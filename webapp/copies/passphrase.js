/** The fields for the passphrase that a copy is locked with: nothing typed there, nothing locked. */
import { html, nothing } from "lit-html";
import { canLock, SHORTEST } from "./lock.js";

const SHORT = `The passphrase is too short: ${SHORTEST} characters at least. Add a word to it.`;
const OTHER = "The second one is not the same as the first. Write it again.";

export class Passphrase {
  #typed = { first: "", second: "" };
  /** @type {{ first?: string, second?: string }} */
  #wrong = {};
  #shown = false;

  /** @param {() => void} draw */
  constructor(draw) {
    this.redraw = draw;
  }

  /** As at first. */
  shown() {
    [this.#typed, this.#wrong, this.#shown] = [{ first: "", second: "" }, {}, false];
  }

  /** @returns {string} "" where nothing is to be locked */
  get value() {
    return this.#typed.first;
  }

  /** Whether a copy can be saved so; what is wrong is told beside its field. */
  good() {
    const { first, second } = this.#typed;
    const short = first !== "" && Array.from(first).length < SHORTEST;
    this.#wrong = short ? { first: SHORT } : first === second ? {} : { second: OTHER };
    this.redraw();
    const [wrong] = Object.keys(this.#wrong);
    if (wrong) document.getElementById(`passphrase-${wrong}`)?.focus();
    return !wrong;
  }

  template() {
    return html`<details id="lock" class="fold"><summary>Lock it with a passphrase</summary>
      ${
        canLock()
          ? html`<p>Without the passphrase nobody can read the file. Four words that you pick by chance are hard to guess.</p>
              <p><strong>Nobody can bring back a passphrase that you forget: the copy stays shut for good.</strong> Write it down, and keep it apart from the file.</p>
              ${this.#field("first", "Passphrase")}
              ${this.#field("second", "The same once more")}
              <button type="button" class="chosen" id="show-passphrase" aria-pressed=${this.#shown ? "true" : "false"} @click=${() => this.#show()}>Show what I type</button>`
          : html`<p>A copy cannot be locked here: the browser does so only where the page came by https. Open the page by https, or keep the file where nobody else can read it.</p>`
      }
    </details>`;
  }

  /** @param {"first" | "second"} name @param {string} title */
  #field(name, title) {
    const wrong = this.#wrong[name];
    return html`<div class="field">
      <label for="passphrase-${name}">${title}</label>
      <div class="entry"><div class="typed"><input id="passphrase-${name}" type=${this.#shown ? "text" : "password"} autocomplete="new-password"
        autocapitalize="off" spellcheck="false" aria-describedby="passphrase-${name}-error" aria-invalid=${wrong ? "true" : "false"}
        .value=${this.#typed[name]} @input=${(/** @type {any} */ event) => this.#type(name, event.target.value)} /></div></div>
      <p class="error" id="passphrase-${name}-error">${wrong ?? nothing}</p>
    </div>`;
  }

  /** @param {"first" | "second"} name @param {string} text */
  #type(name, text) {
    this.#typed = { ...this.#typed, [name]: text };
    const { [name]: _, ...others } = this.#wrong;
    this.#wrong = others;
    this.redraw();
  }

  #show() {
    this.#shown = !this.#shown;
    this.redraw();
  }
}

/** The fields for the passphrase that a copy is locked with: nothing typed there, nothing locked. */
import { html, nothing } from "lit-html";
import * as say from "words/copies";
import { canLock, SHORTEST } from "./lock.js";

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
    this.#wrong = short
      ? { first: say.passphraseShort({ characters: SHORTEST }) }
      : first === second
        ? {}
        : { second: say.passphraseOther };
    this.redraw();
    const [wrong] = Object.keys(this.#wrong);
    if (wrong) document.getElementById(`passphrase-${wrong}`)?.focus();
    return !wrong;
  }

  template() {
    return html`<details id="lock" class="fold"><summary>${say.lockIt}</summary>
      ${
        canLock()
          ? html`<p>${say.lockMeans}</p>
              <p>${say.lockForgotten}</p>
              ${this.#field("first", say.passphrase)}
              ${this.#field("second", say.passphraseAgain)}
              <button type="button" class="chosen" aria-pressed=${this.#shown ? "true" : "false"} @click=${() => this.#show()}>${say.showTyped}</button>`
          : html`<p>${say.noLockHere}</p>`
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

/** A sheet over the counter: the browser's own dialog, which keeps the focus inside and closes by Escape. */
import { html, render } from "lit-html";
import * as say from "words/machine";
import { enterGoesOn } from "../page/enter_key.js";

/** Fires "closed". */
export class Sheet extends EventTarget {
  /** @type {HTMLDialogElement} */
  #dialog;
  /** @type {(() => void) | undefined} */
  #closed;

  constructor() {
    super();
    this.#dialog = document.createElement("dialog");
    this.#dialog.className = "machine-sheet";
    this.#dialog.setAttribute("aria-labelledby", "sheet-title");
    this.#dialog.addEventListener("close", () => {
      this.#closed?.();
      this.dispatchEvent(new Event("closed"));
    });
    enterGoesOn(this.#dialog);
    document.body.append(this.#dialog);
  }

  get open() {
    return this.#dialog.open;
  }

  /** Draw it, and open it if it is not. @param {string} title @param {unknown} content @param {() => void} [closed] */
  show(title, content, closed) {
    this.#closed = closed;
    render(
      html`<div class="sheet-head">
          <h2 id="sheet-title" tabindex="-1">${title}</h2>
          <button type="button" @click=${() => this.close()}>${say.close}</button>
        </div>
        <div class="sheet-body">${content}</div>`,
      this.#dialog,
    );
    if (this.#dialog.open) return;
    this.#dialog.showModal();
    this.#dialog.scrollTop = 0;
    this.#dialog.querySelector("h2")?.focus();
  }

  remove() {
    this.#dialog.close(); // or nobody is told that it is gone
    this.#dialog.remove();
  }

  close() {
    if (!this.#dialog.open) return;
    this.#dialog.close();
    this.dispatchEvent(new Event("closed")); // the dialog's own event comes later than the next key
  }
}

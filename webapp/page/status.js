/**
 * The quiet lines above the work: what the page waits for, what went wrong and what to do, whether
 * the phone keeps what is typed, and the offer of a new version.
 * @import {Asks} from "./types"
 */
import { html, nothing, render } from "lit-html";

export class Status {
  #trouble = "";
  #stored = true;

  /** @param {Asks} engine */
  constructor(engine) {
    this.engine = engine;
    this.place = /** @type {HTMLElement} */ (document.getElementById("status-line"));
    this.offer = /** @type {HTMLElement} */ (document.getElementById("offer-line"));
    this.place.replaceChildren();
    engine.addEventListener("state", () => this.#draw());
    this.#draw();
  }

  /** @param {string} sentence what went wrong; "" when it is over */
  trouble(sentence) {
    this.#trouble = sentence;
    this.#draw();
  }

  /** @param {boolean} stored whether the phone keeps what is typed */
  stored(stored) {
    if (stored === this.#stored) return;
    this.#stored = stored;
    this.#draw();
  }

  /** @param {() => void} accept */
  newVersion(accept) {
    this.#offer("A new version is on the phone. What you typed stays.", "Use it now", accept);
  }

  offlineReady() {
    this.#offer("All stored: this works on the phone without a signal.", "Good", () => {});
  }

  /** @param {string} words @param {string} button @param {() => void} act */
  #offer(words, button, act) {
    const done = () => {
      render(nothing, this.offer);
      act();
    };
    render(
      html`<div class="line row"><p>${words}</p><button type="button" @click=${done}>${button}</button></div>`,
      this.offer,
    );
  }

  #draw() {
    const { state, reason } = this.engine;
    const failed = state === "failed" ? (reason ?? "The calculator did not start.") : this.#trouble;
    render(
      html`${
        state === "starting"
          ? html`<div class="line"><p>Getting the calculator ready… You can type already.</p></div>`
          : nothing
      }${
        failed
          ? html`<div class="line trouble" role="alert"><p>${failed} What you typed is kept.</p>
              <button type="button" @click=${() => location.reload()}>Load the page again</button></div>`
          : nothing
      }${
        this.#stored
          ? nothing
          : html`<div class="line trouble"><p>This phone does not let the page keep anything, so what you
              type is gone once you close it. Copy the plan’s link to keep it.</p></div>`
      }`,
      this.place,
    );
  }
}

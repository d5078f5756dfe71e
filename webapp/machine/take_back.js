/**
 * "Take back": a press that is held until it has filled; a short tap only says so. A keyboard or a screen
 * reader, which cannot hold, asks once more instead.
 */
import { html } from "lit-html";
import * as say from "words/machine";

const HOLD_MS = 600;
const SAME_TOUCH_MS = 700;

/** Fires "back" once it is meant, "short" after a tap, "ask" where it is to be confirmed. */
export class TakeBack extends EventTarget {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #holding;
  #pressed = 0;
  #lifted = Number.NEGATIVE_INFINITY;

  /** @param {number} left how many can still be taken back */
  draw(left) {
    return html`<button type="button" class="take-back" ?disabled=${left === 0}
      @pointerdown=${this.#down} @pointerup=${this.#up} @pointercancel=${this.#up} @pointerleave=${this.#up}
      @contextmenu=${stop} @click=${this.#click}><span>${say.takeBack} <small aria-hidden="true">${say.holdIt}</small></span></button>`;
  }

  #down = (/** @type {PointerEvent} */ event) => {
    const button = /** @type {HTMLElement} */ (event.currentTarget);
    button.classList.add("holding");
    clearTimeout(this.#holding);
    this.#pressed = event.timeStamp;
    this.#holding = setTimeout(() => {
      this.#holding = undefined;
      button.classList.remove("holding");
      this.dispatchEvent(new Event("back"));
    }, HOLD_MS);
  };

  #up = (/** @type {PointerEvent} */ event) => {
    const button = /** @type {HTMLElement} */ (event.currentTarget);
    button.classList.remove("holding");
    if (event.type === "pointerup") this.#lifted = event.timeStamp;
    if (this.#holding === undefined) return;
    clearTimeout(this.#holding);
    this.#holding = undefined;
    if (event.type !== "pointerup") return;
    // A busy phone may hear of the finger that left before it hears the clock.
    const long = event.timeStamp - this.#pressed >= HOLD_MS;
    this.dispatchEvent(new Event(long ? "back" : "short"));
  };

  #click = (/** @type {MouseEvent} */ { detail, timeStamp }) => {
    const ask = !detail || timeStamp - this.#lifted > SAME_TOUCH_MS;
    if (ask) this.dispatchEvent(new Event("ask"));
  };
}

/** @param {Event} event */
function stop(event) {
  event.preventDefault();
}

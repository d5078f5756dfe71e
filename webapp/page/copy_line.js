/** The line of the page that says what is in no copy, once that is much or has waited. */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { missing, putOff } from "../book/last_copy.js";
import { oneLine } from "./one_line.js";

export function copyLine() {
  const place = /** @type {HTMLElement} */ (document.getElementById("copy-line"));
  const words = missing();
  const later = () => {
    putOff();
    copyLine();
  };
  render(
    words
      ? oneLine(
          words,
          html`<button type="button" @click=${later}>${say.notToday}</button>`,
          html`<button type="button" data-book="copies">${say.saveACopy}</button>`,
        )
      : nothing,
    place,
  );
}

/** What the phone or a file holds and nobody can read: told as it is, to be saved to a file or deleted. */
import { html, nothing } from "lit-html";
import * as say from "words/page";
import { save } from "./save.js";

/**
 * @param {string} words @param {string} text what it holds
 * @param {() => void} [drop] delete it for good; none for what stays in a file
 */
export function setAside(words, text, drop) {
  return html`<div class="line trouble set-aside">
    <p>${words}</p>
    <details><summary>${say.whatItHolds}</summary><p class="quiet"><bdi>${text.slice(0, 2000)}</bdi></p>
      <div class="row"><button type="button" class="save-aside" @click=${() => save(text, "heelwise-set-aside.txt", "text/plain")}>${say.saveToFile}</button>
        ${drop ? html`<button type="button" class="drop-aside" @click=${drop}>${say.deleteForGood}</button>` : nothing}</div></details>
  </div>`;
}

/**
 * What comes after the counts: the plan's link copied, or handed to the phone's own share sheet where
 * there is one; and the next person's foot on the same machine.
 * @import {Sheets} from "./sheets.js"
 */
import { html, nothing, render } from "lit-html";

/**
 * @param {string} link the plan's link without its "#"
 * @param {HTMLElement} place
 * @param {Sheets} sheets
 */
export function renderShare(link, place, sheets) {
  const address = `${location.href.split("#")[0]}#${link}`;
  place.hidden = false;
  /** @param {unknown} outcome */
  const draw = (outcome) =>
    render(
      html`
        <hr class="knit" />
        <h3>Keep it or pass it on</h3>
        <p>A link holds this whole plan. It opens with the same counts on any phone that has this page, with or without a signal.</p>
        <div class="row">
          <button type="button" id="copy-link" @click=${copy}>Copy the link</button>
          ${"share" in navigator ? html`<button type="button" @click=${send}>Send it…</button>` : nothing}
        </div>
        <div role="status">${outcome}</div>
        ${
          sheets.visiting
            ? nothing
            : html`<hr class="knit" />
                <h3>The next foot</h3>
                <p>Machine and yarn stay; foot, person and sock one are emptied, and can be brought back.</p>
                <button type="button" id="next-foot" @click=${() => sheets.nextFoot()}>Measure the next foot</button>`
        }
      `,
      place,
    );
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(address);
      draw(html`<p class="note">Copied. Paste it wherever you like.</p>`);
    } catch {
      draw(html`<p class="note">The phone would not copy it. Press and hold the link, then copy:</p>
        <input class="address" readonly aria-label="The plan’s link" .value=${address} @focus=${select} />`);
    }
  };
  const send = async () => {
    try {
      await navigator.share({ title: "A sock plan", url: address });
    } catch (error) {
      if (error instanceof Error && error.name !== "AbortError") await copy();
    }
  };
  draw(nothing);
}

/** @param {Event} event */
function select(event) {
  /** @type {HTMLInputElement} */ (event.target).select();
}

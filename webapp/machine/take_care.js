/**
 * The customary cautions: shown before the first knitting on this phone, and whenever they are asked for.
 */
import { html } from "lit-html";
import * as say from "words/machine";
import { Sheet } from "./sheet.js";

/** Where it is kept that they were read. */
const NAME = "cared";

/** @param {string[]} cautions */
export function listed(cautions) {
  return html`<ul class="cautions">${cautions.map((one) => html`<li>${one}</li>`)}</ul>`;
}

/** @param {string[]} cautions */
export function show(cautions) {
  const sheet = new Sheet();
  sheet.show(say.takeCare, listed(cautions), () => sheet.remove());
}

/**
 * Before the first knitting; later it asks nothing.
 * @param {string[]} cautions @param {import("../storage/kept.js").Kept} kept
 * @returns {Promise<boolean>} false where she closed them without going on
 */
export function read(cautions, kept) {
  if (!cautions.length || kept.read(NAME) === true) return Promise.resolve(true);
  const sheet = new Sheet();
  return new Promise((resolve) => {
    /** @param {boolean} on */
    const settle = (on) => {
      sheet.remove();
      resolve(on);
    };
    const goOn = () => {
      kept.write(NAME, true);
      settle(true);
    };
    sheet.show(
      say.takeCare,
      html`${listed(cautions)}
        <button type="button" class="go" id="cared" @click=${goOn}>${say.careGoOn}</button>
        <p class="quiet">${say.careAgain}</p>`,
      () => settle(false),
    );
  });
}

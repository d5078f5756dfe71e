/** A notice of one line above the work: what is more of it stands behind a tap, its way beside it. */
import { html, nothing } from "lit-html";

/** @param {unknown} lead @param {unknown} more @param {unknown} [way] the one thing to do @param {string} [name] a class */
export function oneLine(lead, more, way = nothing, name = "") {
  return html`<div class="line one-line ${name}">
    <details><summary><span>${lead}</span></summary> ${more}</details> ${way}
  </div>`;
}

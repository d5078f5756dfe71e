/**
 * The tag of a finished pair: two faces beside each other, cut out as one and folded between them.
 * @import {Tag} from "../page/types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/paper";
import { dayShown } from "../book/days.js";
import { short } from "../page/short.js";
import { toPaper } from "./to_paper.js";
import { careOf } from "./washing.js";

/**
 * What she writes on it.
 * @typedef {object} Written
 * @property {string} title
 * @property {string} label whom it is for
 * @property {string} fibre
 * @property {string} wash @property {string} dry names of the ways
 * @property {string} more on washing, in her own words
 * @property {string} date like 2026-11-28, or ""
 */

const HOLE = html`<svg class="tag-hole" viewBox="0 0 10 10" aria-hidden="true"><circle cx="5" cy="5" r="4.4" /><path d="M5 3.2v3.6M3.2 5h3.6" /></svg>`;
/* Stitches, drawn and not laid as a ground, which no printer fills unasked. */
const STITCHES = html`<svg class="tag-stitches" viewBox="0 0 168 20" aria-hidden="true"><path d=${[0, 9].flatMap((down) => Array.from({ length: 12 }, (_, at) => `M${14 * at + 1.2} ${down + 1.2}l5.8 8.4 5.8-8.4`)).join("")} /></svg>`;

/** One below the other, three to a sheet. @param {{ tag: Tag, written: Written }[]} tags */
export function printTags(tags) {
  toPaper(
    html`${tags.map(({ tag, written }) => drawn(tag, written))}`,
    tags.map(({ tag }) => tag.code),
  );
}

/** @param {Tag} tag @param {Written} written */
function drawn({ facts, code, caution }, { title, label, fibre, wash, dry, more, date }) {
  const lines = [
    ...facts,
    { name: say.fiber, text: fibre.replaceAll(" %", "\u00a0%") }, // a number keeps its sign beside it
    ...(date ? [{ name: say.finished, text: dayShown(date) }] : []),
  ];
  return html`<div class="tag-place"><section class="tag">
      <div class="tag-face">
        ${HOLE}
        ${title ? html`<h2><bdi>${short(title)}</bdi></h2>` : nothing}
        ${label ? html`<p class="tag-for">${say.tagFor({ label: short(label) })}</p>` : nothing}
        ${STITCHES}
        <dl>${lines.map(({ name, text }) => html`<div><dt>${name}</dt><dd class=${text ? "" : "to-write"}><bdi>${text}</bdi></dd></div>`)}</dl>
      </div>
      <div class="tag-face">
        ${HOLE}
        <p class="tag-wash">${careOf(wash, dry)} <bdi>${more}</bdi></p>
        <div class="tag-code code-place"></div>
        ${code ? html`<p class="tag-again">${say.scanAgain}</p>` : nothing}
        <p class="tag-caution">${caution}</p>
      </div>
    </section></div>`;
}

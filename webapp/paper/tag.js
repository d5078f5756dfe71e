/**
 * The tag of a finished pair: two faces beside each other, cut out as one and folded between them. The same
 * is drawn to be printed and, on the screen, to be written on.
 * @import {TemplateResult} from "lit-html"
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

/** What stands where something may be written. @typedef {Record<"title" | "label" | "fibre" | "date" | "care" | "more", unknown>} Lines */

const HOLE = html`<svg class="tag-hole" viewBox="0 0 10 10" aria-hidden="true"><circle cx="5" cy="5" r="4.4" /><path d="M5 3.2v3.6M3.2 5h3.6" /></svg>`;

/** One below the other, three to a sheet. @param {{ tag: Tag, written: Written }[]} tags */
export function printTags(tags) {
  toPaper(
    html`${tags.map(({ tag, written }) => html`<div class="tag-place">${drawn(tag, printed(written))}</div>`)}`,
    tags.flatMap(({ tag }) => [tag.drawing, tag.code]),
  );
}

/** @param {Written} written @returns {Lines} */
function printed({ title, label, fibre, wash, dry, more, date }) {
  return {
    title: title ? html`<h2><bdi>${short(title)}</bdi></h2>` : nothing,
    label: label ? html`<p class="tag-for">${say.tagFor({ label: short(label) })}</p>` : nothing,
    fibre: line(say.fiber, fibre.replaceAll(" %", "\u00a0%")), // a number keeps its sign beside it
    date: date ? line(say.finished, dayShown(date)) : nothing,
    care: careOf(wash, dry),
    more: html`<bdi>${more}</bdi>`,
  };
}

/** @param {string} name @param {string} text a line to write on where there is none */
function line(name, text) {
  return html`<div><dt>${name}</dt><dd class=${text ? "" : "to-write"}><bdi>${text}</bdi></dd></div>`;
}

/** @param {Tag} tag @param {Lines} lines @returns {TemplateResult} */
export function drawn({ facts, code, caution }, { title, label, fibre, date, care, more }) {
  return html`<section class="tag">
    <div class="tag-face">
      ${HOLE} ${title} ${label}
      <div class="tag-sock code-place"></div>
      <dl>${facts.map((fact) => line(fact.name, fact.text))} ${fibre} ${date}</dl>
    </div>
    <div class="tag-face">
      ${HOLE}
      <div class="tag-wash">${care} ${more}</div>
      <div class="tag-code code-place"></div>
      ${code ? html`<p class="tag-again">${say.scanAgain}</p>` : nothing}
      <p class="tag-caution">${caution}</p>
    </div>
  </section>`;
}

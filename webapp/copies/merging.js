/**
 * What a copy would change, before anything is changed: what is added, side by side what differs, and what
 * of a damaged file cannot be read.
 * @import {Change, Found} from "./types"
 */
import { html, nothing } from "lit-html";
import { setAside } from "../page/set_aside.js";
import { short } from "../page/short.js";
import { inWords, listed, many } from "./words.js";

const SOME = 50; // shown one by one

/**
 * @param {Found} found
 * @param {{ take: (changes: Change[]) => void, leave: () => void, redraw: () => void }} ways
 */
export function merging({ changes, same, unread, lacking, damaged }, { take, leave, redraw }) {
  const how = (/** @type {Change["how"]} */ which) =>
    changes.filter((one) => one.how === which && !one.altered);
  const [fresh, further, other, newer] = [how("new"), how("further"), how("other"), how("newer")];
  const [gone, deleted] = [how("gone"), how("deleted")];
  const altered = changes.filter((one) => one.altered);
  const alike = many(same);
  return html`<section class="line visit" aria-label="What the copy would change">
      ${damaged ? damage(unread.length, lacking) : nothing}
      <p><strong>To add: ${fresh.length ? inWords(fresh) : "nothing"}.</strong>
        ${further.length ? `Counted further than here: ${inWords(further)}.` : nothing}
        ${alike.length ? `As they are here: ${listed(alike)}.` : nothing}
        ${newer.length ? `Changed later than here: ${inWords(newer)}.` : nothing}
        ${gone.length ? `Deleted on the other phone: ${inWords(gone)}.` : nothing}
        ${deleted.length ? `Deleted here since: ${inWords(deleted)}; left out, unless you choose otherwise.` : nothing}
        ${other.length ? `Other than here: ${inWords(other)}; choose which to keep.` : nothing}
        ${altered.length ? `Not as it was saved: ${inWords(altered)}; look closely before you rely on it.` : nothing}</p>
      ${newer.length ? later(newer) : nothing}
      ${[...other, ...altered, ...gone, ...deleted].map((one, at) => choice(one, at, redraw))}
      ${unread.map(({ title, text }) => setAside(`${title} cannot be read.`, text))}
      <div class="row">${changes.length ? html`<button type="button" id="take-in" @click=${() => take(changes)}>Take it in</button>` : nothing}
        <button type="button" id="leave-copy" @click=${leave}>Leave all as it is</button></div>
    </section>`;
}

/** What is brought up to date, unasked. @param {Change[]} changes */
function later(changes) {
  const more = changes.length - SOME;
  return html`<details class="fold later"><summary>What changes</summary>
    ${changes.slice(0, SOME).map((one) => html`<h4><bdi>${short(one.title)}</bdi></h4>${table(one, "afterwards")}`)}
    ${more > 0 ? html`<p>And ${more} more.</p>` : nothing}</details>`;
}

/** @type {Record<Change["how"], [here: string, file: string]>} */
const CHOICES = {
  new: ["leave it out", "take the file’s"],
  further: ["keep what is here", "take the file’s"],
  newer: ["keep what is here", "take the file’s"],
  other: ["keep what is here", "take the file’s"],
  gone: ["keep them here", "delete them here, too"],
  deleted: ["leave them out", "bring them back"],
};

/** @param {number} unread @param {Found["lacking"]} lacking */
function damage(unread, lacking) {
  const gone = many(lacking);
  return html`<p id="copy-damaged"><strong>This file is damaged.</strong>
    ${unread ? (unread === 1 ? "One thing in it cannot be read and stays out." : `${unread} things in it cannot be read and stay out.`) : nothing}
    ${gone.length ? `Missing from it: ${listed(gone)}.` : nothing}
    Everything else can be taken in. If the other phone still has it all, save another copy there.</p>`;
}

/** @param {Change} one @param {number} at @param {() => void} redraw */
function choice(one, at, redraw) {
  const take = (/** @type {Change["take"]} */ which) => {
    one.take = which;
    redraw();
  };
  const [here, file] = CHOICES[one.how];
  return html`<fieldset class="differing">
      <legend><bdi>${short(one.title)}</bdi></legend>
      ${one.altered ? html`<p class="altered">Not as it was saved.</p>` : nothing}
      ${one.how === "gone" ? html`<p>Deleted on the other phone.</p>` : nothing}
      ${one.how === "deleted" ? html`<p>Deleted here, after this copy was saved.</p>` : nothing}
      ${one.rows.length ? table(one, "in the file") : nothing}
      <div class="choice">${
        /** @type {const} */ ([
          ["here", here],
          ["file", file],
        ]).map(
          ([which, words]) =>
            html`<label><input type="radio" name="differing-${at}" .checked=${one.take === which} @change=${() => take(which)} /><span>${words}</span></label>`,
        )
      }</div>
    </fieldset>`;
}

/** @param {Change} change @param {string} head above what comes */
function table({ rows }, head) {
  return html`<table><thead><tr><td></td><th scope="col">here</th><th scope="col">${head}</th></tr></thead>
    <tbody>${rows.map(
      ({ title, here, file }) =>
        html`<tr><th scope="row">${title}</th><td><bdi>${short(here) || "–"}</bdi></td><td><bdi>${short(file) || "–"}</bdi></td></tr>`,
    )}</tbody></table>`;
}

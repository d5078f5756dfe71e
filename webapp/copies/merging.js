/**
 * What a copy would change, before anything is changed: what is added, side by side what differs, and what
 * of a damaged file cannot be read.
 * @import {Change, Found} from "./types"
 */
import { html, nothing } from "lit-html";
import { setAside } from "../page/set_aside.js";
import { short } from "../page/short.js";
import { inWords, listed, many } from "./words.js";

/**
 * @param {Found} found
 * @param {{ take: (changes: Change[]) => void, leave: () => void, redraw: () => void }} ways
 */
export function merging({ changes, same, unread, lacking, damaged }, { take, leave, redraw }) {
  const how = (/** @type {Change["how"]} */ which) =>
    changes.filter((one) => one.how === which && !one.altered);
  const [fresh, further, other] = [how("new"), how("further"), how("other")];
  const altered = changes.filter((one) => one.altered);
  const alike = many(same);
  return html`<section class="line visit" aria-label="What the copy would change">
      ${damaged ? damage(unread.length, lacking) : nothing}
      <p><strong>To add: ${fresh.length ? inWords(fresh) : "nothing"}.</strong>
        ${further.length ? `Counted further than here: ${inWords(further)}.` : nothing}
        ${alike.length ? `As they are here: ${listed(alike)}.` : nothing}
        ${other.length ? `Other than here: ${inWords(other)}; choose which to keep.` : nothing}
        ${altered.length ? `Not as it was saved: ${inWords(altered)}; look closely before you rely on it.` : nothing}</p>
      ${[...other, ...altered].map((one, at) => choice(one, at, redraw))}
      ${unread.map(({ title, text }) => setAside(`${title} cannot be read.`, text))}
      <div class="row">${changes.length ? html`<button type="button" id="take-in" @click=${() => take(changes)}>Take it in</button>` : nothing}
        <button type="button" id="leave-copy" @click=${leave}>Leave all as it is</button></div>
    </section>`;
}

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
  const fresh = one.how === "new";
  return html`<fieldset class="differing">
      <legend><bdi>${short(one.title)}</bdi></legend>
      ${one.altered ? html`<p class="altered">Not as it was saved.</p>` : nothing}
      ${fresh ? nothing : table(one)}
      <div class="choice">${
        /** @type {const} */ ([
          ["here", fresh ? "leave it out" : "keep what is here"],
          ["file", "take the file’s"],
        ]).map(
          ([which, words]) =>
            html`<label><input type="radio" name="differing-${at}" .checked=${one.take === which} @change=${() => take(which)} /><span>${words}</span></label>`,
        )
      }</div>
    </fieldset>`;
}

/** @param {Change} change */
function table({ rows }) {
  return html`<table><thead><tr><td></td><th scope="col">here</th><th scope="col">in the file</th></tr></thead>
    <tbody>${rows.map(
      ({ title, here, file }) =>
        html`<tr><th scope="row">${title}</th><td><bdi>${short(here) || "–"}</bdi></td><td><bdi>${short(file) || "–"}</bdi></td></tr>`,
    )}</tbody></table>`;
}

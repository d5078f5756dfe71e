/**
 * What a copy would change, before anything is changed: what is added, and side by side what differs.
 * @import {Change, Found} from "./types"
 */
import { html, nothing } from "lit-html";
import { short } from "../page/short.js";
import { inWords, listed, many } from "./words.js";

/**
 * @param {Found} found
 * @param {{ take: (changes: Change[]) => void, leave: () => void, redraw: () => void }} ways
 */
export function merging({ changes, same }, { take, leave, redraw }) {
  const how = (/** @type {Change["how"]} */ which) => changes.filter((one) => one.how === which);
  const [fresh, further, other] = [how("new"), how("further"), how("other")];
  const alike = many(same);
  return html`<section class="line visit" aria-label="What the copy would change">
      <p><strong>To add: ${fresh.length ? inWords(fresh) : "nothing"}.</strong>
        ${further.length ? `Counted further than here: ${inWords(further)}.` : nothing}
        ${alike.length ? `As they are here: ${listed(alike)}.` : nothing}
        ${other.length ? `Other than here: ${inWords(other)}; choose which to keep.` : nothing}</p>
      ${other.map((one, at) => choice(one, at, redraw))}
      <div class="row"><button type="button" id="take-in" @click=${() => take(changes)}>Take it in</button>
        <button type="button" id="leave-copy" @click=${leave}>Leave all as it is</button></div>
    </section>`;
}

/** @param {Change} one @param {number} at @param {() => void} redraw */
function choice(one, at, redraw) {
  const take = (/** @type {Change["take"]} */ which) => {
    one.take = which;
    redraw();
  };
  return html`<fieldset class="differing">
      <legend><bdi>${short(one.title)}</bdi></legend>
      <table><thead><tr><td></td><th scope="col">here</th><th scope="col">in the file</th></tr></thead>
        <tbody>${one.rows.map(
          ({ title, here, file }) =>
            html`<tr><th scope="row">${title}</th><td><bdi>${short(here) || "–"}</bdi></td><td><bdi>${short(file) || "–"}</bdi></td></tr>`,
        )}</tbody></table>
      <div class="choice">${
        /** @type {const} */ ([
          ["here", "keep what is here"],
          ["file", "take the file’s"],
        ]).map(
          ([which, words]) =>
            html`<label><input type="radio" name="differing-${at}" .checked=${one.take === which} @change=${() => take(which)} /><span>${words}</span></label>`,
        )
      }</div>
    </fieldset>`;
}

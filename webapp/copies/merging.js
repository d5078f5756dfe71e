/**
 * What a copy would change, before anything is changed: what is added, side by side what differs, and what
 * of a damaged file cannot be read.
 * @import {Change, Found} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/copies";
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
  return html`<section class="line visit" aria-label=${say.wouldChange}>
      ${damaged ? damage(unread.length, lacking) : nothing}
      <p>${fresh.length ? say.toAdd({ things: inWords(fresh) }) : say.nothingToAdd}
        ${further.length ? say.further({ things: inWords(further) }) : nothing}
        ${alike.length ? say.sameAsHere({ things: listed(alike) }) : nothing}
        ${newer.length ? say.changedLater({ things: inWords(newer) }) : nothing}
        ${gone.length ? say.goneThere({ things: inWords(gone) }) : nothing}
        ${deleted.length ? say.goneHere({ things: inWords(deleted) }) : nothing}
        ${other.length ? say.differs({ things: inWords(other) }) : nothing}
        ${altered.length ? say.altered({ things: inWords(altered) }) : nothing}</p>
      ${newer.length ? later(newer) : nothing}
      ${[...other, ...altered, ...gone, ...deleted].map((one, at) => choice(one, at, redraw))}
      ${unread.map(({ title, text }) => setAside(say.cannotRead({ what: title }), text))}
      <div class="row">${changes.length ? html`<button type="button" id="take-in" @click=${() => take(changes)}>${say.takeItIn}</button>` : nothing}
        <button type="button" id="leave-copy" @click=${leave}>${say.leaveAll}</button></div>
    </section>`;
}

/** What is brought up to date, unasked. @param {Change[]} changes */
function later(changes) {
  const more = changes.length - SOME;
  return html`<details class="fold later"><summary>${say.whatChanges}</summary>
    ${changes.slice(0, SOME).map((one) => html`<h4><bdi>${short(one.title)}</bdi></h4>${table(one, say.colAfter)}`)}
    ${more > 0 ? html`<p>${say.andMore({ more })}</p>` : nothing}</details>`;
}

/** @type {Record<Change["how"], [here: string, file: string]>} */
const CHOICES = {
  new: [say.leaveOut, say.takeFile],
  further: [say.keepHere, say.takeFile],
  newer: [say.keepHere, say.takeFile],
  other: [say.keepHere, say.takeFile],
  gone: [say.keepThem, say.deleteToo],
  deleted: [say.leaveThemOut, say.bringBack],
};

/** @param {number} unread @param {Found["lacking"]} lacking */
function damage(unread, lacking) {
  const gone = many(lacking);
  return html`<p id="copy-damaged">${say.damaged}
    ${unread ? say.thingsUnread({ many: unread }) : nothing}
    ${gone.length ? say.missing({ things: listed(gone) }) : nothing}
    ${say.restGood}</p>`;
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
      ${one.altered ? html`<p class="altered">${say.alteredOne}</p>` : nothing}
      ${one.how === "gone" ? html`<p>${say.goneThereOne}</p>` : nothing}
      ${one.how === "deleted" ? html`<p>${say.goneHereOne}</p>` : nothing}
      ${one.rows.length ? table(one, say.colFile) : nothing}
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
  return html`<table><thead><tr><td></td><th scope="col">${say.colHere}</th><th scope="col">${head}</th></tr></thead>
    <tbody>${rows.map(
      ({ title, here, file }) =>
        html`<tr><th scope="row">${title}</th><td><bdi>${short(here) || "–"}</bdi></td><td><bdi>${short(file) || "–"}</bdi></td></tr>`,
    )}</tbody></table>`;
}

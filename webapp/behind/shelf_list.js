/**
 * The ranked shelf on screen: each with its words, and its tube drawn against the foot.
 * @import {Candidate, Shelf} from "../page/types"
 */
import { html, nothing, render, svg } from "lit-html";
import * as say from "words/page";
import { MARKS, titled } from "../page/around.js";

const FIRST = 4;
const LEVELS = /** @type {const} */ ({ fits: "good", worn: "apart", not: "bad" });

/** @param {Candidate} one */
export function nameOf({ slots, yarn, mark }) {
  return mark ? say.slotsYarnMark({ slots, yarn, mark }) : say.slotsAndYarn({ slots, yarn });
}

/**
 * @param {Shelf | null} shelf null while there is none to show
 * @param {HTMLElement} place @param {(one: Candidate) => void} take
 */
export function renderShelf(shelf, place, take) {
  if (!shelf) {
    const none = html`<p class="quiet">${say.rankingWaits}</p>`;
    return render(none, place);
  }
  const rest = shelf.best.slice(FIRST);
  render(
    html`
      <h3>${shelf.words}</h3>
      ${shelf.wanted.length ? html`<p>${say.wouldFit}</p><ul class="assumptions">${shelf.wanted.map(({ words }) => html`<li>${words}</li>`)}</ul>` : nothing}
      ${shelf.notes.map(titled)}
      <ol class="shelf">${shelf.best.slice(0, FIRST).map((one) => candidate(one, take))}</ol>
      ${
        rest.length
          ? html`<details><summary>${say.nextOnes({ more: rest.length })}</summary>
            <ol class="shelf" start=${FIRST + 1}>${rest.map((one) => candidate(one, take))}</ol></details>`
          : nothing
      }
      <ul class="assumptions">${shelf.assumptions.map((line) => html`<li>${line}</li>`)}</ul>
    `,
    place,
  );
}

/** @param {Candidate} one @param {(one: Candidate) => void} take */
function candidate(one, take) {
  const [first, ...others] = one.reasons;
  return html`<li>
    <h4>${nameOf(one)}</h4>
    ${one.enough ? html`<p class=${one.enough.level === "yes" ? "quiet" : "note"}>${one.enough.words}</p>` : one.left ? html`<p class="quiet">${say.onTheShelf({ weight: one.left.text })}</p>` : nothing}
    <p class="verdict"><svg class="mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${MARKS[LEVELS[one.standing]]}</svg>
      <span><strong>${one.verdict}</strong>${one.swatch_first ? html`, ${say.guessedSwatchFirst}` : nothing}</span></p>
    ${one.lacks ? html`<p class="note">${one.lacks}</p>` : nothing}
    ${bars(one)}
    <p><strong>${first.title}.</strong> ${first.words}</p>
    <details><summary>${say.everyPlace}</summary>
      <ul class="assumptions">${others.map(({ title, words }) => html`<li><strong>${title}.</strong> ${words}</li>`)}</ul></details>
    <button type="button" class="take" @click=${() => take(one)}>${say.useThis} <span class="said">: ${nameOf(one)}</span></button>
  </li>`;
}

/** The foot above, outlined; the tube at rest under it, hatched. @param {Candidate} one */
function bars({ ball, tube }) {
  const most = Math.max(ball.value, tube.value);
  const wide = (/** @type {number} */ mm) => (mm / most) * 236;
  return html`<svg class="bars" viewBox="0 0 240 32" aria-hidden="true" focusable="false">
      ${svg`<rect class="of-foot" x="2" y="2" width=${wide(ball.value)} height="11"/><rect class="of-tube" x="2" y="18" width=${wide(tube.value)} height="12" fill="url(#tube-hatch)"/>`}
    </svg>
    <p class="quiet">${say.bars({ ball: ball.text, tube: tube.text })}</p>`;
}

/**
 * Step three, first of all the counts: big enough to read at arm's length beside the machine.
 * @import {Fit, Guessed, Part, Shown} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { MARKS } from "./around.js";
import { wordsOfSockTwo } from "./first_sock.js";
import { rollChanged } from "./motion.js";
import { isLink } from "./steps_nav.js";

/** In the order they are shown: the count that was asked for before all others, the rest as they are knitted. */
const ROWS = /** @type {const} */ (["foot", "cuff", "leg", "heel", "toe"]);

/** @typedef {(leg: string) => void} Take takes the kind of leg that is offered */

/** @param {Shown} plan @param {HTMLElement} place @param {Take} take @param {Guessed} [guessed] */
export function renderCounts(plan, place, take, guessed = []) {
  rollChanged(place, () => render(counts(plan, take, guessed), place));
}

/** Until there are counts, their rows in pencil: nothing moves when they come. @param {string} between the likely foot rounds @param {HTMLElement} place */
export function renderPencil(between, place) {
  render(
    html`<ol class="counts pencil">
      ${ROWS.map(
        (part) => html`<li class="tally tally-${part}">
          <h3>${say.rowTitle({ part })}</h3>
          ${part === "foot" ? html`<p class="which-sock">${say.forBoth}</p>` : nothing}
          <p class="figure">${part === "foot" ? html`<span>${between}</span>` : html`<span aria-hidden="true">–</span>`}</p>
          <p class="detail">${part === "foot" ? say.roundsGuessed : say.rowWaits}</p>
        </li>`,
      )}
    </ol>`,
    place,
  );
}

/** @param {Shown} plan @param {Take} take @param {Guessed} guessed */
function counts(plan, take, guessed) {
  return html`
      <ol class="counts">
        ${[...plan.parts].sort(footFirst).map((part) => row(part, plan))}
      </ol>
      ${plan.fit ? gist(plan.fit, guesses(plan, guessed), take) : nothing}
      ${plan.origin ? html`<p class="quiet" id="origin"><bdi>${plan.origin}</bdi></p>` : nothing}
    `;
}

/** What the counts stand on that was not told, in a sentence; "" where all was. @param {Shown} plan @param {Guessed} guessed */
function guesses({ fabric, counts: { needles } }, guessed) {
  const [one, other] = guessed;
  if (one) return say.usualTaken({ what: other ? "both" : one, slots: needles });
  return fabric.swatch_first || fabric.guessed.length ? say.swatchFirst : "";
}

/** @param {Part} a @param {Part} b */
function footFirst(a, b) {
  return Number(b.part === "foot") - Number(a.part === "foot");
}

/** @type {Fit["level"][]} */
const WORST = ["bad", "tight", "loose"];

/**
 * The fit in a line: that it fits, or where it does not, the worst first; and what is a guess of it.
 * @param {NonNullable<Shown["fit"]>} fit @param {string} guess @param {Take} take
 */
function gist(fit, guess, take) {
  const amiss = fit
    .filter(({ level }) => WORST.includes(level))
    .sort((a, b) => WORST.indexOf(a.level) - WORST.indexOf(b.level));
  const level = amiss[0]?.level ?? "good";
  const words = amiss.map(({ title, verdict }) => say.fitAt({ place: title, verdict }));
  if (!fit.length)
    return html`<p class="fit-none">${say.noFoot({ linked: isLink(location.hash) ? "yes" : "no" })}</p>`;
  return html`<p class="fit fit-gist fit-${level}">
    <svg class="fit-mark" viewBox="0 0 24 24" aria-hidden="true" focusable="false">${MARKS[level]}</svg>
    <span><strong>${words.length ? words.join(" ") : say.fits}</strong>
      ${guess ? html`<span class="swatch-first">${guess}</span>` : nothing}</span>
  </p>${offer(fit.find(({ offers }) => offers)?.offers, take)}`;
}

/** Another leg at one tap, and the way back. @param {Fit["offers"]} leg @param {Take} take */
function offer(leg, take) {
  if (!leg) return nothing;
  const plain = leg === "plain";
  return html`<button type="button" id="other-leg" @click=${() => take(plain ? "" : leg)}>${plain ? say.knitLegPlain : say.knitLegTighter}</button>`;
}

/** @param {Part} part @param {Shown} plan */
function row(part, plan) {
  const count = plan.counts[part.part];
  const pocket = count && "left" in count ? count : null;
  return html`<li class="tally tally-${part.part}">
    <h3>${part.title}</h3>
    ${part.part === "foot" ? html`<p class="which-sock">${wordsOfSockTwo(plan) ? say.sockTwo : say.forBoth}</p>` : nothing}
    ${
      pocket
        ? html`<p class="figure" aria-hidden="true">
              <span>${pocket.needles}</span><i>→</i><span>${pocket.left}</span><i>→</i><span>${pocket.needles}</span>
            </p>
            <p class="said">${say.pocketSaid({ needles: pocket.needles, left: pocket.left })}</p>
            <p class="detail"><strong aria-hidden="true">${say.needles}</strong> ${say.inRows({ rows: pocket.rows })}${pocket.manner ? html` · ${pocket.manner}` : nothing}</p>`
        : html`<p class="figure"><span>${part.count}</span></p>
            <p class="detail"><strong>${say.roundsCounted({ rounds: part.count })}</strong> · ${part.detail}</p>`
    }
  </li>`;
}

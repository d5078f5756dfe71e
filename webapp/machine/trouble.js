/**
 * When it goes wrong: what to do about a dropped stitch, a spoilt heel or toe, a broken needle, a hem that
 * slipped, and a count in doubt; each drawn and short.
 * @import {Counter} from "./counter.js"
 * @import {Places} from "./places.js"
 * @import {Sheet} from "./sheet.js"
 */
import { html, nothing, svg } from "lit-html";
import * as say from "words/machine";
import { section } from "./progress.js";
import { listed } from "./take_care.js";

const LOOP = "c0 14 12 14 12 0";
/** A ladder with its loop at the foot; rows turned back; a needle in two; a fold with a gap; a column of Vs. */
const DRAWINGS = {
  dropped: svg`<path d="M12 6V54M36 6V54M12 14H36M12 24H36M12 34H36M18 46${LOOP}"/>`,
  pocket: svg`<path d="M6 12H66M12 22H60M18 32H54M24 42H48M66 30V12M60 18 66 12 72 18"/>`,
  needle: svg`<path d="M24 4C12 4 12 16 24 16M24 16V28L18 32M30 36 24 40V56"/>`,
  hem: svg`<path d="M6 10V46C6 56 66 56 66 46V10M14 10${LOOP}M46 10${LOOP}M30 10H42" stroke-dasharray="none"/>`,
  count: svg`<path d="M12 8 20 18 28 8M12 22 20 32 28 22M12 36 20 46 28 36M44 16H66M44 30H66M44 44H66"/>`,
};
const KINDS = /** @type {const} */ (["dropped", "pocket", "needle", "hem", "count"]);

export class Trouble {
  /** @param {Counter} counter @param {Sheet} sheet @param {Places} places */
  constructor(counter, sheet, places) {
    this.counter = counter;
    this.sheet = sheet;
    this.places = places;
  }

  open() {
    this.sheet.show(
      say.whenWrong,
      html`<p>${say.stopFirst}</p>
        ${KINDS.map(
          (kind) => html`<details class="wrong" name="wrong">
            <summary>${say.trouble({ kind })}</summary>
            <svg class="wrong-drawing" viewBox="0 0 78 60" aria-hidden="true" focusable="false">${DRAWINGS[kind]}</svg>
            <ol>${STEPS[kind].map((step) => html`<li>${step}</li>`)}</ol>
            ${this.#then(kind)}
          </details>`,
        )}
        ${this.#care()}`,
    );
  }

  #care() {
    const { cautions = [] } = this.counter.session;
    if (!cautions.length) return nothing;
    return html`<details class="wrong" name="wrong">
      <summary>${say.takeCare}</summary>
      ${listed(cautions)}
    </details>`;
  }

  /** What the counter can do about it. @param {typeof KINDS[number]} kind */
  #then(kind) {
    const begins = this.#pocket();
    if (kind === "pocket" && begins !== null) {
      return html`<button type="button" class="go" id="begin-again" @click=${() => this.#begin(begins)}>${say.beginAgain({ section: this.counter.view.title })}</button>
        <p class="quiet">${say.takeBackUndoes}</p>`;
    }
    if (kind === "needle" || kind === "hem") return nothing;
    return html`<button type="button" @click=${() => this.places.open()}>${say.setTheCount}</button>`;
  }

  /** The first step of the heel or toe that is on the machine, null elsewhere. */
  #pocket() {
    const { knit, place } = this.counter;
    const step = knit.steps[place.step];
    if (step?.part !== "heel" && step?.part !== "toe") return null;
    return section(knit, place.step)[0];
  }

  /** @param {number} step */
  #begin(step) {
    this.counter.go(this.counter.state.sock, { step, done: 0 });
    this.sheet.close();
  }
}

/** @type {Record<typeof KINDS[number], string[]>} */
const STEPS = {
  dropped: [say.droppedCatch, say.droppedWork, say.droppedHang, say.droppedFar],
  pocket: [say.pocketCut, say.pocketHang, say.pocketCheck, say.pocketAgain],
  needle: [say.needleLoop, say.needleChange, say.needleHang],
  hem: [say.hemFind, say.hemLift, say.hemLate],
  count: [say.countFlat, say.countStart, say.countColumn],
};

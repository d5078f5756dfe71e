/**
 * The strip above the controls: how far the sock is, what comes next, how long is left. What comes next is
 * cut where it is long; a tap unfolds it.
 * @import {Counter} from "./counter.js"
 * @import {Pace, Sock} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/machine";
import { nextWords, which } from "./moments.js";
import { timeLeft } from "./pace.js";
import { sockPicture } from "./sock_picture.js";

// Nothing is left to be cranked here.
const NO_TIME = { section: null, sock: null };

export class Strip {
  /** The step for which it is unfolded. */
  #unfolded = -1;

  /** @param {() => void} unfolded called when a tap has unfolded or folded it */
  constructor(unfolded) {
    this.unfolded = unfolded;
  }

  /** @param {Sock} number of the sock @param {Counter} counter @param {Pace} pace */
  draw(number, { knit, place, view }, pace) {
    const { section, sock } = view.left ? timeLeft(knit, place, pace) : NO_TIME;
    const percent = Math.floor(view.share * 100);
    const ends = view.step?.part === "finish" || view.unit === "thing"; // it is the sock's own time then, or none
    const words = say.percentKnitted({ sock: which(number), percent });
    const strip = html`${sockPicture(knit, place, words)}
      <span class="at-next">
        ${view.step ? say.next({ step: nextWords(knit, place) }) : nothing}
        ${view.step?.tension && place.step === this.#unfolded ? html`<br />${say.setBeforeThis({ setting: view.step.tension })}` : nothing}
      </span>
      <span class="at-time">
        <span aria-hidden="true">${say.percentOfSock({ percent })}</span>
        ${sock === null ? nothing : html`<span aria-hidden="true">${say.timeLeft({ time: minutes(sock) })}</span><span class="said">${say.timeLeftInSock({ time: minutes(sock) })}</span>`}
        ${section === null || ends ? nothing : html`<span class=${sock === null ? "" : "of-section"}>${say.timeLeftInSection({ time: minutes(section), section: view.title })}</span>`}
      </span>`;
    const unfold = () => {
      this.#unfolded = this.#unfolded === place.step ? -1 : place.step;
      this.unfolded();
    };
    if (!view.step) return html`<div class="strip">${strip}</div>`;
    return html`<button type="button" class="strip" aria-expanded=${place.step === this.#unfolded} @click=${unfold}>${strip}</button>`;
  }
}

/** Time in words, as fine as it is known. @param {number} seconds */
export function minutes(seconds) {
  const all = Math.max(1, Math.round(seconds / 60));
  if (all < 60) return say.aboutMinutes({ minutes: all });
  const [hours, rest] = [Math.floor(all / 60), all % 60];
  return rest ? say.aboutHoursMinutes({ hours, minutes: rest }) : say.aboutHours({ hours });
}

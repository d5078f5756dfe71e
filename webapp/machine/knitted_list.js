/**
 * The pairs that are knitted, folded on the page: what each was and taught. One that is deleted can be
 * brought back until the page is closed.
 * @import {EndedPairs} from "./ended_pairs.js"
 * @import {Ended, FirstSock} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/machine";
import { short } from "../page/short.js";
import { CameOut } from "./came_out.js";
import { which } from "./moments.js";
import { day } from "./on_machine.js";
import { minutes } from "./strip.js";

const SOME = 10; // drawn at a time

export class KnittedList {
  /** @type {Ended[]} the one ended last first; none before they are looked at */
  #all = [];
  #many = 0;
  #drawn = SOME;
  #open = false;
  /** @type {Ended | null} */
  #deleted = null;
  #wrong = "";

  /**
   * @param {HTMLElement} place @param {EndedPairs} pairs @param {() => Promise<void>} changed
   * @param {(call: object) => Promise<any>} ask the calculator
   */
  constructor(place, pairs, changed, ask) {
    this.place = place;
    this.pairs = pairs;
    this.changed = changed;
    this.cameOut = new CameOut(ask, () => this.#draw());
  }

  /** As the phone has them now. */
  async draw() {
    this.cameOut.forget();
    try {
      this.#many = await this.pairs.count();
      if (this.#open) this.#all = (await this.pairs.all()).reverse();
    } catch {
      this.#many = 0; // the phone hands none out: the counter says that it keeps nothing
    }
    this.#draw();
  }

  /** @param {() => Promise<void>} work */
  async #do(work) {
    this.#wrong = "";
    try {
      await work();
      await this.changed();
    } catch {
      this.#wrong = say.notDone;
    }
    await this.draw();
  }

  /** @param {Ended} one */
  #delete(one) {
    return this.#do(async () => {
      await this.pairs.remove(one.id, Date.now());
      this.#deleted = one;
    });
  }

  #bringBack() {
    const one = this.#deleted;
    if (!one) return;
    return this.#do(async () => {
      await this.pairs.restore(one);
      this.#deleted = null;
    });
  }

  #draw() {
    if (!this.#many && !this.#deleted) return render(nothing, this.place);
    const toggle = (/** @type {Event} */ event) => {
      const { open } = /** @type {HTMLDetailsElement} */ (event.target);
      if (open === this.#open) return;
      this.#open = open;
      if (open) this.draw();
    };
    render(
      html`<details class="knitted" ?open=${this.#open} @toggle=${toggle}>
        <summary>${say.pairsKnitted({ pairs: this.#many })}</summary>
        <div role="status">${this.#wrong ? html`<p class="error">${this.#wrong}</p>` : this.#undo()}</div>
        ${this.cameOut.template(this.#all)}
        ${this.#all.slice(0, this.#drawn).map((one) => this.#pair(one))}
        ${
          this.#drawn < this.#all.length
            ? html`<button type="button" class="more" @click=${() => this.#more()}>${say.showMore}</button>`
            : nothing
        }
      </details>`,
      this.place,
    );
  }

  #more() {
    this.#drawn += SOME;
    this.#draw();
  }

  #undo() {
    if (!this.#deleted) return nothing;
    return html`<p>${say.pairDeleted}</p>
      <button type="button" class="bring-back" @click=${() => this.#bringBack()}>${say.bringPairBack}</button>`;
  }

  /** @param {Ended} one */
  #pair(one) {
    const { who, origin, label, began, ended, counted, measured, notes, times } = one;
    const took = Object.values(times).flatMap((time) => time.took);
    const seconds = took.reduce((sum, each) => sum + each, 0);
    return html`<article class="knitted-pair">
      <p>${who ? html`${say.forWhomStrong({ who: short(who) })} ` : nothing}${say.labelOff({ label: short(label), day: day(ended) })}
        <span class="quiet">${seconds ? say.begunTook({ day: day(began), time: minutes(seconds) }) : say.begun({ day: day(began) })}</span></p>
      ${origin ? html`<p><bdi>${origin}</bdi></p>` : nothing}
      ${counted.map(({ figures }, sock) => html`<p>${say.countsOf({ sock: counted.length > 1 ? which(sock ? 1 : 0) : "both", counts: listed(figures) })}</p>`)}
      ${measured ? html`<p>${washed(measured, one)}</p>` : nothing}
      ${notes.length ? html`<ul class="notes">${notes.map(({ sock, section, done, text }) => html`<li><b>${section ? say.notePlace({ sock: which(sock), section, done }) : say.sockName({ sock: which(sock) })}</b><br><bdi>${text}</bdi></li>`)}</ul>` : nothing}
      ${one.cut ? html`<p class="quiet">${say.notesCut}</p>` : nothing}
      <button type="button" class="delete-pair" aria-label=${say.deleteWhich({ label: short(label) })} @click=${() => this.#delete(one)}>${say.deletePair}</button>
    </article>`;
  }
}

/** @param {Record<string, string>} figures by section */
function listed(figures) {
  const all = Object.entries(figures).map(([section, figure]) => `${section} ${figure}`);
  return all.join(" · ");
}

/** @param {FirstSock} measured @param {Ended} one */
function washed({ length, unwashed_length = "", flat_width, foot_rounds }, one) {
  if (!length)
    return say.oneUnwashed({ length: withUnit(unwashed_length, one), rounds: foot_rounds });
  const told = { length: withUnit(length, one), rounds: foot_rounds };
  return flat_width
    ? say.oneMeasuredWide({ ...told, width: withUnit(flat_width, one) })
    : say.oneMeasured(told);
}

/** A bare number is in the units of the plan. @param {string} text @param {Ended} ended */
function withUnit(text, { request }) {
  return /[a-z"″]\s*$/i.test(text) ? text : `${text.trim()} ${request.units}`;
}

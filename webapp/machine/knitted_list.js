/**
 * The pairs that are knitted, folded on the page: what each was and taught. One that is deleted can be
 * brought back until the page is closed.
 * @import {EndedPairs} from "./ended_pairs.js"
 * @import {Ended} from "./types"
 */
import { html, nothing, render } from "lit-html";
import { short } from "../page/short.js";
import { SOCKS } from "./counter_screen.js";
import { day } from "./on_machine.js";
import { minutes } from "./strip.js";

const SOME = 10; // drawn at a time
const NOT_DONE = "The phone did not do that just now. Nothing has changed; try again in a while.";

export class KnittedList {
  /** @type {Ended[]} the one ended last first; none before they are looked at */
  #all = [];
  #many = 0;
  #drawn = SOME;
  #open = false;
  /** @type {Ended | null} */
  #deleted = null;
  #wrong = "";

  /** @param {HTMLElement} place @param {EndedPairs} pairs @param {() => Promise<void>} changed */
  constructor(place, pairs, changed) {
    this.place = place;
    this.pairs = pairs;
    this.changed = changed;
  }

  /** As the phone has them now. */
  async draw() {
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
      this.#wrong = NOT_DONE;
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
        <summary>Knitted: ${this.#many === 1 ? "one pair" : `${this.#many} pairs`}</summary>
        <div role="status">${this.#wrong ? html`<p class="error">${this.#wrong}</p>` : this.#undo()}</div>
        ${this.#all.slice(0, this.#drawn).map((one) => this.#pair(one))}
        ${
          this.#drawn < this.#all.length
            ? html`<button type="button" class="more" @click=${() => this.#more()}>Show more</button>`
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
    return html`<p>The pair is deleted. You can bring it back until the page is closed.</p>
      <button type="button" class="bring-back" @click=${() => this.#bringBack()}>Bring it back</button>`;
  }

  /** @param {Ended} one */
  #pair(one) {
    const { who, label, began, ended, counted, measured, notes, times } = one;
    const took = Object.values(times).flatMap((time) => time.took);
    const seconds = took.reduce((sum, each) => sum + each, 0);
    return html`<article class="knitted-pair">
      <p>${who ? html`<strong>For <bdi>${short(who)}</bdi>.</strong> ` : nothing}<bdi>${short(label)}</bdi>, off the machine ${day(ended)}.
        <span class="quiet">Begun ${day(began)}${seconds ? `, ${minutes(seconds)} at the machine` : ""}.</span></p>
      ${counted.map(({ figures }, sock) => html`<p>${counted.length > 1 ? `${SOCKS[sock]}: ` : ""}<bdi>${listed(figures)}</bdi></p>`)}
      ${measured ? html`<p>Sock one, washed: its foot <bdi>${withUnit(measured.length, one)}</bdi> long${measured.flat_width ? html` and <bdi>${withUnit(measured.flat_width, one)}</bdi> wide` : nothing}, from <bdi>${measured.foot_rounds}</bdi> foot rounds.</p>` : nothing}
      ${notes.length ? html`<ul class="notes">${notes.map(({ sock, section, done, text }) => html`<li><b>${SOCKS[sock]}${section ? `, ${section}, ${done} done` : ""}</b><br><bdi>${text}</bdi></li>`)}</ul>` : nothing}
      ${one.cut ? html`<p class="quiet">There was no room for all of the notes: a knitted pair keeps so much and no more.</p>` : nothing}
      <button type="button" class="delete-pair" aria-label="Delete the pair ${short(label)}" @click=${() => this.#delete(one)}>Delete</button>
    </article>`;
  }
}

/** @param {Record<string, string>} figures by section */
function listed(figures) {
  const all = Object.entries(figures).map(([section, figure]) => `${section} ${figure}`);
  return all.join(" · ");
}

/** A bare number is in the units of the plan. @param {string} text @param {Ended} ended */
function withUnit(text, { request }) {
  return /[a-z"″]\s*$/i.test(text) ? text : `${text.trim()} ${request.units}`;
}

/**
 * Going to any place of either sock, and setting the number by hand: a section, how many are done in it,
 * and before it happens a sentence that says from where to where.
 * @import {Counter} from "./counter.js"
 * @import {Sheet} from "./sheet.js"
 * @import {Knit, Place, Sock} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/machine";
import { inUnit, which } from "./moments.js";
import { after, section, view } from "./progress.js";
import { SockTwo } from "./sock_two.js";

const SOCKS = /** @type {const} */ ([0, 1]);

/** @typedef {{ first: number, title: string, total: number, unit: "round" | "row" | "thing" }} Section */

/** @param {Knit} knit @returns {Section[]} */
export function sections(knit) {
  /** @type {Section[]} */
  const found = [];
  for (let step = 0; step < knit.steps.length; [, step] = section(knit, step)) {
    const { title, total, unit } = view(knit, { step, done: 0 });
    found.push({ first: step, title, total, unit });
  }
  return found;
}

/** Where one stands after so many of a section; 0 is its very beginning. @param {Knit} knit @param {number} first @param {number} done @returns {Place} */
export function placeIn(knit, first, done) {
  const [, end] = section(knit, first);
  let place = { step: first, done: 0 };
  while (place.step < end && view(knit, place).done < done) {
    const next = after(knit, place);
    if (next.step >= end) return next;
    place = next;
  }
  return place;
}

export class Places {
  /** @type {Sock} */
  #sock = 0;
  #first = 0;
  #typed = "";
  #problem = "";
  /** @type {Place | null} */
  #sure = null;

  /** @param {Counter} counter @param {Sheet} sheet @param {SockTwo} sockTwo */
  constructor(counter, sheet, sockTwo) {
    this.counter = counter;
    this.sheet = sheet;
    this.sockTwo = sockTwo;
  }

  open() {
    this.#choose(this.counter.state.sock);
  }

  /** @param {Sock} sock */
  #choose(sock) {
    const knit = this.counter.state.socks[sock];
    const place = this.counter.state.places[sock];
    const at = place.step < knit.steps.length ? place : { step: knit.steps.length - 1, done: 0 };
    this.#sock = sock;
    this.#pick(section(knit, at.step)[0], view(knit, at).done);
  }

  /** @param {number} first @param {number} [done] */
  #pick(first, done = 0) {
    this.#first = first;
    this.#typed = String(done);
    this.#problem = "";
    this.#sure = null;
    this.#draw();
  }

  #ask() {
    const knit = this.counter.state.socks[this.#sock];
    const { total, title, unit } = view(knit, { step: this.#first, done: 0 });
    const typed = this.#typed.trim();
    const done = unit === "thing" ? 0 : Number(typed);
    this.#sure = null;
    if (!/^\d+$/.test(typed) || done > total) {
      this.#problem = say.tooManyDone({ section: title, total, unit: inUnit(unit) });
    } else {
      this.#problem = "";
      this.#sure = placeIn(knit, this.#first, done);
    }
    this.#draw();
    if (!this.#sure) return document.getElementById("places-done")?.focus();
    // Both answers are in sight, not only the one that has the focus.
    const yes = document.getElementById("places-go");
    yes?.focus({ preventScroll: true });
    yes?.parentElement?.scrollIntoView({ block: "nearest", behavior: "instant" });
  }

  /** What lies below is the new place by the time it is seen. @param {Place} place */
  async #go(place) {
    await this.counter.go(this.#sock, place);
    this.sheet.close();
  }

  #draw() {
    const { state } = this.counter;
    const knit = state.socks[this.#sock];
    const all = sections(knit);
    const chosen = all.find(({ first }) => first === this.#first) ?? all[0];
    const sure = this.#sure;
    const tension = sure && knit.steps[sure.step]?.tension;
    const from = words(state.socks[state.sock], state.places[state.sock], state.sock, this.#sock);
    this.sheet.show(
      say.goToTitle,
      html`<fieldset>
          <legend>${say.whichSock}</legend>
          <div class="choice">
            ${SOCKS.map(
              (
                sock,
              ) => html`<label><input type="radio" name="places-sock" .checked=${sock === this.#sock}
                @change=${() => this.#choose(sock)}><span>${say.sockName({ sock: which(sock) })}</span></label>`,
            )}
          </div>
        </fieldset>
        <fieldset>
          <legend>${say.section}</legend>
          <div class="choice sections">
            ${all.map(
              ({
                first,
                title,
                total,
                unit,
              }) => html`<label><input type="radio" name="places-section" .checked=${first === this.#first}
                @change=${() => this.#pick(first)}><span>${title} <small>${say.totalOf({ total, unit })}</small></span></label>`,
            )}
          </div>
        </fieldset>
        ${
          chosen.unit === "thing"
            ? nothing
            : html`<div class="field">
                <label for="places-done">${say.doneThere({ unit: chosen.unit })}</label>
                <p class="where" id="places-where">${say.zeroIsStart({ section: chosen.title, total: chosen.total })}</p>
                <div class="entry"><div class="typed"><input id="places-done" type="text" inputmode="numeric" autocomplete="off"
                  aria-describedby="places-where places-error" aria-invalid=${this.#problem ? "true" : nothing}
                  .value=${this.#typed} @input=${this.#type} @keydown=${this.#enter}></div></div>
                <p class="error" id="places-error">${this.#problem}</p>
              </div>`
        }
        <div class="sure" role="status">
          ${
            sure
              ? html`<p>${say.fromTo({ from, to: words(knit, sure, this.#sock, state.sock) })}</p>
                  ${tension ? html`<p>${say.setBeforeIt({ setting: tension })}</p>` : nothing}
                  ${this.#sock === 1 && this.sockTwo.due ? html`<p><strong>${say.measuredSince}</strong></p>` : nothing}`
              : nothing
          }
        </div>
        <div class="row answers">
          ${
            sure
              ? html`<button type="button" class="go" id="places-go" @click=${() => this.#go(sure)}>${say.yesGo}</button>
                  <button type="button" @click=${() => this.sheet.close()}>${say.stayHere}</button>`
              : html`<button type="button" id="places-ask" @click=${() => this.#ask()}>${say.goThere}</button>`
          }
        </div>
        ${
          SockTwo.possible(state) || (this.#sock === 1 && this.sockTwo.due)
            ? html`<hr class="knit"><p>${say.oneCanCorrect}</p>
                <button type="button" id="measure-one" @click=${() => this.sockTwo.open()}>${say.measureOne}</button>`
            : nothing
        }`,
    );
  }

  #type = (/** @type {Event} */ event) => {
    this.#typed = /** @type {HTMLInputElement} */ (event.target).value;
    this.#sure = null;
    this.#draw();
  };

  #enter = (/** @type {KeyboardEvent} */ event) => {
    if (event.key !== "Enter") return;
    event.preventDefault(); // else it would press the button that has the focus by then
    this.#ask();
  };
}

/** @param {Knit} knit @param {Place} place @param {Sock} sock @param {Sock} other */
function words(knit, place, sock, other) {
  const { title, unit, done, total, ended, step } = view(knit, place);
  const name = sock === other ? "same" : which(sock);
  if (ended) return say.offOnWay({ sock: name });
  const where = unit === "thing" ? (step?.text ?? "") : say.doneShort({ done, total });
  return say.placeOnWay({ sock: name, section: title, where });
}

/**
 * The counter on screen: at the top what the knitter may want to know or do, below it the one large
 * target. Only what has changed is drawn anew.
 * @import {Counter} from "./counter.js"
 * @import {Notices} from "./notices.js"
 * @import {TakeBack} from "./take_back.js"
 * @import {Triggers} from "./triggers.js"
 * @import {Pace} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/machine";
import { ticks, where, which } from "./moments.js";
import { hangs } from "./progress.js";
import { Strip } from "./strip.js";
import { targetContent } from "./target.js";
import { Ticked } from "./ticked.js";

/**
 * @typedef {object} Ways what the buttons at the top do
 * @property {() => void} leave
 * @property {() => void} places
 * @property {() => void} notes
 * @property {() => void} trouble
 * @property {() => void} settings
 * @property {() => void} sockTwo measure sock one, and begin or correct sock two
 * @property {() => void} beginTwo begin sock two with the counts it has
 * @property {() => unknown} yarn what the end of a sock shows of its yarn
 */

export class CounterScreen {
  /** @type {Pace} */
  pace = {};
  /** @type {Strip} */
  #strip;
  #ticked;

  /**
   * @param {HTMLElement} place
   * @param {{ counter: Counter, triggers: Triggers, takeBack: TakeBack, notices: Notices, one: { counting: boolean }, ways: Ways }} parts
   */
  constructor(place, parts) {
    this.place = place;
    this.parts = parts;
    this.#ticked = new Ticked(parts.counter.session.id);
    this.#strip = new Strip(() => {
      this.draw();
      this.focus();
    });
  }

  draw() {
    const { counter, notices, one, ways, takeBack } = this.parts;
    const { state, knit, place, view } = counter;
    const { who } = counter.session;
    const look = view.step?.kind ?? "ended";
    const sock = which(state.sock);
    render(
      html`<div class="at-machine" role="main" aria-labelledby="machine-title" data-look=${look}>
        <div class="at-top">
          <button type="button" class="leave" @click=${ways.leave}>${say.leave}</button>
          <h1 class="at-title" id="machine-title" tabindex="-1">
            <small>${say.sockName({ sock })}${notices.standing ? html` <em>${notices.standing}</em>` : nothing}${who ? html` · <bdi>${who}</bdi>` : nothing}</small>
            <span class="section-name">${view.title || (hangs(knit) ? say.hangsBelow : say.offMachine)}</span>
          </h1>
          <button type="button" class="set" @click=${ways.settings}>${say.settings}</button>
          <div class="at-middle">${notices.first ? notices.draw() : this.#strip.draw(state.sock, counter, this.pace)}</div>
          <div class="at-controls">
            ${takeBack.draw(state.undo.length)}
            <button type="button" @click=${ways.places}>${say.goTo}</button>
            <button type="button" @click=${ways.notes}>${say.note}</button>
            <button type="button" @click=${ways.trouble}>${say.help}</button>
          </div>
          <p class="said" id="machine-now">${view.step ? say.nowHere({ where: where(knit, place), todo: [view.step.text, ...ticks(view.step)].join(" ") }) : ""}</p>
        </div>
        ${view.step ? this.#target() : this.#ended()}
        ${one.counting ? nothing : html`<p class="follows">${say.anotherTab}</p>`}
      </div>`,
      this.place,
    );
  }

  /** Keys count again, whatever was touched before: a pedal sends to what has the focus. */
  focus() {
    const target = this.place.querySelector(".target") ?? this.place.querySelector(".at-title");
    /** @type {HTMLElement | null} */ (target)?.focus({ preventScroll: true });
  }

  /** With large text the top alone may fill the screen: what counts is shown first. */
  toTarget() {
    scrollTo({ top: 0, behavior: "instant" });
    const target = this.place.querySelector(".target");
    target?.scrollIntoView({ block: "nearest", behavior: "instant" });
  }

  #target() {
    const { counter, triggers, one } = this.parts;
    const { state, knit, place, view } = counter;
    const { step } = view;
    if (!step) return nothing;
    const notes = state.notes.filter(
      (note) =>
        note.sock !== state.sock &&
        note.place.step === place.step &&
        note.place.done === place.done,
    );
    const list = ticks(step);
    const button = html`<button type="button" class="target"
      aria-describedby="machine-now" aria-disabled=${one.counting ? nothing : "true"}
      @pointerdown=${triggers.pointerDown} @pointerup=${triggers.pointerUp} @pointercancel=${triggers.pointerUp}
      @click=${triggers.click} @contextmenu=${stop}>
      <span class="target-inside">${targetContent(knit, place, view, notes)}</span>
      <span class="said">${say.press({ kind: step.kind })}</span>
    </button>`;
    if (!list.length) return button;
    return html`<div class="ticked">
      <div class="to-tick" role="group" aria-label=${step.text}>${list.map((words, at) => this.#tick(words, `${state.sock} ${place.step} ${at}`))}</div>
      ${button}
    </div>`;
  }

  /** @param {string} words @param {string} key of the thing, on this sock at this step */
  #tick(words, key) {
    const change = (/** @type {Event} */ { target }) => {
      const box = /** @type {HTMLInputElement} */ (target);
      this.#ticked.put(key, box.checked);
      if (!box.matches(":focus-visible")) this.focus(); // a pedal counts again
    };
    return html`<label><input type="checkbox" .checked=${this.#ticked.has(key)} @change=${change}><span>${words}</span></label>`;
  }

  #ended() {
    const { state, knit } = this.parts.counter;
    const { ways } = this.parts;
    const hanging = hangs(knit);
    const both = state.ended[0] && state.ended[1];
    const first = state.sock === 0;
    return html`<div class="at-end">
      <p class="at-end-title">${both ? say.bothKnitted : hanging ? say.sockHangs : say.sockIsOff({ sock: which(state.sock) })}</p>
      ${
        both
          ? html`<p>${hanging ? say.nextPairFollows : say.wellCranked}</p>`
          : first && hanging
            ? html`<p>${say.twoFollows}</p>
                <button type="button" class="go" id="begin-unmeasured" @click=${ways.beginTwo}>${say.beginTwo({ begun: "no" })}</button>
                <p>${say.offByCord}</p>
                <button type="button" id="measure-first" @click=${ways.sockTwo}>${say.measureOne}</button>`
            : first
              ? html`<p>${say.restThenMeasure}</p>
                <button type="button" class="go" id="measure-first" @click=${ways.sockTwo}>${say.measureOne}</button>
                <button type="button" id="begin-unmeasured" @click=${ways.beginTwo}>${say.beginTwoAsPlanned}</button>`
              : html`<p>${say.oneNotOff}</p>
                <button type="button" class="go" @click=${ways.places}>${say.goToOne}</button>`
      }
      ${ways.yarn()}
      <button type="button" @click=${ways.leave}>${say.leaveCounter}</button>
    </div>`;
  }
}

/** A long press of a phone asks for no menu here. @param {Event} event */
function stop(event) {
  event.preventDefault();
}

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
import { nextWords, where } from "./moments.js";
import { timeLeft } from "./pace.js";
import { sockPicture } from "./sock_picture.js";
import { NAMES, targetContent } from "./target.js";

/**
 * @typedef {object} Ways what the buttons at the top do
 * @property {() => void} leave
 * @property {() => void} places
 * @property {() => void} notes
 * @property {() => void} settings
 * @property {() => void} sockTwo measure sock one, and begin or correct sock two
 * @property {() => void} beginTwo begin sock two with the counts it has
 */

export const SOCKS = ["Sock one", "Sock two"];

// Nothing is left to be cranked here.
const NO_TIME = { section: null, sock: null };

export class CounterScreen {
  /** @type {Pace} */
  pace = {};

  /**
   * @param {HTMLElement} place
   * @param {{ counter: Counter, triggers: Triggers, takeBack: TakeBack, notices: Notices, one: { counting: boolean }, ways: Ways }} parts
   */
  constructor(place, parts) {
    this.place = place;
    this.parts = parts;
  }

  draw() {
    const { counter, notices, one, ways, takeBack } = this.parts;
    const { state, knit, place, view } = counter;
    const look = view.step?.kind ?? "ended";
    const sock = SOCKS[state.sock];
    render(
      html`<div class="at-machine" role="main" aria-labelledby="machine-title" data-look=${look}>
        <div class="at-top">
          <button type="button" class="leave" @click=${ways.leave}>Leave</button>
          <h1 class="at-title" id="machine-title" tabindex="-1">
            <small>${sock}${notices.standing ? html` <em>${notices.standing}</em>` : nothing}</small>
            <span class="section-name">${view.title || "Off the machine"}</span>
          </h1>
          <button type="button" class="more" @click=${ways.settings}>Settings</button>
          <div class="at-middle">${notices.first ? notices.draw() : this.#progress()}</div>
          <div class="at-controls">
            ${takeBack.draw(state.undo.length)}
            <button type="button" @click=${ways.places}>Go to…</button>
            <button type="button" @click=${ways.notes}>Note</button>
          </div>
          <p class="said" id="machine-now">${view.step ? `${where(knit, place)}. ${view.step.text}` : ""}</p>
        </div>
        ${view.step ? this.#target() : this.#ended()}
        ${one.counting ? nothing : html`<p class="follows">Another tab counts</p>`}
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
    return html`<button type="button" class="target" aria-label=${NAMES[step.kind]}
      aria-describedby="machine-now" aria-disabled=${one.counting ? nothing : "true"}
      @pointerdown=${triggers.pointerDown} @pointerup=${triggers.pointerUp} @pointercancel=${triggers.pointerUp}
      @click=${triggers.click} @contextmenu=${stop}>
      <span class="target-inside">${targetContent(knit, place, view, notes)}</span>
    </button>`;
  }

  #progress() {
    const { counter } = this.parts;
    const { state, knit, place, view } = counter;
    const { section, sock } = view.left ? timeLeft(knit, place, this.pace) : NO_TIME;
    const percent = Math.floor(view.share * 100);
    const words = `${SOCKS[state.sock]}: ${percent} of 100 knitted`;
    return html`${sockPicture(knit, place, words)}
      <p class="at-next">
        ${view.step ? html`<b>Next:</b> ${nextWords(knit, place)}` : nothing}
      </p>
      <p class="at-time">
        <span aria-hidden="true">${percent} % of the sock</span>
        ${sock === null ? nothing : html`<span>${minutes(sock)} left</span>`}
        ${section === null || view.unit === "thing" ? nothing : html`<span class=${sock === null ? "" : "of-section"}>${view.title.toLowerCase()} ${minutes(section)}</span>`}
      </p>`;
  }

  #ended() {
    const { state } = this.parts.counter;
    const { ways } = this.parts;
    const both = state.ended[0] && state.ended[1];
    const first = state.sock === 0;
    return html`<div class="at-end">
      <p class="at-end-title">${both ? "Both socks are knitted." : `${SOCKS[state.sock]} is off the machine.`}</p>
      ${
        both
          ? html`<p>Well cranked. Its notes and how long it took stay on this phone.</p>`
          : first
            ? html`<p>Wash it, dry it flat and let it rest a day, then measure it: sock two gets its foot rounds from that. You may also begin now, and measure later.</p>
                <button type="button" class="go" id="measure-first" @click=${ways.sockTwo}>Measure sock one</button>
                <button type="button" id="begin-unmeasured" @click=${ways.beginTwo}>Begin sock two with its counts</button>`
            : html`<p>Sock one is not off yet.</p>
                <button type="button" class="go" @click=${ways.places}>Go to sock one</button>`
      }
      <button type="button" @click=${ways.leave}>Leave the counter</button>
    </div>`;
  }
}

/** Time in words, as fine as it is known. @param {number} seconds */
export function minutes(seconds) {
  const all = Math.max(1, Math.round(seconds / 60));
  if (all < 60) return `about ${all} min`;
  const [hours, rest] = [Math.floor(all / 60), all % 60];
  return `about ${hours} h${rest ? ` ${rest} min` : ""}`;
}

/** A long press of a phone asks for no menu here. @param {Event} event */
function stop(event) {
  event.preventDefault();
}

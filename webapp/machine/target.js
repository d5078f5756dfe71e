/**
 * What stands in the large target: the rounds left, the row with its needle, or the thing to do by hand,
 * each with a look of its own, so that a foot on a pedal notices from afar.
 * @import {Knit, Note, Place, Row, View} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/machine";
import { each, listed } from "../page/needles.js";
import { short } from "../page/short.js";
import { cylinderView, needlesOut } from "./cylinder_view.js";
import { inUnit, untilStop, which } from "./moments.js";

const LAST = 5;

/** @param {Knit} knit @param {Place} place @param {View} view @param {Note[]} notes of the other sock, at this round */
export function targetContent(knit, place, view, notes) {
  const { step } = view;
  if (!step) return nothing;
  const said = notes.map(
    ({ sock, text }) =>
      html`<span class="of-other">${say.noteHere({ sock: which(sock), note: short(text) })}</span>`,
  );
  if (step.kind === "do") {
    // Of a mock rib: which needles are out, until they are put back.
    const out = step.part === "waste" || step.part === "cuff" ? knit.every : null;
    return html`<span class="by-hand">
        ${step.ticks ? nothing : html`<span class="by-hand-mark" aria-hidden="true">${out ? needlesOut(knit.slots, out) : hand}</span>`}
        <span class="by-hand-text">${step.text}</span>
      </span>
      ${said}
      <span class="tap-when">${step.ticks ? say.tapWhenAllDone : say.tapWhenDone}</span>`;
  }
  return html`${step.kind === "row" ? row(knit, step, view) : rounds(knit, place, view)}${said}`;
}

const hand = html`<svg viewBox="0 0 48 48" focusable="false"><path d="M14 25V13a3 3 0 0 1 6 0v9V8a3 3 0 0 1 6 0v14V10a3 3 0 0 1 6 0v13-8a3 3 0 0 1 6 0v14c0 9-5 14-12 14-6 0-9-3-12-8l-6-10a3 3 0 0 1 5-3z"/></svg>`;

/** @param {Knit} knit @param {Place} place @param {View} view */
function rounds(knit, place, { unit, left, done, total }) {
  const until = untilStop(knit, place);
  return html`<span class="left">
      <span class="left-figure" data-digits=${String(left).length}>${left}</span>
      <span class="left-words">${say.leftWords({ left, unit: inUnit(unit) })}</span>
    </span>
    <span class="done-words">${say.doneShort({ done, total })}</span>
    <span class="soon">${lastFew(until, unit) ?? justDone(knit, place) ?? untilHand(until, left, unit)}</span>`;
}

/** Another section began without anything by hand between: the end of the last one shows all the same. @param {Knit} knit @param {Place} place */
function justDone({ steps }, { step, done }) {
  const before = steps[step - 1];
  if (done || !before || before.kind === "do" || before.part === steps[step].part) return null;
  return html`<span class="just-done">${say.justDone({ before: before.title, section: steps[step].title })}</span>`;
}

/** @param {number} until @param {number} left @param {View["unit"]} unit */
function untilHand(until, left, unit) {
  if (until === left) return nothing;
  return html`<span class="until">${say.untilHand({ left: until, unit: inUnit(unit) })}</span>`;
}

/** @param {number} until @param {View["unit"]} unit */
function lastFew(until, unit) {
  if (until > LAST) return null;
  return html`<span class="last-few"
    >${say.lastFew({ left: until, unit: inUnit(unit) })}</span
  >`;
}

/** In the order of the hands: what comes before the crank, the crank, what comes after. @param {Knit} knit @param {Row} step @param {View} view */
function row(knit, step, { left, done, total }) {
  return html`<span class="row-view">
    <span class="row-picture">
      ${cylinderView(knit, step, left)}
    </span>
    <span class="row-words">
      <span class="soon">
        ${step.remind.map((words) => html`<span class="remind">${words}</span>`)}
        ${lastFew(left, "row")}
      </span>
      ${step.back ? move(say.bringBack({ needles: each(step.back).length, which: listed(step.back) }), step.back_where) : nothing}
      ${step.joins ? move(say.hangLoop({ which: listed(step.joins) }), step.joins_where ?? null) : nothing}
      <span class="crank crank-${step.direction}">
        <span class="arrow" aria-hidden="true">${arrow}</span>
        <span>${say.carrier({ first: step.back || step.joins ? "no" : "yes", direction: step.direction })}</span>
      </span>
      ${step.hold ? move(say.thenHold({ needles: each(step.hold).length, which: listed(step.hold) }), step.hold_where) : nothing}
      <span class="done-words">${say.rowOf({ row: done + 1, total })}</span>
    </span>
  </span>`;
}

/** @param {unknown} words @param {string | null} place */
function move(words, place) {
  return html`<span class="move">${words}${place ? html` <small>${place}</small>` : nothing}</span>`;
}

const arrow = html`<svg viewBox="0 0 96 40" focusable="false"><path d="M4 20H86M68 5l20 15-20 15"/></svg>`;

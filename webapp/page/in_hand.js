/**
 * The field in hand: what to do with it stands in one place above the tape, so that no row moves, beside
 * what is hard to type with wool on the hands. The drawn tape of a measure is the way to its field.
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { aboveKeyboard } from "./above_keyboard.js";
import { isShown } from "./seen.js";

const EIGHTHS = ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];
const BESIDE = 8; // px between the field and what is said of it
const INCHES = /^\s*\d*(\s+\d+\/\d+|\d+\/\d+)?\s*$/; // what a part of an inch can be added to
const WHOLE = /\d\s*$/; // a number that a part of an inch can follow
const COMMA = (0.5).toLocaleString().includes(","); // as she writes numbers

/** @type {typeof import("./sliding_tape.js").slidingTape | undefined} */
let slidingTape;

/** It is here by now. @param {typeof slidingTape} tape */
export function tapeCame(tape) {
  slidingTape = tape;
}

/** @param {HTMLFormElement} form @param {HTMLElement} place @param {EventTarget} nav fires "step" */
export function wireInHand(form, place, nav) {
  /** @type {HTMLInputElement | null} */
  let field = null;
  const draw = () => {
    place.hidden = !field || !isShown(field);
    render(field && !place.hidden ? tray(field) : nothing, place);
    const { style } = document.documentElement;
    style.scrollPaddingBlockEnd = place.hidden
      ? ""
      : `${innerHeight - place.getBoundingClientRect().top + BESIDE}px`;
    if (!field || place.hidden) return;
    toggleRoom(true);
    outFromUnder(field, place);
  };
  form.addEventListener("focusin", ({ target }) => {
    field = target instanceof HTMLInputElement && target.type === "text" ? target : null;
    mark(form, field);
    draw();
  });
  /** @param {EventTarget | null} to */
  const left = (to) => {
    if (to instanceof Node && (form.contains(to) || place.contains(to))) return;
    field = null;
    mark(form, field);
    draw();
  };
  form.addEventListener("focusout", ({ relatedTarget }) => left(relatedTarget));
  // Nobody is told that a field of a step that is gone lost the focus.
  nav.addEventListener("step", () => {
    draw();
    toggleRoom(!place.hidden);
  });
  // Behind the answer, which speaks of the field too.
  const soon = () => queueMicrotask(draw);
  form.addEventListener("input", soon);
  new MutationObserver(() => field && draw()).observe(form, {
    subtree: true,
    characterData: true,
    childList: true,
  });
  aboveKeyboard(/** @type {HTMLElement} */ (place.parentElement), draw);
  // The focus stays where it is typed; so does the phone's keyboard.
  place.addEventListener("pointerdown", (event) => {
    if (!(event.target instanceof HTMLInputElement)) event.preventDefault();
  });
  place.addEventListener("focusout", ({ relatedTarget }) => left(relatedTarget));
  form.addEventListener("click", ({ target }) => {
    const tape = target instanceof Element && target.closest("[data-tape-of]");
    if (tape) document.getElementById(tape.getAttribute("data-tape-of") ?? "")?.focus();
  });
  form.addEventListener("change", () => mark(form, field));
  form.addEventListener("input", () => mark(form, field));
}

/** Room at the page's end for what is said of a field: it stays with the step, or the page would jump. @param {boolean} room */
function toggleRoom(room) {
  document.documentElement.toggleAttribute("data-room", room);
}

/** Unless it was scrolled out of sight, which is nobody's to undo. @param {HTMLElement} field @param {HTMLElement} tray */
function outFromUnder(field, tray) {
  const { top, bottom } = field.getBoundingClientRect();
  const covered = bottom > tray.getBoundingClientRect().top && top < innerHeight;
  if (covered) field.scrollIntoView({ block: "nearest" });
}

/** Each drawn tape as its field is: empty, measured, or in hand. @param {HTMLFormElement} form @param {HTMLInputElement | null} inHand */
function mark(form, inHand) {
  for (const tape of form.querySelectorAll("[data-tape-of]")) {
    const field = document.getElementById(tape.getAttribute("data-tape-of") ?? "");
    if (!(field instanceof HTMLInputElement)) continue;
    tape.classList.toggle("measured", Boolean(field.value.trim()));
    tape.classList.toggle("taken", field === inHand);
  }
}

/** @param {HTMLInputElement} field */
function tray(field) {
  const text = (/** @type {string} */ name) =>
    document.getElementById(`${field.id}-${name}`)?.textContent?.trim() ?? "";
  const read = text("other");
  const guess = field.value.trim() ? "" : text("estimate");
  const unit = document.documentElement.dataset.units === "in" ? "in" : "cm";
  const onTape = "tape" in field.dataset && field.closest(".with-unit");
  const inches = unit === "in" && onTape;
  const decimal = field.inputMode === "decimal";
  const key = (/** @type {string} */ words, /** @type {() => void} */ press) =>
    html`<button type="button" tabindex="-1" @click=${press}>${words}</button>`;
  // Each row keeps its height, whatever stands in it: nothing moves while one types.
  return html`
    <p class="asks">${text("note") || text("where")}</p>
    <div class="read">${
      guess
        ? html`<details><summary>${say.whereGuessFrom}</summary><p>${guess}</p></details>`
        : read && `= ${read}`
    }</div>
    <div class="eighths" role="group" aria-label=${say.partsOfInch} ?hidden=${unit !== "in"}>
      ${inches && INCHES.test(field.value) ? EIGHTHS.map((part) => key(part, () => add(field, part))) : nothing}
    </div>
    <div class="slide">
      ${(onTape && slidingTape?.(field, unit, say.slideTape)) || nothing}
      ${decimal && COMMA ? key(",", () => comma(field)) : nothing}
      ${decimal ? key(say.allKeys, () => allKeys(field)) : nothing}
    </div>`;
}

/** A phone's keys for numbers lack a slash, and a yarn's name. @param {HTMLInputElement} field */
function allKeys(field) {
  field.inputMode = "text"; // the phone's keys follow
  field.focus();
}

/** Where a phone's keys have a point alone. @param {HTMLInputElement} field */
function comma(field) {
  field.setRangeText(",", field.selectionStart ?? 0, field.selectionEnd ?? 0, "end");
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
}

/** A part of an inch after what is typed; it takes the place of one that is there. @param {HTMLInputElement} field @param {string} part */
function add(field, part) {
  const whole = field.value.replace(/\s*\d+\/\d+\s*$/, "");
  field.value = WHOLE.test(whole) ? `${whole.trimEnd()} ${part}` : part;
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
}

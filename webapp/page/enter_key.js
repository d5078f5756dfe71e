/**
 * Enter goes on to the next field, as the phone's key says; after a step's last it goes on to the next step,
 * into the first field there in which nothing stands, and after any other form's it puts the keys away. Where
 * nothing is sent, Enter has nothing else to do. Elsewhere it does so in fields whose key says it.
 */
import { isShown } from "./seen.js";

const FIELDS = "input, select";
const SAYS_SO = "[enterkeyhint=next], [enterkeyhint=done]";

/** @param {HTMLElement} place whose fields of the same kind follow each other @param {string} [fields] */
export function enterGoesOn(place, fields = SAYS_SO) {
  place.addEventListener("focusin", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || !target.matches(SAYS_SO)) return;
    target.enterKeyHint = after(place, target) || wayOn(target) ? "next" : "done";
  });
  place.addEventListener("keydown", (event) => {
    const field = event.target;
    // While letters are put together, Enter ends that alone.
    if (event.key !== "Enter" || event.isComposing || !(field instanceof HTMLInputElement)) return;
    if (!field.matches(fields)) return;
    event.preventDefault();
    const next = after(place, field);
    if (next) return next.focus();
    field.blur();
    wayOn(field)?.click();
    if (wayOn(field)) firstBlank(place)?.focus();
  });
}

/** What is typed next: a choice is made already. @param {HTMLElement} place @param {HTMLInputElement} field */
function after(place, field) {
  /** @type {HTMLInputElement[]} */
  const all = Array.from(place.querySelectorAll(FIELDS));
  const rest = all.slice(all.indexOf(field) + 1);
  return rest.find((one) => isShown(one) && one.type !== "radio");
}

/** @param {HTMLElement} place */
function firstBlank(place) {
  /** @type {HTMLInputElement[]} */
  const all = Array.from(place.querySelectorAll(SAYS_SO));
  return all.find((one) => isShown(one) && !one.value.trim());
}

/** @param {HTMLElement} field @returns {HTMLElement | null | undefined} */
function wayOn(field) {
  return field.closest(".step")?.querySelector(".next");
}

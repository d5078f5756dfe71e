/**
 * Enter goes on to the next field, as the phone's key says; after a form's last it puts the keys away, or
 * goes to its way on. Where nothing is sent, Enter has nothing else to do. Elsewhere it does so in fields
 * whose key says it.
 */
import { isShown } from "./seen.js";

const FIELDS = "input, select";
const SAYS_SO = "[enterkeyhint=next], [enterkeyhint=done]";

/** @param {HTMLElement} place whose fields of the same kind follow each other @param {string} [fields] */
export function enterGoesOn(place, fields = SAYS_SO) {
  place.addEventListener("focusin", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || !target.matches(SAYS_SO)) return;
    target.enterKeyHint = after(place, target) ? "next" : "done";
  });
  place.addEventListener("keydown", (event) => {
    const field = event.target;
    // While letters are put together, Enter ends that alone.
    if (event.key !== "Enter" || event.isComposing || !(field instanceof HTMLInputElement)) return;
    if (!field.matches(fields)) return;
    event.preventDefault();
    const next = after(place, field) ?? wayOn(field);
    if (next) next.focus();
    else field.blur();
  });
}

/** Of a choice it is what is chosen. @param {HTMLElement} place @param {HTMLInputElement} field */
function after(place, field) {
  /** @type {HTMLInputElement[]} */
  const all = Array.from(place.querySelectorAll(FIELDS));
  const rest = all.slice(all.indexOf(field) + 1);
  return rest.find(
    (one) => isShown(one) && (one.type !== "radio" || (one.checked && one.name !== field.name)),
  );
}

/** @param {HTMLElement} field @returns {HTMLElement | null | undefined} */
function wayOn(field) {
  return field.closest(".step, form")?.querySelector(".next");
}

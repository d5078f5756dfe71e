/**
 * Enter goes on to the next field, as the phone's key says; after a form's last it puts the keys away, or
 * goes to its way on. Where nothing is sent, Enter has nothing else to do.
 */
import { isShown } from "./seen.js";

const FIELDS = "input, select";

/** @param {HTMLElement} form */
export function enterGoesOn(form) {
  form.addEventListener("focusin", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || !target.enterKeyHint) return;
    target.enterKeyHint = after(form, target) ? "next" : "done";
  });
  form.addEventListener("keydown", (event) => {
    const field = event.target;
    // While letters are put together, Enter ends that alone.
    if (event.key !== "Enter" || event.isComposing || !(field instanceof HTMLInputElement)) return;
    event.preventDefault();
    const next = after(form, field) ?? wayOn(field);
    if (next) next.focus();
    else field.blur();
  });
}

/** Of a choice it is what is chosen. @param {HTMLElement} form @param {HTMLInputElement} field */
function after(form, field) {
  /** @type {HTMLInputElement[]} */
  const all = Array.from(form.querySelectorAll(FIELDS));
  const rest = all.slice(all.indexOf(field) + 1);
  return rest.find(
    (one) => isShown(one) && (one.type !== "radio" || (one.checked && one.name !== field.name)),
  );
}

/** @param {HTMLElement} field @returns {HTMLElement | null | undefined} */
function wayOn(field) {
  return field.closest(".step, form")?.querySelector(".next");
}

/**
 * The field that is typed in stays where it is on the screen, whatever appears above it. A browser that does
 * so itself does not at the page's very top, and some never do.
 */
import { isShown } from "./seen.js";

/** @param {HTMLElement} place what holds the fields: its style keeps the browser's own way off meanwhile */
export function keepSteady(place) {
  /** The field and its height on the page: both are over once it is left. @type {{ field: HTMLElement, from: number } | null} */
  let held = null;
  /** @param {HTMLElement} field */
  const heightOf = (field) => field.getBoundingClientRect().top + scrollY;
  place.addEventListener("focusin", ({ target }) => {
    const field = target instanceof HTMLElement && target.matches("input, select") && target;
    held = field ? { field, from: heightOf(field) } : null;
  });
  place.addEventListener("focusout", () => {
    held = null;
  });
  // Told of before anything is painted.
  new ResizeObserver(() => {
    // Of a step that is gone, a field has no place, and nobody was told that it lost the focus.
    if (!held || !isShown(held.field)) return;
    const { field, from } = held;
    const moved = heightOf(field) - from;
    // Below what is on screen it may go where it likes.
    if (moved && from < scrollY + innerHeight) {
      scrollBy({ top: moved, behavior: "instant" });
      field.scrollIntoView({ block: "nearest" }); // on with what the browser had begun as it got the focus
    }
    held.from += moved;
  }).observe(document.body);
}

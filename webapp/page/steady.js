/**
 * The field she is in stays where it is on the screen, whatever appears above it. A browser that does so
 * itself does not at the page's very top, and some never do.
 */

/** @param {HTMLElement} place what holds the fields: its style keeps the browser's own way off meanwhile */
export function keepSteady(place) {
  /** @type {HTMLElement | null} */
  let field = null;
  let from = 0;
  const top = () => (field ? field.getBoundingClientRect().top + scrollY : 0);
  place.addEventListener("focusin", ({ target }) => {
    field = target instanceof HTMLElement && target.matches("input, select") ? target : null;
    from = top();
  });
  place.addEventListener("focusout", () => {
    field = null;
  });
  // Told of before anything is painted.
  new ResizeObserver(() => {
    const moved = top() - from;
    // Below what is on screen it may go where it likes.
    if (moved && from < scrollY + innerHeight) {
      scrollBy({ top: moved, behavior: "instant" });
      field?.scrollIntoView({ block: "nearest" }); // on with what the browser had begun as she came
    }
    from += moved;
  }).observe(document.body);
}

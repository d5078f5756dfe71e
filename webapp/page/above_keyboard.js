/**
 * What lies under the thumb stays above the phone's keyboard, and while that is up the tape goes, for the
 * field and what is said of it need the room. Some browsers make the page smaller for their keyboard, as
 * the page asks them to (interactive-widget); others lay it over the page, and tell by the visual viewport.
 */

const LEFT = 0.75; // of the height: no bar of a browser takes more than a quarter of it, a keyboard does

/** @param {HTMLElement} thumb @param {() => void} moved once it has */
export function aboveKeyboard(thumb, moved) {
  const seen = window.visualViewport;
  /** The greatest height at each width, for a phone is turned. @type {Map<number, number>} */
  const greatest = new Map();
  const look = () => {
    const height = seen?.height ?? innerHeight;
    const most = Math.max(greatest.get(innerWidth) ?? 0, height);
    greatest.set(innerWidth, most);
    // Zoomed in by two fingers the visual viewport is small, too.
    const zoomed = (seen?.scale ?? 1) > 1.01;
    const up = !zoomed && height < most * LEFT;
    document.documentElement.toggleAttribute("data-keyboard", up);
    const covered = up && seen ? innerHeight - seen.height - seen.offsetTop : 0;
    thumb.style.bottom = covered > 0 ? `${covered}px` : "";
    moved();
  };
  seen?.addEventListener("resize", look);
  seen?.addEventListener("scroll", look);
  addEventListener("resize", look);
  look();
}

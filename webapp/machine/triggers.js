/**
 * What counts: a touch of the target, keys, and whatever a pedal, a page-turner or media buttons send.
 * A second one too soon after the first is held back and told, never swallowed.
 */

// Page-turners and pedals send one of these; volume and media keys reach a page on some phones only.
const KEYS = new Set([
  " ",
  "Enter",
  "PageDown",
  "ArrowRight",
  "ArrowDown",
  "MediaTrackNext",
  "MediaPlayPause",
  "AudioVolumeUp",
  "AudioVolumeDown",
]);
const PRESSES = new Set([" ", "Enter"]);
const MEDIA = /** @type {MediaSessionAction[]} */ (["nexttrack", "play", "pause"]);
// A click this soon after the finger left the target is that touch told again.
const SAME_TOUCH_MS = 500;

/** Fires "count" (detail: when, ms) and "close" (detail: when, ms) for one that came too soon. */
export class Triggers extends EventTarget {
  #last = Number.NEGATIVE_INFINITY;
  #lifted = Number.NEGATIVE_INFINITY;
  #on = false;

  /** @param {{ guard: () => number, free: () => boolean }} ways `free`: no other thing is on screen */
  constructor({ guard, free }) {
    super();
    this.guard = guard;
    this.free = free;
  }

  start() {
    if (this.#on) return;
    this.#on = true;
    document.addEventListener("keydown", this.#key);
    document.addEventListener("keyup", this.#keyUp);
    this.#media(() => this.#trigger(performance.now()));
  }

  stop() {
    this.#on = false;
    document.removeEventListener("keydown", this.#key);
    document.removeEventListener("keyup", this.#keyUp);
    this.#media(null);
  }

  /** A finger counts as it comes down: one that slips in its glove has counted already. */
  pointerDown = (/** @type {PointerEvent} */ event) => {
    if (event.pointerType === "mouse" && event.button !== 0) return;
    this.#lifted = Number.POSITIVE_INFINITY;
    this.#trigger(event.timeStamp);
  };

  pointerUp = (/** @type {PointerEvent} */ event) => {
    this.#lifted = event.timeStamp;
  };

  /** Without a finger before it, a click comes from a screen reader or a switch. */
  click = (/** @type {MouseEvent} */ { detail, timeStamp }) => {
    if (!detail || timeStamp - this.#lifted > SAME_TOUCH_MS) this.#trigger(timeStamp);
  };

  #key = (/** @type {KeyboardEvent} */ event) => {
    if (!this.#counts(event)) return;
    event.preventDefault();
    if (!event.repeat) this.#trigger(event.timeStamp);
  };

  /** The target would take a space that is let go for a click. */
  #keyUp = (/** @type {KeyboardEvent} */ event) => {
    if (this.#counts(event)) event.preventDefault();
  };

  /** @param {KeyboardEvent} event */
  #counts({ key, target, ctrlKey, altKey, metaKey }) {
    if (!KEYS.has(key) || ctrlKey || altKey || metaKey || !this.free()) return false;
    if (!(target instanceof Element) || target.closest(".target")) return true;
    if (target.closest("input:not([type=checkbox]), textarea, select")) return false;
    // On another button the two keys that press it are its own; the others mean nothing to it.
    return !(PRESSES.has(key) && target.closest("button, a, input"));
  }

  /** @param {(() => void) | null} handler */
  #media(handler) {
    for (const action of MEDIA) {
      try {
        navigator.mediaSession?.setActionHandler(action, handler);
      } catch {
        // This browser does not know that button.
      }
    }
  }

  /** @param {number} when */
  #trigger(when) {
    const close = Math.abs(when - this.#last) < this.guard();
    if (!close) this.#last = when;
    this.dispatchEvent(new CustomEvent(close ? "close" : "count", { detail: when }));
  }
}

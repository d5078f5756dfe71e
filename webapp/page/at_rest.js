/** What moves the page waits while one types in it, so that no row goes from under the eye. */

const REST_MS = 1000; // no key for so long: the typing rests

export class AtRest {
  #typed = -REST_MS;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #waiting;

  /** @param {HTMLElement} place what is typed in */
  constructor(place) {
    place.addEventListener("input", ({ target }) => {
      if (target instanceof HTMLInputElement && target.type === "text") {
        this.#typed = performance.now();
      }
    });
  }

  get typing() {
    return this.#left > 0;
  }

  /** How long it may go on, in ms. */
  get #left() {
    return this.#typed + REST_MS - performance.now();
  }

  /** Do it now, or once the typing rests, unless something else is to be done then. @param {() => void} act */
  once(act) {
    clearTimeout(this.#waiting);
    if (this.typing) this.#waiting = setTimeout(() => this.once(act), this.#left);
    else act();
  }
}

/**
 * Asks the engine while she types: waits for a pause, drops what a newer request supersedes, and
 * hands on the newest answer. An answer to an older request never reaches the screen.
 * @import {Asks, Request, Values} from "./types"
 */

const PAUSE_MS = 120;
// Every field that holds a length.
const READABLE = /^foot\.|^person\.height$|^fabric\.swatch\..*(width|length)$|^sock\.foot_/;

/** Fires "answer" (a plan or its problems), "readings" and "trouble" (a sentence), each in its detail. */
export class Calculator extends EventTarget {
  /** @type {AbortController | undefined} */
  #running;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #pause;

  /** @param {Asks} engine */
  constructor(engine) {
    super();
    this.engine = engine;
  }

  /**
   * Work out a request, after a short pause in which a newer one may take its place.
   * @param {Request} request @param {Values} values
   */
  work(request, values) {
    clearTimeout(this.#pause);
    this.#running?.abort();
    this.#running = new AbortController();
    const { signal } = this.#running;
    // While the engine starts nothing is asked; what is typed by then is worked out once it is up.
    if (this.engine.state !== "ready") return;
    this.#pause = setTimeout(() => {
      const fields = Object.fromEntries(
        Object.entries(values).filter(([name, value]) => READABLE.test(name) && value.trim()),
      );
      this.#ask({ do: "read", fields, units: request.units }, signal, "readings");
      this.#ask({ do: "page", request }, signal, "answer");
    }, PAUSE_MS);
  }

  /** @param {object} call @param {AbortSignal} signal @param {string} event */
  async #ask(call, signal, event) {
    try {
      const detail = await this.engine.ask(call, { signal });
      if (!signal.aborted) this.dispatchEvent(new CustomEvent(event, { detail }));
    } catch (error) {
      if (signal.aborted || (error instanceof Error && error.name === "AbortError")) return;
      const detail = error instanceof Error ? error.message : String(error);
      this.dispatchEvent(new CustomEvent("trouble", { detail }));
    }
  }
}

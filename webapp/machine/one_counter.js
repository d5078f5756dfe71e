/**
 * Of all tabs on one session, exactly one counts; the others follow what it tells. When it closes, the
 * next one counts. Where the browser cannot say who else is there, this tab counts: the journal lets no
 * two of them take one number.
 */
import { channel } from "../storage/channel.js";

export class OneCounter extends EventTarget {
  /** A "counting" event tells each change, a "told" event that another tab has counted. */
  counting = false;
  #name;
  /** @type {BroadcastChannel | undefined} */
  #channel;
  /** @type {() => void} gives the lock back */
  #release = () => {};
  #waiting = new AbortController();

  /** @param {string} session */
  constructor(session) {
    super();
    this.#name = nameOf(session);
    this.#channel = channel(this.#name);
    this.#channel?.addEventListener("message", () => this.dispatchEvent(new Event("told")));
  }

  /** Resolves when it is known whether this tab counts. @param {string} session */
  static async of(session) {
    const one = new OneCounter(session);
    await one.#ask({ ifAvailable: true });
    if (!one.counting) one.#queue();
    return one;
  }

  /**
   * Do something while no tab has the session on screen; whether it was done.
   * @param {string} session @param {() => Promise<void>} work
   */
  static async alone(session, work) {
    let done = false;
    await navigator.locks.request(nameOf(session), { ifAvailable: true }, async (lock) => {
      if (!lock) return;
      await work();
      done = true;
    });
    return done;
  }

  /** Count here from now on; the tab that did follows. */
  async take() {
    if (this.counting) return;
    this.#waiting.abort();
    await this.#ask({ steal: true });
  }

  /** Tell the others that something happened. */
  tell() {
    this.#channel?.postMessage(null);
  }

  /** Leave: another tab may count. */
  close() {
    this.#waiting.abort();
    this.#release();
    this.#channel?.close();
  }

  #queue() {
    this.#waiting = new AbortController();
    this.#ask({ signal: this.#waiting.signal });
  }

  /** Resolves once this tab counts, or is known not to. @param {LockOptions} options @returns {Promise<void>} */
  #ask(options) {
    return new Promise((known) => {
      let held = false;
      /** @param {Lock | null} lock @returns {Promise<void> | undefined} */
      const hold = (lock) => {
        held = Boolean(lock);
        if (held) this.#count(true);
        known();
        if (!held) return;
        return new Promise((release) => {
          this.#release = release;
        });
      };
      this.#request(options, hold).catch((error) => {
        if (held) {
          this.#count(false); // taken over by another tab
          this.#queue();
        } else if (error.name !== "AbortError") this.#count(true); // no locks in this browser
        known();
      });
    });
  }

  /** @param {LockOptions} options @param {(lock: Lock | null) => Promise<void> | undefined} hold */
  async #request(options, hold) {
    await navigator.locks.request(this.#name, options, hold);
  }

  /** @param {boolean} counting */
  #count(counting) {
    if (this.counting === counting) return;
    this.counting = counting;
    this.dispatchEvent(new Event("counting"));
  }
}

/** @param {string} session */
function nameOf(session) {
  return `heelwise.machine.${session}`;
}

/** Keeps the screen on while the counter is shown, and says where the phone does not let it. */

/** Fires "change" whenever `refused` may have changed. */
export class Awake extends EventTarget {
  refused = false;
  #wanted = false;
  /** @type {WakeLockSentinel | undefined} */
  #lock;

  constructor() {
    super();
    // The phone takes the lock away whenever the page is out of sight.
    document.addEventListener("visibilitychange", () => this.#hold());
  }

  /** @param {boolean} wanted */
  set wanted(wanted) {
    this.#wanted = wanted;
    if (wanted) this.#hold();
    else {
      this.#lock?.release();
      this.#lock = undefined;
      this.#tell(false);
    }
  }

  async #hold() {
    if (!this.#wanted || document.visibilityState !== "visible") return;
    if (this.#lock && !this.#lock.released) return;
    try {
      if (!("wakeLock" in navigator)) throw new Error("no such thing here");
      const lock = await navigator.wakeLock.request("screen");
      if (this.#wanted) this.#lock = lock;
      else lock.release();
      this.#tell(false);
    } catch {
      this.#tell(this.#wanted && document.visibilityState === "visible");
    }
  }

  /** @param {boolean} refused */
  #tell(refused) {
    if (refused === this.refused) return;
    this.refused = refused;
    this.dispatchEvent(new Event("change"));
  }
}

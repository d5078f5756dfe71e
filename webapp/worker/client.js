/**
 * The page's side of the engine: starts the worker that runs Python, sends it one call at a time,
 * and starts it anew when it falls over or falls silent.
 *
 * To the worker:   { pyodide, engine }   once: start, with these addresses
 *                  { id, text }          a call as JSON text
 * From the worker: { alive: true }       still starting, one stage further
 *                  { ready: true }       calls can come
 *                  { failed: string }    cannot start, with the technical cause
 *                  { id, text }          the answer as JSON text
 *                  { id, raised }        the engine has a fault; the worker is as good as before
 *                  { id, crashed }       Python itself broke down; the worker is of no more use
 *
 * @typedef {{ alive?: true, ready?: true, failed?: string,
 *   id?: number, text?: string, raised?: string, crashed?: string }} Report
 * @typedef {{ id: number, text: string, deadline: number, tries: number,
 *   resolve: (answer: any) => void, reject: (reason: unknown) => void }} Job
 */

const CANNOT_START =
  "The calculator could not be started. Look whether there is a network, then try again.";
const NO_ANSWER =
  "The calculator did not answer, not even after a new start. What you typed is kept; change it a little, or load the page again.";

const NO_PLAN =
  "The calculator has a fault and cannot work this out. Another number in one of the fields may get round it; what you typed is kept.";

export class Engine extends EventTarget {
  /** @type {"starting" | "ready" | "failed"} */
  state = "starting";
  /** Why the state is "failed": a sentence to show as it stands. */
  reason = "";
  /** The technical cause, for whoever mends it. */
  cause = "";

  /** @type {{ worker: string, pyodide: string, engine: string }} */
  #addresses;
  #patience;
  /** @type {Worker | undefined} */
  #worker;
  /** @type {Job[]} */
  #queue = [];
  /** @type {Job | undefined} */
  #current;
  #lastId = 0;
  #starts = 0;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #timer;

  /**
   * @param {object} options
   * @param {string} options.worker address of the worker's script
   * @param {string} options.pyodide address of Pyodide's folder
   * @param {string} options.engine address of the engine's archive
   * @param {number} [options.patience] milliseconds of silence after which a start is given up
   */
  constructor({ worker, pyodide, engine, patience = 180_000 }) {
    super();
    /** @param {string} address */
    const whole = (address) => new URL(address, document.baseURI).href;
    this.#addresses = {
      worker: whole(worker),
      pyodide: whole(pyodide),
      engine: whole(engine),
    };
    this.#patience = patience;
    this.start();
  }

  /** Start; after a failure, try again. */
  start() {
    this.#starts = 0;
    this.#spawn();
  }

  /**
   * Ask the engine. Rejects with the signal's reason when aborted, else with an Error whose message
   * can be shown.
   * @param {object} call
   * @param {{ signal?: AbortSignal, deadline?: number }} [options] deadline in milliseconds, counted
   *   from when the engine turns to this call
   * @returns {Promise<any>}
   */
  ask(call, { signal, deadline = 10_000 } = {}) {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(signal.reason);
      if (this.state === "failed") return reject(new Error(this.reason));
      /** @type {Job} */
      const job = {
        id: ++this.#lastId,
        text: JSON.stringify(call),
        deadline,
        tries: 0,
        resolve,
        reject,
      };
      signal?.addEventListener(
        "abort",
        () => {
          // One that Python works on already runs to its end; its answer is then ignored.
          this.#queue = this.#queue.filter((other) => other !== job);
          reject(signal.reason);
        },
        { once: true },
      );
      this.#queue.push(job);
      this.#next();
    });
  }

  #spawn() {
    this.#starts += 1;
    this.#worker?.terminate();
    this.#setState("starting");
    const worker = new Worker(this.#addresses.worker, { type: "module" });
    this.#worker = worker;
    worker.addEventListener("message", ({ data }) => {
      if (worker === this.#worker) this.#hear(data);
    });
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      if (worker === this.#worker) this.#fallen(event.message);
    });
    const { pyodide, engine } = this.#addresses;
    worker.postMessage({ pyodide, engine });
    this.#wait(this.#patience);
  }

  /** @param {Report} report */
  #hear({ alive, ready, failed, id, text, raised, crashed }) {
    if (alive) this.#wait(this.#patience);
    else if (ready) {
      clearTimeout(this.#timer);
      this.#starts = 0;
      this.#setState("ready");
      this.#next();
    } else if (failed !== undefined) this.#fallen(failed);
    else if (crashed !== undefined) this.#fallen(crashed);
    else if (id === this.#current?.id) {
      clearTimeout(this.#timer);
      if (raised === undefined) this.#current?.resolve(JSON.parse(/** @type {string} */ (text)));
      else {
        console.error(raised);
        this.#current?.reject(new Error(NO_PLAN));
      }
      this.#current = undefined;
      this.#next();
    }
  }

  #next() {
    if (this.state !== "ready" || this.#current) return;
    this.#current = this.#queue.shift();
    if (!this.#current) return;
    const { id, text, deadline } = this.#current;
    this.#current.tries += 1;
    this.#worker?.postMessage({ id, text });
    this.#wait(deadline);
  }

  /** @param {number} milliseconds */
  #wait(milliseconds) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#fallen("silent"), milliseconds);
  }

  /**
   * The worker is of no more use. Its call is tried once more on a new one; so is its start.
   * @param {string} cause
   */
  #fallen(cause) {
    clearTimeout(this.#timer);
    this.cause = cause;
    const job = this.#current;
    this.#current = undefined;
    if (job && job.tries < 2) this.#queue.unshift(job);
    else job?.reject(new Error(NO_ANSWER));
    if (this.#starts < 2) return this.#spawn();
    this.#worker?.terminate();
    this.#worker = undefined;
    this.reason = CANNOT_START;
    this.#setState("failed");
    for (const left of this.#queue.splice(0)) left.reject(new Error(this.reason));
  }

  /** @param {"starting" | "ready" | "failed"} state */
  #setState(state) {
    if (this.state === state) return;
    this.state = state;
    this.dispatchEvent(new Event("state"));
  }
}

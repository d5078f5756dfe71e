/**
 * The page's line to the engine: sends the calls one at a time, and starts the worker anew when it
 * falls over or falls silent.
 *
 * @import { Addresses } from "./runner.js"
 * @typedef {{ id: number, text: string, deadline: number, tries: number, signal?: AbortSignal,
 *   resolve: (answer: any) => void, reject: (reason: unknown) => void }} Job
 */

import * as say from "words/worker";
import { Runner } from "./runner.js";

const MOST_TRIES = 2; // of a call, and of a start

/** Fires "state", and "progress" with `come` and `of`, bytes, while a start waits for the line. */
export class Engine extends EventTarget {
  /** @type {"starting" | "ready" | "failed"} */
  state = "starting";
  /** Why the state is "failed": a sentence to show as it stands. */
  reason = "";

  /** @type {Addresses} */
  #addresses;
  #patience;
  /** @type {Runner | undefined} */
  #runner;
  #starts = 0;
  /** @type {Job[]} */
  #queue = [];
  /** @type {Job | undefined} */
  #current;
  #lastId = 0;

  /**
   * @param {object} options
   * @param {string} options.worker address of the worker's script
   * @param {string} options.pyodide address of Pyodide's folder
   * @param {string} options.engine address of the engine's archive
   * @param {string} options.words address of the engine's sentences
   * @param {string} [options.snapshot] address of Python's memory with the engine in it
   * @param {number} [options.patience] milliseconds of silence after which a start is given up
   * @param {boolean} [options.later] wait for `start` to be called
   */
  constructor({
    worker,
    pyodide,
    engine,
    words,
    snapshot = "",
    patience = 180_000,
    later = false,
  }) {
    super();
    /** @param {string} address */
    const whole = (address) => new URL(address, document.baseURI).href;
    this.#addresses = {
      worker: whole(worker),
      pyodide: whole(pyodide),
      engine: whole(engine),
      words: whole(words),
      snapshot: snapshot && whole(snapshot),
    };
    this.#patience = patience;
    if (!later) this.start();
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
    const text = JSON.stringify(call);
    return new Promise((resolve, reject) => {
      if (signal?.aborted) return reject(signal.reason);
      if (this.state === "failed") return reject(new Error(this.reason));
      const id = ++this.#lastId;
      this.#queue.push({ id, text, deadline, tries: 0, signal, resolve, reject });
      // One that Python works on already runs to its end; its answer is then ignored.
      signal?.addEventListener("abort", () => {
        this.#queue = this.#queue.filter((job) => job.id !== id);
        reject(signal.reason);
      });
      this.#next();
    });
  }

  #next() {
    if (this.state !== "ready" || this.#current) return;
    this.#current = this.#queue.shift();
    if (!this.#current) return;
    this.#current.tries += 1;
    const { id, text, deadline } = this.#current;
    this.#runner?.call(id, text, deadline);
  }

  #spawn() {
    this.#runner?.stop();
    this.#starts += 1;
    this.#setState("starting");
    this.#runner = new Runner(this.#addresses, this.#patience, {
      ready: () => {
        this.#starts = 0;
        this.#setState("ready");
        this.#next();
      },
      answer: (id, text, raised) => this.#settle(id, text, raised),
      progress: (come, of) =>
        this.dispatchEvent(new CustomEvent("progress", { detail: { come, of } })),
      end: (cause, gone) => this.#fallen(cause, gone),
    });
  }

  /** @param {number} id @param {string} [text] @param {string} [raised] */
  #settle(id, text, raised) {
    const job = this.#current;
    if (job?.id !== id) return;
    this.#current = undefined;
    if (text !== undefined) job.resolve(JSON.parse(text));
    else {
      console.error(raised);
      job.reject(new Error(say.fault));
    }
    this.#next();
  }

  /**
   * The worker is of no more use: start a new one, and make its call again, unless that was the
   * second time.
   * @param {string} cause @param {boolean} [gone] the line is, and another start would find none either
   */
  #fallen(cause, gone) {
    console.warn(`A new start is needed: ${cause}`);
    // Whatever it was, it is not to come back: from now on the long way, which gives the same answers.
    if (!gone) this.#addresses.snapshot = "";
    const job = this.#current;
    this.#current = undefined;
    if (job && job.tries < MOST_TRIES && !job.signal?.aborted) this.#queue.unshift(job);
    else job?.reject(new Error(say.noAnswer));
    if (this.#starts < MOST_TRIES && !gone) return this.#spawn();
    this.reason = gone
      ? say.lineGone
      : "WebAssembly" in globalThis
        ? say.notStarted
        : `${say.noWebassembly} ${say.noWebassemblyWay}`;
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

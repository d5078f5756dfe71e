/**
 * One worker that runs Python, from its start to its end. It has ended when it says so, when it
 * breaks down, or when it is silent for too long; then it is stopped for good.
 *
 * To the worker:   { pyodide, engine, words, snapshot }   once: start, with these addresses
 *                  { module }            once: Pyodide's WebAssembly, compiled, or null to do that itself
 *                  { stored: boolean }   once: whether the snapshot is on the phone
 *                  { memory }            once, if it is: the snapshot
 *                  { id, text }          a call as JSON text
 * From the worker: { alive: true }       still starting, one stage further
 *                  { ready: true }       calls can come
 *                  { come, of }          bytes of what the start waits for that came, of so many
 *                  { failed: string, gone?: boolean }  cannot start, with the technical cause; the line is gone
 *                  { id, text }          the answer as JSON text
 *                  { id, raised }        the engine has a fault; the worker is as good as before
 *                  { id, crashed }       Python itself broke down
 *
 * @typedef {{ alive?: true, come?: number, of?: number, ready?: true, failed?: string,
 *   gone?: boolean, id?: number, text?: string, raised?: string, crashed?: string }} Report
 * @typedef {{ worker: string, pyodide: string, engine: string, words: string, snapshot: string }} Addresses
 *   snapshot: "" to do without
 * @typedef {object} Listener
 * @property {() => void} ready calls can come
 * @property {(id: number, text?: string, raised?: string) => void} answer to the call with this id
 * @property {(come: number, of?: number) => void} progress of what it waits for over the line
 * @property {(cause: string, gone?: boolean) => void} end the worker is of no more use; the line is gone
 */
import { script } from "../page/trusted.js";
import { makeReady } from "./ahead.js";

export class Runner {
  #worker;
  #patience;
  #listener;
  #over = false;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #timer;

  /**
   * @param {Addresses} addresses
   * @param {number} patience milliseconds of silence after which a start is given up
   * @param {Listener} listener
   */
  constructor({ worker, ...addresses }, patience, listener) {
    this.#patience = patience;
    this.#listener = listener;
    this.#worker = new Worker(script(worker), { type: "module" });
    this.#worker.onmessage = ({ data }) => this.#hear(data);
    this.#worker.onerror = (event) => {
      event.preventDefault();
      this.#end(event.message);
    };
    this.#worker.postMessage(addresses);
    this.#wait(patience);
    /** @param {object} message @param {Transferable[]} [transfer] */
    const hand = (message, transfer = []) => this.#worker.postMessage(message, transfer);
    makeReady(addresses, hand).catch((error) => this.#end(String(error)));
  }

  /**
   * Only one call at a time, and only when ready.
   * @param {number} id
   * @param {string} text
   * @param {number} deadline milliseconds
   */
  call(id, text, deadline) {
    this.#worker.postMessage({ id, text });
    this.#wait(deadline);
  }

  /** Nothing is heard of it from now on. */
  stop() {
    this.#over = true;
    clearTimeout(this.#timer);
    this.#worker.onmessage = this.#worker.onerror = null;
    this.#worker.terminate();
  }

  /** @param {Report} report */
  #hear({ alive, come, of, ready, failed, gone, id, text, raised, crashed }) {
    if (come !== undefined) this.#listener.progress(come, of);
    if (alive || come !== undefined) return this.#wait(this.#patience);
    const cause = failed ?? crashed;
    if (cause !== undefined) return this.#end(cause, gone);
    clearTimeout(this.#timer);
    if (ready) this.#listener.ready();
    else if (id !== undefined) this.#listener.answer(id, text, raised);
  }

  /** @param {number} milliseconds */
  #wait(milliseconds) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#end("silent for too long"), milliseconds);
  }

  /** @param {string} cause @param {boolean} [gone] */
  #end(cause, gone) {
    if (this.#over) return;
    this.stop();
    this.#listener.end(cause, gone);
  }
}

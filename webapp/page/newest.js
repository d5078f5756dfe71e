/**
 * Asks the engine for the newest only: waits for a pause in the typing, and drops what a newer job
 * supersedes, so that an older answer never reaches the screen.
 * @import {Asks} from "./types"
 */
import { tied } from "./tied.js";

const PAUSE_MS = 120;

export class Newest {
  /** @type {AbortController | undefined} */
  #running;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #pause;

  /** @param {Asks} engine */
  constructor(engine) {
    this.engine = engine;
  }

  /** Whatever is under way is of no more use. */
  drop() {
    clearTimeout(this.#pause);
    this.#running?.abort();
  }

  /**
   * After a pause, do a job. Its `ask` never comes back once a newer job has taken its place.
   * @param {(ask: (call: object) => Promise<any>) => Promise<unknown>} job
   * @param {(sentence: string) => void} onTrouble
   */
  work(job, onTrouble) {
    this.drop();
    this.#running = new AbortController();
    const { signal } = this.#running;
    // While the engine starts nothing is asked; what is typed by then is worked out once it is up.
    if (this.engine.state !== "ready") return;
    this.#pause = setTimeout(async () => {
      try {
        await job(async (call) => {
          const answer = await this.engine.ask(call, { signal });
          signal.throwIfAborted();
          return tied(answer);
        });
      } catch (error) {
        if (!signal.aborted) onTrouble(error instanceof Error ? error.message : String(error));
      }
    }, PAUSE_MS);
  }
}

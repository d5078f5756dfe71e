/**
 * What her finished pairs taught, for the requests of this page: looked for once counts are shown, and
 * never for a plan that somebody sent, which has its own, or for the example.
 * @import {Machine} from "../machine/main.js"
 * @import {Draft} from "./draft.js"
 * @import {Answer, Request, Visit} from "./types"
 */
import { remembered } from "../machine/remembered.js";
import { toRequest } from "./request.js";
import { within } from "./within.js";

const FEWEST = 3; // pairs; with fewer the calculator takes none
const PAUSE_MS = 800; // nothing is typed for so long

export class Hers {
  #asked = "";
  /** @type {unknown} */
  #known;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #pause;

  /** @param {{ draft: Draft, load: () => Promise<Machine>, changed: () => void }} parts */
  constructor({ draft, load, changed }) {
    this.draft = draft;
    this.load = load;
    this.changed = changed;
    // Until they are looked for, as when she was here last.
    this.#known = sent(draft.visit) ? undefined : draft.last?.request?.knitter;
  }

  /** @param {Request} request @param {Visit | null} visit @returns {Request} */
  in(request, visit) {
    const { knitter } = sent(visit) ? toRequest(ofKnitter(visit)) : { knitter: this.#known };
    return knitter ? { ...request, knitter } : request;
  }

  /** @param {Answer} answer that is shown @param {Visit | null} visit */
  follow({ plan, request }, visit) {
    clearTimeout(this.#pause);
    const { ended } = remembered(this.draft);
    const asked = JSON.stringify([ended, request.fabric]);
    if (!plan || sent(visit) || asked === this.#asked || (ended < FEWEST && !this.#known)) return;
    this.#pause = setTimeout(async () => {
      try {
        const taught = (await (await this.load()).taught(request)) ?? undefined;
        this.#asked = asked;
        if (JSON.stringify(taught) === JSON.stringify(this.#known)) return;
        this.#known = taught;
        this.changed();
      } catch (error) {
        console.error(error); // the counts stay those of any knitter
      }
    }, PAUSE_MS);
  }
}

/** @param {Visit | null} visit */
function sent(visit) {
  return visit?.kind === "link" || visit?.kind === "demo";
}

/** @param {Visit | null} visit */
function ofKnitter(visit) {
  const { values = {} } = visit ?? {};
  return Object.fromEntries(Object.entries(values).filter(([name]) => within(name, "knitter")));
}

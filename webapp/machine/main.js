/**
 * At the machine: what the page calls. A pair is begun, gone on with, put away and brought back; the
 * counter of one is on screen or none.
 * @import {KnittedPair} from "../book/types"
 * @import {Request} from "../page/types"
 * @import {Shelf} from "./off_the_shelf.js"
 * @import {Choices} from "./settings.js"
 * @import {Kept, Knit, Session} from "./types"
 */
import { persist } from "../storage/persist.js";
import { tellOf } from "./for_wearer.js";
import { Journal } from "./journal.js";
import { drawLine, standing } from "./on_machine.js";
import { OneCounter } from "./one_counter.js";
import { fromBefore } from "./pace.js";
import { fold } from "./progress.js";
import { askRemove, askSock, askWhich } from "./questions.js";
import { remember } from "./remembered.js";
import { Settings } from "./settings.js";
import { Visit } from "./visit.js";

/**
 * @typedef {object} Host the page
 * @property {HTMLElement} place where the counter stands
 * @property {HTMLElement} line where the page says that a sock is on the machine
 * @property {(call: object) => Promise<any>} ask the calculator
 * @property {(request: object) => Record<string, string>} measured what the page has of a plan’s sock one
 * @property {Shelf} shelf
 * @property {(pair: KnittedPair) => void} knitted how far a wearer’s pair is now
 * @property {() => void} leave go back to the page
 * @property {(id: string) => void} enter put the counter on screen
 */

/**
 * @typedef {object} Wanted
 * @property {Request} request
 * @property {Knit} knit
 * @property {Knit} [two] sock two's own counts, where sock one is off already
 * @property {string} [wearer] whom of the book it is for
 * @property {string} [who] their label
 */

export class Machine {
  /** @type {Visit | null} */
  #visit = null;

  /** @param {Host} host @param {Journal} journal */
  constructor(host, journal) {
    this.host = host;
    this.journal = journal;
    this.settings = new Settings();
  }

  /** @param {Host} host */
  static async open(host) {
    return new Machine(host, await Journal.open());
  }

  /**
   * Begin a pair, or go on with one that is begun; returns its id, null where she thought better of it.
   * @param {Wanted} wanted
   */
  async begin(wanted) {
    const begun = await this.unfinished();
    const on = begun.findLast(({ session }) => session.wearer === wanted.wearer) ?? begun.at(-1);
    const answer = on ? await askWhich(on, wanted.wearer) : "new";
    if (on && answer === "on") return on.session.id;
    if (answer !== "new") return null;
    const sock = wanted.two ? await askSock() : 0;
    if (sock === null) return null;
    return this.#begin(sock ? wanted : { ...wanted, two: undefined });
  }

  /** @param {Wanted} wanted */
  async #begin({ request, knit, two, wearer, who }) {
    const before = await this.#all();
    /** @type {Session} */
    const session = {
      id: `${Date.now().toString(36)}-${crypto.getRandomValues(new Uint32Array(1))[0].toString(36)}`,
      began: Date.now(),
      label: (two ?? knit).words,
      wearer,
      who,
      request,
      socks: [knit, two ?? knit],
      earlier: fromBefore(before),
    };
    await this.journal.begin(session);
    if (two) {
      const [number, took, at] = [1, null, Date.now()];
      await this.journal.append({ session: session.id, number, sock: 1, kind: "turn", took, at });
    }
    persist();
    await this.#remember();
    return session.id;
  }

  /** Show a pair's counter. @param {string | null} id null: the one begun last @returns {Promise<boolean>} whether it is there */
  async resume(id) {
    const kept = (id && (await this.journal.read(id))) || (await this.unfinished()).at(-1);
    if (!kept) return false;
    this.hide();
    const { place, ask, measured, shelf, leave } = this.host;
    const { journal, settings } = this;
    const one = await OneCounter.of(kept.session.id);
    this.#visit = new Visit(kept, { place, journal, one, settings, ask, measured, shelf, leave });
    this.#visit.show();
    tellOf(this.#visit.counter, this.host.knitted);
    remember({ shown: kept.session.id });
    performance.mark("at the machine"); // what is tapped from now on counts
    return true;
  }

  /** @param {string} wearer @param {string} who what they are called now */
  async rename(wearer, who) {
    for (const { session } of await this.#of(wearer))
      await this.journal.update({ ...session, who });
  }

  /** Of a wearer who is deleted nothing stays but what is still needed to knit their pair to its end. @param {string} wearer */
  async forget(wearer) {
    for (const { session, happenings } of await this.#of(wearer)) {
      const { who, request, ...rest } = session;
      const over = fold(session, happenings).ended[1];
      await this.journal.update({ ...rest, request: over ? { units: request.units } : request });
    }
  }

  /** @param {string} wearer */
  async #of(wearer) {
    const all = [...(await this.#all()), ...(await this.#read(await this.journal.discarded()))];
    return all.filter(({ session }) => session.wearer === wearer);
  }

  hide() {
    this.#visit?.hide();
    this.#visit = null;
  }

  /** Pairs begun, not ended and not put away, the one begun last at the end. @returns {Promise<Kept[]>} */
  async unfinished() {
    return (await this.#all()).filter(({ session, happenings }) => {
      const { ended } = fold(session, happenings);
      return !ended[1];
    });
  }

  /** Draw the line on the page. @param {boolean} [shown] with those put away */
  async line(shown = false) {
    const unfinished = await this.unfinished();
    const away = await this.#read(await this.journal.discarded());
    drawLine(
      this.host.line,
      { unfinished, away, aside: this.journal.aside },
      {
        enter: (id) => this.host.enter(id),
        putAway: async (id) => {
          await this.journal.discard(id);
          await this.#remember();
          await this.line(true);
        },
        bringBack: async (id) => {
          await this.journal.restore(id);
          await this.#remember();
          await this.line();
        },
        remove: async (id) => {
          if (!(await askRemove())) return;
          await this.journal.remove(id);
          await this.#remember();
          await this.line();
        },
        drop: async (one) => {
          await this.journal.drop(one);
          await this.#remember();
          await this.line();
        },
      },
      shown,
    );
  }

  /** All that a copy of the phone holds of the machine. */
  async copy() {
    return { ...(await this.journal.copy()), settings: this.settings.changed };
  }

  /** False while something is not on the phone. */
  get kept() {
    return this.journal.kept;
  }

  /** A pair from a copy. @param {Kept} kept @param {boolean} instead of the one that is here */
  take(kept, instead) {
    return this.journal.take(kept, instead);
  }

  /** All of a copy is taken in. */
  async taken() {
    await this.#remember();
    await this.line();
  }

  /** @param {Partial<Choices>} settings from a copy */
  set(settings) {
    this.settings.take(settings);
  }

  /** Where a pair stands, in words. @param {Kept} kept */
  standing(kept) {
    return standing(kept);
  }

  async #remember() {
    const away = await this.journal.discarded();
    const unfinished = await this.unfinished();
    remember({ unfinished: unfinished.length + away.length + this.journal.aside.length });
  }

  async #all() {
    return this.#read(await this.journal.sessions());
  }

  /** @param {Session[]} sessions @returns {Promise<Kept[]>} */
  async #read(sessions) {
    const all = await Promise.all(sessions.map(({ id }) => this.journal.read(id)));
    return all.filter((kept) => kept !== undefined);
  }
}

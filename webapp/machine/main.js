/**
 * At the machine: what the page calls. A pair is begun, gone on with, put away and brought back; the
 * counter of one is on screen or none.
 * @import {KnittedPair} from "../book/types"
 * @import {Request} from "../page/types"
 * @import {Shelf} from "./off_the_shelf.js"
 * @import {Choices} from "./settings.js"
 * @import {Ended, FirstSock, Kept, Knit, MeasuredPair, Pace, Session} from "./types"
 */
import { persist } from "../storage/persist.js";
import { endedFrom, over, withoutWearer } from "./ended.js";
import { tellOf, tellSockOne } from "./for_wearer.js";
import { Journal } from "./journal.js";
import { KnittedList } from "./knitted_list.js";
import { drawLine, standing } from "./on_machine.js";
import { OneCounter } from "./one_counter.js";
import { fromBefore, learned, paceOf, tookOf } from "./pace.js";
import { fold } from "./progress.js";
import { askRemove, askSock, askWhich } from "./questions.js";
import { remember, remembered } from "./remembered.js";
import { Settings } from "./settings.js";
import { read, show } from "./take_care.js";
import { taught } from "./taught.js";
import { Visit } from "./visit.js";

/**
 * @typedef {object} Host the page
 * @property {HTMLElement} place where the counter stands
 * @property {HTMLElement} line where the page says that a sock is on the machine
 * @property {HTMLElement} knitted where it lists the pairs that are knitted
 * @property {(call: object) => Promise<any>} ask the calculator
 * @property {(request: object) => Record<string, string>} measured what the page has of a plan’s sock one
 * @property {Shelf} shelf
 * @property {(pair: KnittedPair) => void} reached how far a wearer’s pair is now
 * @property {(pair: MeasuredPair) => void} sockOne its sock one was measured
 * @property {import("../storage/kept.js").Kept} kept what is chosen and begun
 * @property {() => void} leave go back to the page
 * @property {(id: string) => void} enter put the counter on screen
 */

/**
 * @typedef {object} Wanted
 * @property {Request} request
 * @property {Knit} knit
 * @property {Knit} [two] sock two's own counts, where sock one is off already
 * @property {FirstSock} [measured] what of sock one gave them
 * @property {string} [wearer] whom of the book it is for
 * @property {string} [who] their label
 * @property {string[]} cautions those of any plan
 */

export class Machine {
  /** @type {Visit | null} */
  #visit = null;
  /** What `forget` took of a wearer's pairs, as long as the page is open: they may be brought back. */
  #forgotten = new Map();

  /** @param {Host} host @param {Journal} journal */
  constructor(host, journal) {
    this.host = host;
    this.journal = journal;
    this.settings = new Settings(host.kept);
    this.list = new KnittedList(host.knitted, journal.ended, () => this.#remember(), host.ask);
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
    if (!(await read(wanted.cautions, this.host.kept))) return null;
    const all = await this.#underWay();
    const known = begun(all);
    const on = known.findLast(({ session }) => session.wearer === wanted.wearer) ?? known.at(-1);
    const answer = on ? await askWhich(on, wanted.wearer) : "new";
    if (on && answer === "on") return on.session.id;
    if (answer !== "new") return null;
    const sock = wanted.two ? await askSock() : 0;
    if (sock === null) return null;
    const earlier = await this.#earlier(all.filter(({ session }) => !session.away));
    return this.#begin(sock ? wanted : { ...wanted, two: undefined, measured: undefined }, earlier);
  }

  /** @param {Wanted} wanted @param {Pace} earlier */
  async #begin({ request, knit: answer, two, measured, wearer, who, cautions }, earlier) {
    // In a string sock two begins and ends otherwise than sock one.
    const { second, ...knit } = answer;
    /** @type {Session} */
    const session = {
      id: `${Date.now().toString(36)}-${crypto.getRandomValues(new Uint32Array(1))[0].toString(36)}`,
      began: Date.now(),
      label: (two ?? knit).words,
      wearer,
      who,
      request,
      socks: [knit, two ?? (second ? { ...knit, steps: second } : knit)],
      earlier,
      cautions,
      ...(measured ? { measured } : {}),
    };
    await this.journal.begin(session);
    if (two) {
      const [number, took, at] = [1, null, Date.now()];
      await this.journal.append({ session: session.id, number, sock: 1, kind: "turn", took, at });
    }
    persist();
    const { kept } = this.host;
    remember(kept, { unfinished: remembered(kept).unfinished + 1 });
    return session.id;
  }

  /** How long a round took before: each pair knows what those before it took. @param {Kept[]} under way */
  async #earlier(under) {
    const newest = await this.journal.ended.newest().catch(() => undefined);
    const all = under.map((kept) => ({ began: kept.session.began, pace: learned(kept) }));
    if (newest) all.push({ began: newest.began, pace: paceOf(newest) });
    return fromBefore(all.sort((a, b) => a.began - b.began).map(({ pace }) => pace));
  }

  /** What to take care of, again. @param {string[]} cautions */
  care(cautions) {
    show(cautions);
  }

  /**
   * Show a pair's counter.
   * @param {string | null} id null: the one begun last
   * @returns {Promise<{ shown?: string, knitted?: boolean }>} the one that is shown; `knitted`: none, as it no
   *   longer is under way
   */
  async resume(id) {
    const asked = id ? await this.journal.read(id) : undefined;
    if (id && !asked && (await this.journal.ended.has(id).catch(() => false)))
      return { knitted: true };
    const kept = asked ?? (await this.unfinished()).at(-1);
    if (!kept) return {};
    this.hide();
    const { place, ask, measured, shelf, leave, kept: typed } = this.host;
    const { journal, settings } = this;
    const one = await OneCounter.of(kept.session.id);
    const parts = { place, journal, one, settings, typed, ask, measured, shelf, leave };
    this.#visit = new Visit(kept, parts);
    this.#visit.show();
    tellOf(this.#visit.counter, this.host.reached);
    tellSockOne(this.#visit.counter, this.host.kept, this.host.sockOne);
    performance.mark("at the machine"); // what is tapped from now on counts
    return { shown: kept.session.id };
  }

  /** @param {string} wearer @param {string} who what they are called now */
  async rename(wearer, who) {
    const { pairs, ended } = await this.#of(wearer);
    for (const { session } of pairs)
      await this.journal.update({ ...(this.#forgotten.get(session.id) ?? session), who });
    await this.journal.ended.put(
      ended.map((one) => ({ ...(this.#forgotten.get(one.id) ?? one), who })),
    );
  }

  /** Of a wearer who is deleted nothing stays but what is still needed to knit their pair to its end. @param {string} wearer */
  async forget(wearer) {
    const { pairs, ended } = await this.#of(wearer);
    for (const { session, happenings } of pairs) {
      this.#forgotten.set(session.id, session);
      const { who, request, ...rest } = session;
      const done = over(fold(session, happenings));
      await this.journal.update({ ...rest, request: done ? { units: request.units } : request });
    }
    for (const one of ended) this.#forgotten.set(one.id, one);
    await this.journal.ended.put(ended.map(withoutWearer));
  }

  /** @param {string} wearer */
  async #of(wearer) {
    const all = await this.#underWay();
    const ended = await this.journal.ended.all();
    return {
      pairs: all.filter(({ session }) => session.wearer === wearer),
      ended: ended.filter((one) => one.wearer === wearer),
    };
  }

  /** Seconds that a wearer's knitted pairs took, by their ids. @param {string} wearer @returns {Promise<Map<string, number>>} */
  async took(wearer) {
    const all = await this.journal.ended.all();
    return new Map(all.filter((one) => one.wearer === wearer).map((one) => [one.id, tookOf(one)]));
  }

  hide() {
    this.#visit?.hide();
    this.#visit = null;
  }

  /** Pairs begun, not ended and not put away, the one begun last at the end. @returns {Promise<Kept[]>} */
  async unfinished() {
    return begun(await this.#underWay());
  }

  /** Draw the line on the page. @param {boolean} [shown] with those put away */
  async line(shown = false) {
    const all = await this.#underWay();
    const unfinished = begun(all);
    const away = all.filter(({ session }) => session.away);
    await this.list.draw();
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

  /** All that a copy of the phone holds of the machine; `aside`: so much cannot be read and is not in it. */
  async copy() {
    await this.#underWay();
    const kept = await this.journal.copy();
    return { ...kept, settings: this.settings.changed, aside: this.journal.aside.length };
  }

  /** False while something is not on the phone. */
  get kept() {
    return this.journal.kept;
  }

  /** A pair from a copy. @param {Kept} kept @param {boolean} instead of the one that is here */
  take(kept, instead) {
    return this.journal.take(kept, instead);
  }

  /**
   * One that is knitted; rejects where the one that is here has gone further, or the phone does not do it.
   * @param {Ended} ended
   */
  takeEnded(ended) {
    return this.journal.end(ended);
  }

  /** One that was deleted elsewhere. @param {string} id @param {number} at by the phone's clock, in ms */
  remove(id, at) {
    return this.journal.remove(id, at);
  }

  /** What a pair leaves once it is knitted; null while it is under way. @param {Kept} kept */
  asEnded(kept) {
    return endedFrom(kept);
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

  /** What the newest pairs taught of her, for a plan; null where they are too few. @param {Request} request */
  async taught(request) {
    return taught(await this.journal.ended.all(), request, this.host.ask);
  }

  async #remember() {
    const all = await this.#underWay();
    const away = all.filter(({ session }) => session.away);
    const ended = await this.journal.ended.count().catch(() => 0);
    const unfinished = begun(all).length + away.length + this.journal.aside.length;
    remember(this.host.kept, { unfinished, ended });
  }

  /**
   * All that are not knitted, those put away too. What is knitted and on no screen gives way to what is
   * learnt from it; where the phone does not do it now, it is among these and its turn comes again.
   * @returns {Promise<Kept[]>}
   */
  async #underWay() {
    /** @type {Kept[]} */
    const left = [];
    for (const { id } of await this.journal.every()) {
      const kept = await this.journal.read(id);
      if (kept && !(await this.#end(kept))) left.push(kept);
    }
    return left;
  }

  /** @param {Kept} kept @returns {Promise<boolean>} whether it gave way */
  async #end(kept) {
    const ended = endedFrom(kept);
    if (!ended || !this.journal.kept) return false;
    try {
      // Where it is on a screen, of this tab or another, it can still be counted on.
      return await OneCounter.alone(ended.id, () => this.journal.end(ended));
    } catch {
      return false;
    }
  }
}

/** Those to go on with: neither put away nor knitted. @param {Kept[]} all */
function begun(all) {
  return all.filter(({ session, happenings }) => !session.away && !over(fold(session, happenings)));
}

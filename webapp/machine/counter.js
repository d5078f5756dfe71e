/**
 * The one who counts: takes what comes in, one after the other, has it written to the phone, and only
 * then stands at the new place. Nothing that comes in is lost; what cannot be counted is told.
 * @import {FirstSock, Happening, Kept, Place, Sock, State, Knit, View} from "./types"
 * @import {Journal} from "./journal.js"
 */
import { note } from "../storage/uncopied.js";
import { NumberTaken } from "./journal.js";
import { after, apply, fold, view } from "./progress.js";

/** @typedef {Partial<Happening> & { kind: Happening["kind"] }} Facts */

/**
 * Fires "change" (detail: { kind, before: Place, sock } of what has happened, or null where another tab
 * counted), "moving" when the place is about to be another than the next, and "refused" where this tab
 * does not count.
 */
export class Counter extends EventTarget {
  /** @type {State} */
  state;
  /** @type {Happening[]} */
  happenings;
  /** @type {Promise<void>} */
  #queue = Promise.resolve();
  /** @type {number | null} */
  #before = null;

  /**
   * @param {Kept} kept @param {Journal} journal
   * @param {{ counting: boolean, tell: () => void }} one whether this tab counts; tells the others
   */
  constructor({ session, happenings }, journal, one) {
    super();
    this.session = session;
    this.journal = journal;
    this.one = one;
    this.happenings = happenings;
    this.state = fold(session, happenings);
  }

  /** @returns {Knit} of the sock on the machine */
  get knit() {
    return this.state.socks[this.state.sock];
  }

  /** @returns {Place} */
  get place() {
    return this.state.places[this.state.sock];
  }

  /** @returns {View} */
  get view() {
    return view(this.knit, this.place);
  }

  /** One round, row or thing done. @param {number} [when] of the trigger, by performance.now */
  count(when) {
    return this.#happen(
      () => (this.view.ended ? null : { kind: "done", place: after(this.knit, this.place) }),
      when,
    );
  }

  takeBack() {
    this.#tell("moving", null);
    return this.#happen(() => {
      const place = this.state.undo.at(-1);
      return place ? { kind: "back", place } : null;
    });
  }

  /** @param {Sock} sock @param {Place} place */
  async go(sock, place) {
    this.#tell("moving", null);
    if (sock !== this.state.sock) await this.turn(sock);
    return this.#happen(() => ({ kind: "jump", place }));
  }

  /** @param {string} text */
  note(text) {
    return this.#happen(() => ({ kind: "note", text }));
  }

  /** What the sock took is off the shelf, or back on it. @param {string} text "" once it is back */
  yarn(text) {
    return this.#happen(() => ({ kind: "yarn", text }));
  }

  /** Now this sock is on the machine. @param {Sock} sock */
  turn(sock) {
    return this.#happen(() => ({ kind: "turn", sock }));
  }

  /**
   * Sock two gets counts of its own.
   * @param {Knit} knit @param {FirstSock} measured what of sock one gave them
   * @param {(state: State) => Place} place where it then stands
   */
  replan(knit, measured, place) {
    return this.#happen(() => ({
      kind: "plan",
      sock: 1,
      knit,
      measured,
      place: place(this.state),
    }));
  }

  /** Another tab has counted. */
  follow() {
    return this.#enqueue(async () => {
      await this.#read();
      this.#tell("change", null);
    });
  }

  /** @param {() => Facts | null} make from the state as it is when its turn comes @param {number} [when] */
  #happen(make, when = performance.now()) {
    return this.#enqueue(async () => {
      if (!this.one.counting) return this.#tell("refused", null);
      for (;;) {
        const facts = make();
        if (!facts) return;
        /** @type {Happening} */
        const happening = {
          session: this.session.id,
          number: this.state.last + 1,
          sock: this.state.sock,
          ...facts,
          took: this.#before === null ? null : Math.max(0, Math.round(when - this.#before)),
          at: Date.now(),
        };
        try {
          await this.journal.append(happening);
          note("pair", happening.session);
        } catch (error) {
          // Its number is another tab's: what it counted comes first, then this.
          if (error instanceof NumberTaken && (await this.#read())) continue;
          throw error;
        }
        this.#before = when;
        const before = this.place;
        this.happenings.push(happening);
        this.state = apply(this.state, happening);
        this.#tell("change", { kind: happening.kind, before, sock: happening.sock });
        this.one.tell();
        return;
      }
    });
  }

  /** @returns {Promise<boolean>} whether there was anything to read */
  async #read() {
    const kept = await this.journal.read(this.session.id);
    if (!kept) return false;
    this.happenings = kept.happenings;
    this.state = fold(this.session, kept.happenings);
    this.#before = null;
    return true;
  }

  /** @param {() => Promise<void>} job */
  #enqueue(job) {
    const done = this.#queue.then(job);
    this.#queue = done.catch((error) => console.error(error));
    return done;
  }

  /** @param {string} event @param {unknown} detail */
  #tell(event, detail) {
    this.dispatchEvent(new CustomEvent(event, { detail }));
  }
}

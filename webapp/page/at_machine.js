/**
 * The way to the machine: the counter is loaded when a sock is to be knitted, when its address is named,
 * or when it was on screen as the page was last closed; it then comes before and without the calculator.
 * @import {KnittedPair} from "../book/types"
 * @import {Machine} from "../machine/main.js"
 * @import {MeasuredPair} from "../machine/types"
 * @import {Draft} from "./draft.js"
 * @import {Asks, Request} from "./types"
 * @import {ShelfScreen} from "../behind/shelf.js"
 * @import {StepsNav} from "./steps_nav.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { remember, remembered } from "../machine/remembered.js";
import { anyPair } from "../storage/any_pair.js";
import { bundle } from "./bundle.js";
import { KnitIt } from "./knit_it.js";
import { toRequest } from "./request.js";
import { isShown } from "./seen.js";
import { isLink } from "./steps_nav.js";
import { nameScreen } from "./title.js";

const HASH = "#knit";
const PAUSE_MS = 500; // a label is still being typed
const SILENT = `${say.counterSilent} ${say.counterSilentWay}`;

/**
 * Fires "knitted" (detail: a wearer's pair) when a pair comes further, "sock one" (detail: MeasuredPair) once
 * that was measured, and "left" when the counter is left.
 */
export class AtMachine extends EventTarget {
  /** @type {Promise<Machine> | undefined} */
  #machine;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #pause;
  /** The id of the button that led to the counter. */
  #from = "";
  /** False where the counter could not be shown, but may be once the page is loaded again. */
  #sure = true;
  #told = /** @type {HTMLElement} */ (document.getElementById("machine-trouble"));
  #place = /** @type {HTMLElement} */ (document.getElementById("machine"));

  /** @param {{ engine: Asks, nav: StepsNav, draft: Draft, shelf: () => Promise<ShelfScreen> }} parts */
  constructor({ engine, nav, draft, shelf }) {
    super();
    this.draft = draft;
    this.engine = engine;
    this.nav = nav;
    this.shelf = shelf;
    this.knitIt = new KnitIt({
      engine,
      load: () => this.load(),
      enter: (id) => this.enter(id, "knit-it"),
      trouble: (sentence) => this.#trouble(sentence),
    });
    addEventListener("popstate", () => this.#follow());
  }

  /**
   * Before anything else of the page: the counter may be wanted at once.
   * @returns {Promise<void> | undefined} kept when it is there; none where it is not wanted
   */
  start() {
    const { shown, step, unfinished } = remembered(this.draft);
    // Loaded only where they can be seen.
    this.nav.addEventListener("step", () => this.#knitted());
    const named = location.hash === HASH;
    // Loaded anew, what she came from lies behind it already.
    if (named && (history.state || !shown)) return this.#show(shown);
    if (shown && !isLink(location.hash)) {
      // Leaving leads to the counts that are knitted, or wherever else she came from.
      if (named || !location.hash) this.nav.begin(step);
      this.#leftSince(shown);
      return this.enter(shown);
    }
    this.#shownSince();
    if (unfinished) this.#lineSoon();
    else this.#late();
  }

  /** The pairs that are knitted stand in step 3. */
  #knitted() {
    const { ended } = remembered(this.draft);
    if (this.nav.step === "counts" && !this.#machine && ended) this.#line();
  }

  /** Killed, a browser may have its local storage as it was before the counter was left. @param {string} id */
  async #leftSince(id) {
    const touched = await this.#untilAnswered();
    if (remembered(this.draft).shown) return;
    if (touched) remember(this.draft, { shown: id });
    else if (location.hash === HASH) this.#leave();
  }

  /** Resolves once the database has answered, however late, to whether anything was touched till then. */
  async #untilAnswered() {
    let touched = false;
    for (const kind of ["pointerdown", "keydown"]) {
      addEventListener(kind, () => (touched = true), { once: true, capture: true });
    }
    await this.draft.answered;
    return touched;
  }

  /** The database may know of a pair that local storage has not yet, or has no more. */
  async #late() {
    await this.draft.ready;
    const { shown, unfinished } = remembered(this.draft);
    if (shown || unfinished || (await anyPair())) this.#lineSoon();
    else this.#soon(() => this.#knitted());
  }

  /** Killed, a browser may have its local storage as it was before the counter was on screen. */
  async #shownSince() {
    const touched = await this.#untilAnswered();
    const { shown, step, unfinished } = remembered(this.draft);
    const { hash } = location;
    if (shown && !touched && !isLink(hash) && hash !== "#book") {
      if (!hash) this.nav.begin(step);
      return this.enter(shown);
    }
    if (unfinished) this.#lineSoon();
  }

  /** Once nothing that is looked at waits for it. */
  #lineSoon() {
    this.#soon(() => this.#line());
  }

  /** @param {() => void} act */
  #soon(act) {
    const soon = () => setTimeout(act, 500);
    if (document.readyState === "complete") soon();
    else addEventListener("load", soon);
  }

  /** A wearer is called otherwise now. @param {string} wearer @param {string} label */
  rename(wearer, label) {
    clearTimeout(this.#pause);
    this.#pause = setTimeout(
      () => this.#named((machine) => machine.rename(wearer, label)),
      PAUSE_MS,
    );
  }

  /** A wearer is deleted: no pair tells whose it is. @param {string} wearer */
  forget(wearer) {
    clearTimeout(this.#pause);
    this.#named((machine) => machine.forget(wearer));
  }

  /** @param {(machine: Machine) => Promise<void>} change */
  async #named(change) {
    try {
      const machine = await this.load();
      await change(machine);
      await machine.line();
    } catch (error) {
      console.error(error);
    }
  }

  /** @param {string} id @param {string} [from] the id of the button that leads there */
  async enter(id, from = `go-on-${id}`) {
    await this.nav.dialogs.after(() => {
      const { step } = this.nav;
      remember(this.draft, { step });
      this.#from = from;
      history.pushState({ step, pushed: true }, "", HASH);
      return this.#show(id);
    });
  }

  #leave() {
    this.nav.dialogs.after(() => {
      if (history.state?.pushed) return history.back();
      this.nav.settle();
      this.#follow();
    });
  }

  /** The address has changed. */
  #follow() {
    if (location.hash === HASH) this.#show(remembered(this.draft).shown);
    else if (!this.#place.hidden) this.#hide();
  }

  async #hide() {
    const { dataset } = document.documentElement;
    if (dataset.at === "machine") delete dataset.at;
    this.#place.hidden = true;
    nameScreen();
    this.#focus();
    if (this.#sure) remember(this.draft, { shown: null });
    (await this.#machine)?.hide();
    this.dispatchEvent(new Event("left"));
    await this.#line();
    if (document.activeElement === document.body) this.#focus(); // what led there went with its line
  }

  /** Back to what led to the counter, or to what is on screen now; in the book, that does it itself. */
  #focus() {
    if (document.documentElement.dataset.at || location.hash === "#book") return;
    const from = document.getElementById(this.#from);
    const place = from && isShown(from) ? from : document.getElementById(`${this.nav.step}-title`);
    place?.focus();
  }

  /** @param {string | null} id */
  async #show(id) {
    this.#sure = true;
    this.#trouble("");
    document.documentElement.dataset.at = "machine";
    this.#place.hidden = false;
    nameScreen();
    try {
      const machine = await this.load();
      if (location.hash !== HASH) return;
      const { shown, knitted } = await machine.resume(id);
      if (location.hash !== HASH) return machine.hide(); // left meanwhile, and it stays left
      if (shown) return remember(this.draft, { shown });
      this.#sure = machine.journal.kept;
      const none = id || remembered(this.draft).unfinished ? say.counterGone : say.counterNone;
      this.#trouble(knitted ? say.pairIsKnitted : this.#sure ? none : SILENT);
    } catch (error) {
      console.error(error);
      this.#sure = false;
      this.#trouble(say.counterNotLoaded);
    }
    this.#leave();
  }

  async #line() {
    try {
      await (await this.load()).line();
    } catch (error) {
      console.error(error); // the line is missing then, and nothing else
    }
  }

  /** @param {string} sentence "" when it is over */
  #trouble(sentence) {
    const line = html`<div class="line trouble" role="alert"><p>${sentence}</p></div>`;
    render(sentence ? line : nothing, this.#told);
  }

  /** The pairs on the machine, by their wearer. @returns {Promise<Map<string, { session: string, words: string }>>} */
  async ofWearers() {
    if (!remembered(this.draft).unfinished) return new Map();
    const machine = await this.load();
    const all = await machine.unfinished();
    return new Map(
      all.map((kept) => {
        const { id, wearer = "" } = kept.session;
        return [wearer, { session: id, words: machine.standing(kept) }];
      }),
    );
  }

  /** Seconds that a wearer's knitted pairs took. @param {string} wearer */
  async took(wearer) {
    return remembered(this.draft).ended ? (await this.load()).took(wearer) : new Map();
  }

  /** @returns {Promise<Machine>} */
  load() {
    this.#machine ??= this.#open().catch((error) => {
      this.#machine = undefined; // asked again, it may come
      throw error;
    });
    return this.#machine;
  }

  async #open() {
    const { machine = "", machineStyle = "" } = document.documentElement.dataset;
    const { Machine } = await bundle(machine, machineStyle);
    return Machine.open({
      place: this.#place,
      line: document.getElementById("machine-line"),
      knitted: document.getElementById("knitted-place"),
      kept: this.draft,
      ask: (/** @type {object} */ call) => this.engine.ask(call),
      measured: (/** @type {Request} */ request) => this.knitIt.measured(request),
      shelf: {
        weighed: () =>
          Object.entries(this.draft.shelf ?? {}).some(
            ([name, text]) => name.endsWith(".left") && text.trim(),
          ),
        used: (/** @type {object} */ request) => {
          const { shelf = {} } = toRequest(this.draft.shelf ?? {});
          return this.engine.ask({ do: "used", request, shelf });
        },
        put: async (/** @type {number} */ row, /** @type {string} */ left) =>
          (await this.shelf()).put(row, left),
      },
      reached: (/** @type {KnittedPair} */ detail) =>
        this.dispatchEvent(new CustomEvent("knitted", { detail })),
      sockOne: (/** @type {MeasuredPair} */ detail) =>
        this.dispatchEvent(new CustomEvent("sock one", { detail })),
      leave: () => this.#leave(),
      enter: (/** @type {string} */ id) => this.enter(id),
    });
  }
}

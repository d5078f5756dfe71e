/**
 * The way to the book of wearers, a place of its own under the address #book: it is loaded when it is
 * opened, or when a wearer's sheet is typed on. What is typed waits in the draft until the book has it.
 * @import {Answer, Asks, Values, Visit} from "./types"
 * @import {AtMachine} from "./at_machine.js"
 * @import {Draft} from "./draft.js"
 * @import {Form} from "./form.js"
 * @import {Sheets} from "./sheets.js"
 * @import {StepsNav} from "./steps_nav.js"
 * @import {Book} from "../book/main.js"
 * @import {Host, KnittedPair, Plan, View} from "../book/types"
 * @import {SheetName} from "../copies/types"
 */
import { html, render } from "lit-html";
import * as say from "words/page";
import { bundle } from "./bundle.js";
import { toRequest, toValues, withUsual } from "./request.js";
import { only } from "./stays.js";
import { nameScreen } from "./title.js";
import { paper } from "./to_paper.js";
import { withItsUnit } from "./units_beside.js";

const HASH = "#book";
const PAUSE_MS = 400;
const NOT_LOADED = html`<div class="line trouble" role="alert"><p>${say.bookNotOpened}</p></div>`;

export class ToBook {
  /** @type {Promise<Book> | undefined} */
  #book;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #pause;
  /** A copy that came from outside the page, until it is taken in. @type {{ file: File | null } | undefined} */
  #came;
  /** @type {Plan | undefined} what is on the table, counted */
  #plan;
  #place = /** @type {HTMLElement} */ (document.getElementById("book"));

  /**
   * @param {{ engine: Asks, nav: StepsNav, draft: Draft, sheets: Sheets, form: Form, atMachine: AtMachine,
   *   measuringSheet: () => void, take: Record<SheetName, (values: Values) => void> }} parts `take`: what a copy brings
   */
  constructor({ engine, nav, draft, sheets, form, atMachine, measuringSheet, take }) {
    this.measuringSheet = measuringSheet;
    this.engine = engine;
    this.atMachine = atMachine;
    this.nav = nav;
    this.take = take;
    this.draft = draft;
    this.sheets = sheets;
    this.form = form;
    document.addEventListener("click", (event) => {
      const to = event.target instanceof Element && event.target.closest("[data-book]");
      if (!to) return;
      event.preventDefault();
      const name = /** @type {HTMLElement} */ (to).dataset.book;
      if (name === "close") return this.nav.go(this.nav.step);
      if (name === "keep") this.#go({ name: "new", keep: true });
      else this.#go({ name: name === "new" || name === "copies" ? name : "list" });
    });
    nav.addEventListener("step", () => {
      this.#follow();
      this.#planned();
    });
    this.#follow();
    atMachine.addEventListener("knitted", (event) => {
      const pair = /** @type {KnittedPair} */ (/** @type {CustomEvent} */ (event).detail);
      draft.keepPair(pair.wearer, pair);
      this.#soon();
    });
    atMachine.addEventListener("left", () => this.#soon());
    draft.addEventListener("change", () => this.#soon());
    this.#soon();
  }

  /** A copy came from outside the page. @param {File | null} file null where it could not be read */
  takeCopy(file) {
    this.#came = { file };
    if (document.documentElement.dataset.at !== "machine") return this.#go({ name: "copies" });
    // The counter is left as by a link.
    const then = () => this.#go({ name: "copies" }, { replace: true });
    addEventListener("popstate", then, { once: true });
    location.hash = HASH;
  }

  /** What is typed on a wearer's sheet. @param {Visit | null} visit */
  keep(visit) {
    if (visit?.kind !== "wearer") return;
    const { id = "", label = "", number, values, changed } = visit;
    this.#plan = undefined; // that of what was typed before
    this.draft.keepFor(id, { label, number, values, changed });
    this.#soon();
  }

  /** @param {Answer} answer to what is on the table */
  follow({ counted, request, guessed }) {
    // With sock one measured these are the counts of sock two alone; a cylinder is nobody's guess.
    const whole = counted && !request.first_sock && !guessed?.includes("cylinder");
    this.#plan = whole ? { at: Date.now(), values: toValues(request), counted } : undefined;
    this.#planned();
  }

  /** A wearer whose counts are looked at is planned. */
  async #planned() {
    const { kind, id = "" } = this.sheets.visit ?? {};
    const plan = this.#plan;
    if (kind !== "wearer" || !plan || this.nav.step !== "counts") return;
    const book = await this.#load().catch(() => null);
    book?.wearers.planned(id, plan);
  }

  #soon() {
    clearTimeout(this.#pause);
    this.#pause = setTimeout(() => this.#write(), PAUSE_MS);
  }

  async #write() {
    const { draft } = this;
    if (!Object.keys({ ...draft.unkept, ...draft.knitted }).length) return;
    if (document.documentElement.dataset.at === "machine") return; // while she counts nothing else is done
    const book = await this.#load().catch(() => null); // what waits, waits for the next visit
    for (const [id, sheet] of Object.entries(book ? draft.unkept : {})) {
      const kept = await book?.keepSheet(id, sheet.label, sheet);
      // Typed on meanwhile: its own turn comes.
      if (kept && same(draft.unkept[id], sheet)) draft.keepFor(id, null);
    }
    for (const [id, pair] of Object.entries(book ? draft.knitted : {})) {
      const kept = await book?.keepPair(pair);
      if (kept && same(draft.knitted[id], pair)) draft.keepPair(id, null);
    }
  }

  /** @param {View} view @param {{ replace?: boolean }} [options] */
  #go(view, { replace = false } = {}) {
    const { step } = this.nav;
    this.nav.dialogs.after(() => {
      history[replace ? "replaceState" : "pushState"]({ step, book: view }, "", HASH);
      this.#follow();
    });
  }

  /** The address has changed. */
  async #follow() {
    const open = location.hash === HASH;
    const { dataset } = document.documentElement;
    const was = !this.#place.hidden;
    if (open) dataset.at = "book";
    else if (dataset.at === "book") delete dataset.at;
    this.#place.hidden = !open;
    if (!open) {
      nameScreen();
      if (was) (await this.#book)?.hide();
      return;
    }
    const view = history.state?.book ?? { name: "list" };
    if (!history.state?.book) history.replaceState({ step: this.nav.step, book: view }, "");
    nameScreen();
    try {
      const book = await this.#load();
      this.#write(); // a copy saved at once holds what was typed last
      if (location.hash === HASH) book.show(view);
    } catch (error) {
      console.error(error);
      render(NOT_LOADED, this.#place);
    }
  }

  /** @returns {Promise<Book>} */
  #load() {
    this.#book ??= this.#open().catch((error) => {
      this.#book = undefined; // asked again, it may come
      throw error;
    });
    return this.#book;
  }

  /** What the page has of a wearer is not theirs any longer. @param {string} id @param {boolean} [elsewhere] deleted in another tab */
  #drop(id, elsewhere) {
    if (this.draft.unkept[id]) this.draft.keepFor(id, null);
    if (this.draft.knitted[id]) this.draft.keepPair(id, null);
    this.sheets.forget(id, elsewhere);
  }

  async #open() {
    const { bookScript = "", bookStyle = "" } = document.documentElement.dataset;
    const { draft, engine } = this;
    /** @type {Host} */
    const host = {
      place: this.#place,
      table: () => this.form.values(),
      machine: () => only(this.draft.mine ?? {}, "machine"),
      open: ({ id, label, allergy, length, colours }, { number, values, changed = {} }, next) => {
        const wishes = [length, colours].filter((wish) => wish.trim()).join(", ");
        const sheet = { id, label, allergy, wishes, number, values, changed };
        this.sheets.openWearer(sheet, next);
      },
      measuringSheet: () => this.measuringSheet(),
      half: (name) => draft.read(`half.${name}`) ?? "",
      keepHalf: (name, text) => draft.write(`half.${name}`, text || null),
      spelled: withItsUnit,
      followed: ({ wearer, number, values, changed = {} }) => {
        const { visit } = this.sheets;
        const same = visit?.id === wearer && (visit.number ?? number) === number;
        if (same) this.sheets.join({ values, changed });
      },
      rename: (id, label) => {
        this.sheets.rename(id, label);
        this.atMachine.rename(id, label);
      },
      toMachine: (session) => {
        this.atMachine.enter(session);
        this.#follow();
      },
      again: (request, counted) =>
        /** @type {Promise<any>} */ (this.engine.ask({ do: "again", request, counted })),
      replaced: (id) => this.#drop(id),
      forget: (id, elsewhere) => {
        this.#drop(id, elsewhere);
        this.atMachine.forget(id);
      },
      tag: async (label, values) => {
        const { TagSheet } = await paper();
        new TagSheet({ engine, draft, request: withUsual(toRequest(values)), label });
      },
      sets: () => new Set(Object.keys(draft.sets ?? {}).map((name) => name.split(".")[0])).size,
      openSets: async (closed) => {
        const { sets = "", setsStyle } = document.documentElement.dataset;
        const [{ SetsSheet }] = await Promise.all([bundle(sets, setsStyle), paper()]);
        new SetsSheet({ engine, draft, closed });
      },
      printOrders: async (title, orders) => (await paper()).printOrders(title, orders),
      go: (view, options) => this.#go(view, options),
      came: () => {
        const came = this.#came;
        this.#came = undefined;
        return came;
      },
      sheets: {
        copy: () => {
          const { mine, before, shelf, chart, sets } = draft;
          return { mine, before, shelf, chart, sets };
        },
        dated: (name) => draft.sheet(name),
        join: (name, sheet) => draft.join(name, sheet),
        take: (name, values) => this.take[name](values),
        kept: () => draft.stored,
      },
      onMachine: () => this.atMachine.ofWearers(),
      took: (wearer) => this.atMachine.took(wearer),
      knitting: () => this.atMachine.load(),
    };
    const { Book } = await bundle(bookScript, bookStyle);
    return Book.open(host);
  }
}

/** @param {unknown} one @param {unknown} other */
function same(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}

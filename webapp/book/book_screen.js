/**
 * The book open at its list: found, put in order, and drawn as far as she has scrolled.
 * @import {Aside, Deleted, Host, Wearer} from "./types"
 * @import {Order} from "./orders.js"
 * @import {Wearers} from "./wearers.js"
 */
import { html, nothing } from "lit-html";
import { guard } from "lit-html/directives/guard.js";
import { ref } from "lit-html/directives/ref.js";
import * as say from "words/book";
import { oneLine } from "../page/one_line.js";
import { setAside } from "../page/set_aside.js";
import { short } from "../page/short.js";
import { dueShown, today, wrongDay } from "./days.js";
import { homeScreen } from "./home_screen.js";
import { lastCopy, missing, putOff } from "./last_copy.js";
import { pairShown } from "./marks.js";
import { found, ORDERS, sorted } from "./orders.js";
import { nextOf } from "./states.js";

const SOME = 6; // rows drawn at a time: more would make a frame late on a slow phone

export class BookScreen {
  #search = "";
  /** @type {Order} */
  #order = "due";
  #drawn = SOME;
  /** All of them, in order. @type {Wearer[]} */
  #sorted = [];
  /** Those found. @type {Wearer[]} */
  #listed = [];
  /** In no copy, in words. */
  #missing = "";
  #scroll = 0;
  #setsTrouble = false;
  /** The pairs on the machine, by their wearer. @type {Map<string, import("./types").OnMachine>} */
  onMachine = new Map();
  /** @type {IntersectionObserver | undefined} */
  #end;

  /** @param {{ host: Host, wearers: Wearers, draw: () => void, bringBack: () => void, saveCopy: () => void }} parts */
  constructor({ host, wearers, draw, bringBack, saveCopy }) {
    this.host = host;
    this.wearers = wearers;
    this.redraw = draw;
    this.bringBack = bringBack;
    this.saveCopy = saveCopy;
  }

  /** The wearers, or something of them, may be others now. */
  follow() {
    this.#sorted = sorted(this.wearers.all, this.#order);
    this.#listed = found(this.#sorted, this.#search);
    this.#missing = missing(this.#sorted);
  }

  /** Where she was in the list, to come back to. */
  leave() {
    this.#scroll = scrollY;
  }

  comeBack() {
    scrollTo({ top: this.#scroll, behavior: "instant" });
  }

  /** @param {Deleted | undefined} deleted what can be brought back */
  template(deleted) {
    const many = this.wearers.all.length;
    return html`
      <div class="book-list">
      <div class="book-head">
        <h2 id="book-title" tabindex="-1">${say.wearers}</h2>
        ${many > 1 ? this.#orders() : nothing}
      </div>
        ${this.#thumb(many)}
      <div role="status">${deleted ? this.#undo(deleted) : nothing}</div>
      ${this.wearers.aside.map((one) => this.#aside(one))}
      ${this.#sets()}
      ${homeScreen({ holds: many > 0, save: this.saveCopy, redraw: this.redraw })}
      ${many ? this.#list(many) : html`${empty}<p class="copies">${say.bookElsewhere}</p>${this.#toCopies()}`}
      </div>
    `;
  }

  #orders() {
    return html`<select id="book-order" aria-label=${say.order} @change=${(/** @type {any} */ event) => this.#sort(event.target.value)}>${ORDERS.map(
      ([order, words]) =>
        html`<option value=${order} ?selected=${order === this.#order}>${words}</option>`,
    )}</select>`;
  }

  /** Within the thumb's reach: to find one, and to begin with somebody new. @param {number} many */
  #thumb(many) {
    const begin = () => this.#go({ name: "new" });
    return html`<div class="book-thumb">
      ${
        many
          ? html`<input id="book-search" type="search" aria-label=${say.find} placeholder=${say.find} autocomplete="off" spellcheck="false" enterkeyhint="search"
              .value=${this.#search} @input=${(/** @type {any} */ event) => this.#find(event.target.value)} />`
          : nothing
      }
      <button type="button" class="go" id="new-wearer" @click=${begin}><span aria-hidden="true">+</span> <span class=${many ? "said" : ""}>${say.newWearer}</span></button>
    </div>`;
  }

  /** @param {number} many */
  #list(many) {
    const rows = this.#listed.slice(0, this.#drawn);
    const chunks = Array.from({ length: Math.ceil(rows.length / SOME) }, (_, at) =>
      rows.slice(at * SOME, (at + 1) * SOME),
    );
    const now = today();
    const { onMachine } = this;
    return html`
      ${this.#copies()}
      <p class=${this.#search.trim() ? "quiet" : "said"} role="status">${
        this.#search.trim()
          ? this.#listed.length
            ? say.foundOf({ found: this.#listed.length, total: many })
            : say.noneFound
          : say.wearersCount({ wearers: many })
      }</p>
      <ol class="wearers">${chunks.map((chunk) => guard([...chunk, now, onMachine], () => chunk.map((one) => this.#row(one, now))))}</ol>
      ${
        this.#drawn < this.#listed.length
          ? html`<button type="button" class="more" ${ref((element) => this.#watch(element))} @click=${() => this.#more()}>${say.showMore}</button>`
          : nothing
      }`;
  }

  /** The last copy, or that it is time for one: one line. */
  #copies() {
    const later = () => {
      putOff();
      this.follow();
      this.redraw();
    };
    return this.#missing
      ? html`<div id="copy-offer">${oneLine(
          this.#missing,
          html`<div class="row"><button type="button" id="copy-now" @click=${this.saveCopy}>${say.saveAll}</button>
            <button type="button" id="copy-later" @click=${later}>${say.notToday}</button></div>`,
          this.#toCopies(),
        )}</div>`
      : html`<div class="copies row quiet"><span>${lastCopy()}</span> ${this.#toCopies()}</div>`;
  }

  #toCopies() {
    return html`<button type="button" class="plain-button" id="to-copies" @click=${() => this.#go({ name: "copies" })}>${say.copiesAndLists}</button>`;
  }

  /** Her instructions over sizes, where she has written any. */
  #sets() {
    const sets = this.host.sets();
    if (!sets) return nothing;
    const open = async () => {
      this.#setsTrouble = false;
      await this.host.openSets(this.redraw).catch(() => {
        this.#setsTrouble = true;
      });
      this.redraw();
    };
    return html`<div class="copies row"><button type="button" class="plain-button" id="to-sets" @click=${open}>${say.setsKept({ sets })}</button></div>
      ${this.#setsTrouble ? html`<p class="note" role="alert">${say.setsNotLoaded}</p>` : nothing}`;
  }

  /** @param {Wearer} one @param {string} now */
  #row(one, now) {
    const open = one.state !== "handed over";
    const there = open && this.onMachine.get(one.id);
    return html`<li><a href="#book" @click=${(/** @type {Event} */ event) => {
      event.preventDefault();
      this.#go({ name: "card", id: one.id, over: true });
    }}>
      ${pairShown(one.state)}
      <span class="wearer">
        <bdi class="label">${short(one.label)}</bdi>
        <span class="to-do">${there ? say.atMachine({ place: there.words }) : nextOf(one.state)}</span>
        <span class="due">${one.due && open ? dueWords(one.due, now) : nothing}</span>
        ${open && one.allergy ? html`<span class="allergy">${say.allergyOf({ allergy: short(one.allergy) })}</span>` : nothing}
      </span>
    </a></li>`;
  }

  /** @param {Deleted} deleted */
  #undo({ wearer }) {
    return html`<div class="line row">
      <p>${say.wearerDeleted({ label: short(wearer.label) })}</p>
      <button type="button" id="bring-wearer-back" @click=${this.bringBack}>${say.bringWearerBack}</button>
    </div>`;
  }

  /** @param {Aside} one */
  #aside(one) {
    const words = say.setAside({ store: one.store });
    return setAside(words, one.text, () => this.wearers.drop(one));
  }

  /** @param {import("./types").View} view */
  #go(view) {
    this.leave();
    this.host.go({ ...view, over: true });
  }

  /** @param {string} search */
  #find(search) {
    this.#search = search;
    this.#listed = found(this.#sorted, search);
    this.#afresh();
  }

  /** @param {Order} order */
  #sort(order) {
    this.#order = order;
    this.follow();
    this.#afresh();
  }

  #afresh() {
    this.#drawn = SOME;
    this.redraw();
  }

  #more() {
    this.#drawn += SOME;
    this.redraw();
  }

  /** Rows are drawn before she gets to their end. @param {Element | undefined} element */
  #watch(element) {
    this.#end?.disconnect();
    if (!element) return;
    this.#end = new IntersectionObserver(
      (entries) => entries.some(({ isIntersecting }) => isIntersecting) && this.#more(),
      { rootMargin: "1200px" },
    );
    this.#end.observe(element);
  }
}

/** @param {string} due @param {string} now today */
function dueWords(due, now) {
  if (wrongDay(due)) return say.wrongDue({ day: due });
  return due < now ? say.lateDue({ day: dueShown(due) }) : say.dueFor({ day: dueShown(due) });
}

const empty = html`<div class="book-empty">
  <p><strong>${say.nobodyYet}</strong></p>
  <p>${say.beginBook} ${say.sheetsSaved}</p>
  <p>${say.tapNew}</p>
</div>`;

/**
 * The book of wearers: what the page calls. It is open at its list, at a new wearer or at one wearer's
 * page, or closed.
 * @import {Copies} from "../copies/main.js"
 * @import {Dated} from "../storage/dated.js"
 * @import {KnittedPair, Deleted, Host, View} from "./types"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/book";
import { bundle } from "../page/bundle.js";
import { enterGoesOn } from "../page/enter_key.js";
import { BookScreen } from "./book_screen.js";
import { NewWearer } from "./new_wearer.js";
import { WearerCard } from "./wearer_card.js";
import { Wearers } from "./wearers.js";

export class Book {
  /** @type {View | null} */
  #view = null;
  /** @type {Deleted | undefined} */
  #deleted;
  #drawing = false;
  /** Loaded when it is wanted. @type {Copies | undefined} */
  #copies;
  #copiesTrouble = false;
  /** One is to be saved as soon as they are shown. */
  #saving = false;

  /** @param {Host} host @param {Wearers} wearers */
  constructor(host, wearers) {
    this.host = host;
    this.wearers = wearers;
    enterGoesOn(host.place);
    const draw = () => this.#draw();
    this.list = new BookScreen({
      host,
      wearers,
      draw,
      bringBack: () => this.#bringBack(),
      saveCopy: () => this.#saveCopy(),
    });
    this.new = new NewWearer({ host, wearers, draw });
    this.card = new WearerCard({
      host,
      wearers,
      draw,
      up: () => this.#up(),
      remove: (id) => this.#remove(id),
    });
    wearers.addEventListener("change", () => this.#follow());
    wearers.addEventListener("gone", (event) =>
      host.forget(/** @type {CustomEvent} */ (event).detail, true),
    );
    wearers.addEventListener("followed", (event) =>
      host.followed(/** @type {CustomEvent} */ (event).detail),
    );
  }

  /** @param {Host} host */
  static async open(host) {
    return new Book(host, await Wearers.open(host.spelled));
  }

  /** @param {View} view */
  show(view) {
    const { id = "" } = view;
    const from = this.#view?.name;
    this.#view = view.name === "card" && !this.wearers.get(id) ? { name: "list" } : view;
    this.list.follow();
    if (this.#view.name === "card") this.card.shown(id);
    this.#draw();
    if (this.#view.name === "list") {
      this.#onMachine();
      document.getElementById("book-title")?.focus({ preventScroll: true });
      return this.list.comeBack();
    }
    scrollTo({ top: 0, behavior: "instant" });
    if (view.name === "copies") return void this.#showCopies();
    if (view.name === "new" && from !== "new") this.new.shown();
    else document.getElementById("book-title")?.focus({ preventScroll: true });
  }

  /** Asked anew whenever the list is come to. */
  async #onMachine() {
    const there = await this.host.onMachine().catch(() => this.list.onMachine);
    if (!there.size && !this.list.onMachine.size) return;
    this.list.onMachine = there;
    this.#follow();
  }

  async #showCopies() {
    this.#copiesTrouble = false;
    try {
      const { copies = "" } = document.documentElement.dataset;
      const { Copies } = await bundle(copies);
      const { host, wearers } = this;
      this.#copies ??= new Copies({ host, wearers, draw: () => this.#draw() });
      this.#copies?.shown();
      if (this.#saving) this.#copies?.save();
    } catch (error) {
      console.error(error);
      this.#copiesTrouble = true;
      this.#draw();
    }
    this.#saving = false;
    document.getElementById("book-title")?.focus({ preventScroll: true });
  }

  #saveCopy() {
    this.#saving = true;
    this.host.go({ name: "copies", over: true });
  }

  hide() {
    this.#view = null;
    this.#deleted = undefined; // closed: what was deleted is gone here too
    render(nothing, this.host.place);
    this.wearers.flush();
  }

  /** What is typed on a wearer's sheet; whether the phone has it. @param {string} id @param {string} label @param {Dated & { number?: number }} sheet */
  async keepSheet(id, label, sheet) {
    await this.wearers.keepSheet(id, label, sheet);
    await this.wearers.flush();
    return this.wearers.kept;
  }

  #trouble() {
    const { outdated, stuck } = this.wearers;
    if (stuck && !outdated) return html`<p>${say.bookUnreadable} ${say.bookUnreadableNew}</p>`;
    if (!outdated) return html`<p>${say.bookNotSaved}</p>`;
    return html`<p>${say.bookOutdated}</p><button type="button" @click=${() => location.reload()}>${say.reload}</button>`;
  }

  /** How far the machine has brought a wearer's pair; whether the phone has it. @param {KnittedPair} pair */
  async keepPair(pair) {
    await this.wearers.onMachine(pair);
    await this.wearers.flush();
    return this.wearers.kept;
  }

  /** @param {string} id */
  async #remove(id) {
    this.#deleted = await this.wearers.remove(id);
    this.host.forget(id);
    this.#up();
  }

  #bringBack() {
    if (this.#deleted) {
      const { wearer } = this.#deleted;
      this.wearers.restore(this.#deleted);
      this.host.rename(wearer.id, wearer.label); // the machine names them again
    }
    this.#deleted = undefined;
    this.#follow();
    document.getElementById("book-title")?.focus({ preventScroll: true });
  }

  /** From a wearer to the list. */
  #up() {
    if (this.#view?.over) history.back();
    else this.host.go({ name: "list" }, { replace: true });
  }

  /** Once a frame, however much has changed. */
  #follow() {
    if (!this.#view || this.#drawing) return;
    this.#drawing = true;
    queueMicrotask(() => {
      this.#drawing = false;
      const view = this.#view;
      // In the place of a wearer who is gone stands the list.
      if (view?.name === "card" && this.wearers.get(view.id ?? "")) this.card.follow();
      else this.list.follow();
      this.#draw();
    });
  }

  #draw() {
    const view = this.#view;
    if (!view) return;
    const wearer = this.wearers.get(view.id ?? "");
    const inside = view.name !== "list" && !(view.name === "card" && wearer);
    render(
      html`${inside ? html`<button type="button" id="all-wearers" class="plain-button" @click=${() => this.#up()}>${say.allWearers}</button>` : nothing}
        ${
          this.wearers.kept
            ? nothing
            : html`<div class="line trouble" role="status">${this.#trouble()}</div>`
        }
        ${
          view.name === "new"
            ? this.new.template(view.keep ?? false)
            : view.name === "copies"
              ? (this.#copies?.template() ?? copiesMissing(this.#copiesTrouble))
              : view.name === "card" && wearer
                ? this.card.template(wearer)
                : this.list.template(this.#deleted)
        }`,
      this.host.place,
    );
  }
}

/** @param {boolean} trouble they could not be loaded */
function copiesMissing(trouble) {
  return html`<h2 id="book-title" tabindex="-1">${say.copiesAndLists}</h2>
    ${trouble ? html`<div class="line trouble" role="alert"><p>${say.copiesMissing}</p></div>` : nothing}`;
}

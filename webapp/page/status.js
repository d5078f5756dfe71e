/**
 * The quiet lines above the work: what the page waits for, what went wrong and what to do, whether
 * the phone keeps what is typed, and the offer of a new version.
 * @import {Asks} from "./types"
 * @import {Draft} from "./draft.js"
 * @import {Replaced} from "./form.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { oneLine } from "./one_line.js";
import { setAside } from "./set_aside.js";
import { short } from "./short.js";

export class Status {
  #trouble = "";
  /** @type {Replaced[]} */
  #replaced = [];
  #stored = true;

  /** @param {Asks} engine @param {Draft} draft */
  constructor(engine, draft) {
    this.engine = engine;
    this.draft = draft;
    this.place = /** @type {HTMLElement} */ (document.getElementById("status-line"));
    this.offer = /** @type {HTMLElement} */ (document.getElementById("offer-line"));
    engine.addEventListener("state", () => this.#draw());
    this.#draw();
  }

  /** @param {string} sentence what went wrong; "" when it is over */
  trouble(sentence) {
    this.#trouble = sentence;
    this.#draw();
  }

  /** What is kept may have been looked at just now. @param {boolean} stored whether the phone keeps what is typed */
  stored(stored) {
    this.#stored = stored;
    this.#draw();
  }

  /** Another tab's words took the place of these; none once something is typed here. @param {Replaced[]} replaced */
  elsewhere(replaced) {
    if (!replaced.length && !this.#replaced.length) return;
    this.#replaced = replaced;
    this.#draw();
  }

  /** @param {() => void} accept take the new version */
  newVersion(accept) {
    const take = () => {
      render(nothing, this.offer);
      accept();
    };
    render(
      oneLine(
        say.newVersion,
        html`<p>${say.newVersionAbout}</p>`,
        html`<button type="button" @click=${take}>${say.useItNow}</button>`,
      ),
      this.offer,
    );
  }

  offlineReady() {
    show("stored-line", true);
  }

  #draw() {
    const { state, reason } = this.engine;
    document.getElementById("waiting")?.classList.toggle("over", state !== "starting");
    const failed = state === "failed" ? reason : this.#trouble;
    const again = () => (state === "failed" ? this.engine.start() : location.reload());
    render(
      html`${
        failed
          ? html`<div class="line trouble" role="alert"><p>${failed}</p>
              <button type="button" @click=${again}>${state === "failed" ? say.tryAgain : say.reload}</button></div>`
          : nothing
      }${this.#stored ? nothing : html`<div class="line trouble"><p>${say.nothingKept}</p></div>`}${
        this.#replaced.length
          ? html`<div class="line" id="elsewhere" role="status"><p>${say.changedElsewhere}</p>
              <ul>${this.#replaced.map(({ title, before, now }) => html`<li>${now ? say.isNow({ title, before: short(before), now: short(now) }) : say.isDeleted({ title, before: short(before) })}</li>`)}</ul></div>`
          : nothing
      }${this.draft.aside.map(({ place, words, text }) =>
        setAside(words, text, () => {
          this.draft.drop(place);
          this.#draw();
        }),
      )}`,
      this.place,
    );
  }
}

/** @param {string} id @param {boolean} shown */
function show(id, shown) {
  const element = document.getElementById(id);
  if (element) element.hidden = !shown;
}

/**
 * A copy of all that the phone keeps, saved to a file or handed on, and what is said of it.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/copies";
import { today } from "../book/days.js";
import { lastCopy, remember } from "../book/last_copy.js";
import { save } from "../page/save.js";
import { persisted } from "../storage/persist.js";
import { handable, handOn } from "./hand_on.js";
import { locked, opened } from "./lock.js";
import { Passphrase } from "./passphrase.js";
import { BUSY } from "./words.js";
import { NotNow, written } from "./written.js";

/** @typedef {{ text: string, holds: string, lacks: string, whole: boolean }} Made a file's text, and what to say of it */

const KEEPS = {
  keeps: say.browserKeeps,
  "may delete": say.browserMayDelete,
  "does not say": say.browserSilent,
};

export class SaveCopy {
  /** @type {keyof typeof KEEPS | undefined} none as long as the browser has not answered */
  #keeps;
  /** Waits for a second tap. @type {{ file: File, made: Made } | null} */
  #ready = null;
  #handable = handable();

  /** @param {{ host: Host, wearers: Wearers, tell: (said: string) => void, draw: () => void }} parts `tell`: what has been done */
  constructor({ host, wearers, tell, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.tell = tell;
    this.redraw = draw;
    this.passphrase = new Passphrase(draw);
  }

  /** As at first. */
  shown() {
    this.#ready = null;
    this.passphrase.shown();
    this.#ask();
  }

  async #ask() {
    this.#keeps = await persisted();
    this.redraw();
  }

  template() {
    const locked = this.#isLocked();
    return html`<h3>${say.saveACopy}</h3>
      <p>${say.copyHolds} ${say.copyAway} ${lastCopy()}</p>
      ${this.#keeps ? html`<p id="browser-keeps" class="quiet">${KEEPS[this.#keeps]}</p>` : nothing}
      ${this.passphrase.template()}
      <div class="row"><button type="button" id="save-copy" @click=${() => this.save()}>${say.saveAll({ locked })}</button>
        ${this.#handable ? html`<button type="button" id="hand-on" @click=${() => this.#handOn()}>${say.sendAs({ locked })}</button>` : nothing}</div>
      ${this.#ready ? html`<p>${say.fileReady} <button type="button" id="hand-on-now" @click=${() => this.#share()}>${say.sendNow}</button></p>` : nothing}`;
  }

  #isLocked() {
    return this.passphrase.value ? "yes" : "no";
  }

  async save() {
    const made = await this.#made();
    if (!made) return;
    save(made.text, `heelwise-all-${today()}.json`, "application/json");
    this.#saved(made, say.savedTo({ locked: this.#isLocked(), things: made.holds }));
  }

  async #handOn() {
    const made = await this.#made();
    if (!made || !this.#handable) return;
    this.#ready = { file: this.#handable(made.text, `heelwise-all-${today()}`), made };
    await this.#share();
  }

  async #share() {
    if (!this.#ready) return;
    const { file, made } = this.#ready;
    const came = await handOn(file);
    if (came === "tap again") return this.tell("");
    this.#ready = null;
    if (came === "handed on") return this.#saved(made, say.handedOn({ things: made.holds }));
    this.tell(came === "left" ? say.notSent : say.notTaken);
  }

  /** @returns {Promise<Made | null>} null where it is said why not */
  async #made() {
    if (!this.passphrase.good()) return null;
    this.#ready = null;
    this.tell(BUSY);
    try {
      const { text, holds, lacks, whole } = await written(this);
      return { text: await this.#lock(text), holds, lacks, whole };
    } catch (error) {
      if (!(error instanceof NotNow)) throw error;
      this.tell(error.message);
      return null;
    }
  }

  /** @param {string} text */
  async #lock(text) {
    const { value } = this.passphrase;
    if (!value) return text;
    const file = await locked(text, value);
    const again = await opened(JSON.parse(file), value);
    if (again !== text) {
      throw new NotNow(say.notLocked);
    }
    return file;
  }

  /** @param {Made} made @param {string} said */
  #saved({ whole, lacks }, said) {
    if (whole) remember();
    this.tell(`${said} ${lacks}`.trim());
  }
}

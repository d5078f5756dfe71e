/**
 * A copy of all that the phone keeps, saved to a file or handed on, and what is said of it.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 */
import { html, nothing } from "lit-html";
import { today } from "../book/days.js";
import { lastCopy, remember } from "../book/last_copy.js";
import { save } from "../page/save.js";
import { persisted } from "../storage/persist.js";
import { handable, handOn } from "./hand_on.js";
import { locked, opened } from "./lock.js";
import { Passphrase } from "./passphrase.js";
import { BUSY } from "./words.js";
import { NotNow, written } from "./written.js";

/** @typedef {{ text: string, said: string, whole: boolean }} Made a file's text, and what to say of it */

const KEEPS = {
  keeps: "The browser has promised to keep all this until you delete it.",
  "may delete":
    "The browser has not promised to keep all this: it may delete it when the phone runs short of room.",
  "does not say": "The browser does not say whether it keeps all this for good.",
};

export class SaveCopy {
  /** @type {keyof typeof KEEPS | undefined} none as long as the browser has not answered */
  #keeps;
  /** Waits for a second tap. @type {{ file: File, made: Made } | null} */
  #ready = null;
  #handable = handable();

  /** @param {{ host: Host, wearers: Wearers, say: (said: string) => void, draw: () => void }} parts `say`: what has been done */
  constructor({ host, wearers, say, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.say = say;
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
    const to = this.#to();
    return html`<h3>Save a copy</h3>
      <p>All that this page keeps on the phone, in one file: every wearer with every visit, your own page, your cylinders and yarns, the table over sizes, and what was counted and set at the machine. Keep it away from this phone: it holds people’s measures. ${lastCopy()}</p>
      ${this.#keeps ? html`<p id="browser-keeps" class="quiet">${KEEPS[this.#keeps]}</p>` : nothing}
      ${this.passphrase.template()}
      <div class="row"><button type="button" id="save-copy" @click=${() => this.save()}>Save all to ${to}</button>
        ${this.#handable ? html`<button type="button" id="hand-on" @click=${() => this.#handOn()}>Send it as ${to}…</button>` : nothing}</div>
      ${this.#ready ? html`<p>The file is made. <button type="button" id="hand-on-now" @click=${() => this.#share()}>Send it now</button></p>` : nothing}`;
  }

  #to() {
    return this.passphrase.value ? "a locked file" : "a file";
  }

  async save() {
    const made = await this.#made();
    if (!made) return;
    save(made.text, `heelwise-all-${today()}.json`, "application/json");
    this.#saved(made, `Saved to ${this.#to()}: ${made.said}`);
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
    if (came === "tap again") return this.say("");
    this.#ready = null;
    if (came === "handed on") return this.#saved(made, `Handed on: ${made.said}`);
    this.say(
      came === "left"
        ? "It was not sent. Nothing has changed."
        : "The phone did not take the file. Save it to a file instead.",
    );
  }

  /** @returns {Promise<Made | null>} null where it is said why not */
  async #made() {
    if (!this.passphrase.good()) return null;
    this.#ready = null;
    this.say(BUSY);
    try {
      const { text, holds, lacks, whole } = await written(this);
      return { text: await this.#lock(text), said: `${holds}. ${lacks}`.trim(), whole };
    } catch (error) {
      if (!(error instanceof NotNow)) throw error;
      this.say(error.message);
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
      throw new NotNow("The copy could not be locked just now. Nothing was saved. Try again.");
    }
    return file;
  }

  /** @param {Made} made @param {string} said */
  #saved({ whole }, said) {
    if (whole) remember();
    this.say(said);
  }
}

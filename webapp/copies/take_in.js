/**
 * A copy taken in from a file: read, compared with what is here, and nothing overwritten unasked.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 * @import {Change, Found} from "./types"
 */
import { html, nothing } from "lit-html";
import { compare } from "./compare.js";
import { readCopy } from "./file.js";
import { Locked } from "./lock.js";
import { merging } from "./merging.js";
import { Unreadable } from "./unreadable.js";
import { BUSY, inWords } from "./words.js";

const NOT_KEPT =
  " The phone does not keep all of it just now. Do not delete the file: what is not kept is gone once the page is closed.";

export class TakeIn {
  #wrong = "";
  /** A locked copy that waits for its passphrase. @type {Blob | null} */
  #locked = null;
  #shut = "";
  /** @type {Found["stones"]} */
  #stones = [];
  /** @type {Found | null} */
  #found = null;
  #ways = {
    take: (/** @type {Change[]} */ changes) => this.#take(changes),
    leave: () => this.#tell({ said: "Nothing was changed." }),
    redraw: () => this.redraw(),
  };

  /** @param {{ host: Host, wearers: Wearers, say: (said: string) => void, draw: () => void }} parts `say`: what has been done */
  constructor({ host, wearers, say, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.say = say;
    this.redraw = draw;
  }

  /** As at first. */
  shown() {
    [this.#wrong, this.#shut, this.#found, this.#locked] = ["", "", null, null];
  }

  /** What the file that was picked would change. */
  found() {
    return this.#found ? merging(this.#found, this.#ways) : nothing;
  }

  template() {
    return html`<div class="field">
      <label for="take-copy">Take a copy in</label>
      <p class="where" id="take-copy-where">A file saved here or on another phone. You see what it would change before anything is changed.</p>
      <div class="entry"><div class="typed"><input id="take-copy" type="file" accept=".json,.txt,application/json,text/plain" aria-describedby="take-copy-where take-copy-error"
        @change=${(/** @type {Event} */ event) => this.#read(/** @type {HTMLInputElement} */ (event.target))} /></div></div>
      <p class="error" id="take-copy-error" role="alert">${this.#wrong}</p>
    </div>
    ${this.#locked ? this.#keyhole(this.#locked) : nothing}`;
  }

  /** @param {Blob} file */
  #keyhole(file) {
    const open = (/** @type {SubmitEvent} */ event) => {
      event.preventDefault();
      const form = /** @type {HTMLFormElement} */ (event.currentTarget);
      this.#open(file, String(new FormData(form).get("passphrase")));
    };
    return html`<form id="unlock" class="field" novalidate @submit=${open}>
      <label for="unlock-passphrase">Its passphrase</label>
      <p class="where" id="unlock-where">This copy is locked. Write the passphrase that it was saved with.</p>
      <div class="entry"><div class="typed"><input id="unlock-passphrase" name="passphrase" type="password" autocomplete="off"
        aria-describedby="unlock-where unlock-error" aria-invalid=${this.#shut ? "true" : "false"} /></div></div>
      <p class="error" id="unlock-error" role="alert">${this.#shut}</p>
      <button id="unlock-copy">Open it</button>
    </form>`;
  }

  /** @param {Blob} file @param {string} passphrase */
  async #open(file, passphrase) {
    this.say(BUSY);
    try {
      await this.#compare(file, passphrase);
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      this.#shut = error.message;
      this.say("");
      return document.getElementById("unlock-passphrase")?.focus();
    }
    document.getElementById("book-title")?.focus();
  }

  /** @param {HTMLInputElement} input */
  async #read(input) {
    const file = input.files?.[0];
    if (!file) return;
    this.#tell({ said: BUSY });
    try {
      await this.#compare(file);
    } catch (error) {
      input.value = "";
      if (error instanceof Locked) return this.#ask(file);
      const wrong =
        error instanceof Unreadable
          ? error.message
          : "The file could not be opened. Nothing was taken in. Pick it once more.";
      this.#tell({ wrong });
    }
    input.value = "";
    document.getElementById("book-title")?.focus();
  }

  /** @param {Blob} file a locked one */
  #ask(file) {
    this.#tell({});
    this.#locked = file;
    this.redraw();
    document.getElementById("unlock-passphrase")?.focus();
  }

  /** @param {Blob} file @param {string} [passphrase] */
  async #compare(file, passphrase) {
    const found = await compare(await readCopy(file, passphrase), this);
    this.#stones = found.stones;
    if (found.changes.length || found.damaged) return this.#tell({ found });
    this.#bury();
    this.#tell({ said: "All of that copy is here already. Nothing was changed." });
  }

  /** Those that were never here, and are deleted. */
  #bury() {
    for (const stone of this.#stones) this.wearers.bury(stone);
    this.#stones = [];
  }

  /** @param {Change[]} changes */
  async #take(changes) {
    const asked = /** @type {Change["how"][]} */ (["new", "deleted", "gone"]);
    const wanted = changes.filter(({ how, take }) => !asked.includes(how) || take === "file");
    this.#bury();
    /** @type {Change[]} */
    const left = [];
    this.#tell({ said: BUSY });
    for (const one of wanted) {
      try {
        // Waited for only where there is something to wait for: else the page is drawn for each anew.
        const storing = one.put();
        if (storing) await storing;
      } catch {
        left.push(one);
      }
    }
    const pairs = wanted.some(({ kind }) => kind === "pair");
    const machine = pairs ? await this.host.knitting() : undefined;
    await machine?.taken();
    await this.wearers.flush();
    if (left.length) {
      return this.#tell({
        wrong: `The phone did not store ${inWords(left)}: that is as it was. All else is taken in. Pick the file once more.`,
      });
    }
    const kept = this.wearers.kept && this.host.sheets.kept() && machine?.kept !== false;
    this.#tell({ said: `Taken in: ${done(wanted)}.${kept ? "" : NOT_KEPT}` });
  }

  /** @param {{ said?: string, wrong?: string, found?: Found | null }} what */
  #tell({ said = "", wrong = "", found = null }) {
    [this.#wrong, this.#shut, this.#found, this.#locked] = [wrong, "", found, null];
    this.say(said);
  }
}

/** What was done, in words. @param {Change[]} wanted */
function done(wanted) {
  /** @type {[(how: Change["how"]) => boolean, string][]} */
  const ways = [
    [(how) => how === "new" || how === "further", "added"],
    [(how) => how === "deleted", "brought back"],
    [(how) => how === "newer", "brought up to date"],
    [(how) => how === "gone", "deleted"],
    [(how) => how === "other", "as you chose"],
  ];
  const parts = ways.flatMap(([is, words]) => {
    const those = wanted.filter(({ how }) => is(how));
    return those.length ? [`${inWords(those)} ${words}`] : [];
  });
  return parts.join(", ") || "nothing";
}

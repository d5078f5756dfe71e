/**
 * A copy taken in from a file: read, compared with what is here, and nothing overwritten unasked.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 * @import {Change, Found} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/copies";
import { compare } from "./compare.js";
import { readCopy } from "./file.js";
import { Locked } from "./lock.js";
import { merging } from "./merging.js";
import { Unreadable } from "./unreadable.js";
import { BUSY, inWords } from "./words.js";

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
    leave: () => this.#tell({ said: say.nothingChanged }),
    redraw: () => this.redraw(),
  };

  /** @param {{ host: Host, wearers: Wearers, tell: (said: string) => void, draw: () => void }} parts `tell`: what has been done */
  constructor({ host, wearers, tell, draw }) {
    this.host = host;
    this.wearers = wearers;
    this.tell = tell;
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
      <label for="take-copy">${say.takeACopy}</label>
      <p class="where" id="take-copy-where">${say.takeWhere}</p>
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
      <label for="unlock-passphrase">${say.itsPassphrase}</label>
      <p class="where" id="unlock-where">${say.copyLocked}</p>
      <div class="entry"><div class="typed"><input id="unlock-passphrase" name="passphrase" type="password" autocomplete="off"
        aria-describedby="unlock-where unlock-error" aria-invalid=${this.#shut ? "true" : "false"} /></div></div>
      <p class="error" id="unlock-error" role="alert">${this.#shut}</p>
      <button id="unlock-copy">${say.openIt}</button>
    </form>`;
  }

  /** @param {Blob} file @param {string} passphrase */
  async #open(file, passphrase) {
    this.tell(BUSY);
    try {
      await this.#compare(file, passphrase);
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      this.#shut = error.message;
      this.tell("");
      return document.getElementById("unlock-passphrase")?.focus();
    }
    document.getElementById("book-title")?.focus();
  }

  /** @param {HTMLInputElement} input */
  async #read(input) {
    const file = input.files?.[0];
    if (!file) return;
    await this.take(file);
    input.value = "";
  }

  /** @param {Blob | null} file null where it could not be read */
  async take(file) {
    this.#tell({ said: BUSY });
    try {
      if (!file) throw new TypeError("no file");
      await this.#compare(file);
    } catch (error) {
      if (file && error instanceof Locked) return this.#ask(file);
      const wrong = error instanceof Unreadable ? error.message : say.fileNotOpened;
      this.#tell({ wrong });
    }
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
    this.#tell({ said: say.allHere });
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
        wrong: say.notStored({ things: inWords(left) }),
      });
    }
    const kept = this.wearers.kept && this.host.sheets.kept() && machine?.kept !== false;
    const said = say.takenIn({ things: done(wanted) });
    this.#tell({ said: kept ? said : `${said} ${say.takenNotSaved}` });
  }

  /** @param {{ said?: string, wrong?: string, found?: Found | null }} what */
  #tell({ said = "", wrong = "", found = null }) {
    [this.#wrong, this.#shut, this.#found, this.#locked] = [wrong, "", found, null];
    this.tell(said);
  }
}

/** What was done, in words. @param {Change[]} wanted */
function done(wanted) {
  /** @type {[(how: Change["how"]) => boolean, Parameters<typeof say.done>[0]["how"]][]} */
  const ways = [
    [(how) => how === "new" || how === "further", "added"],
    [(how) => how === "deleted", "back"],
    [(how) => how === "newer", "newer"],
    [(how) => how === "gone", "gone"],
    [(how) => how === "other", "chosen"],
  ];
  const parts = ways.flatMap(([is, how]) => {
    const those = wanted.filter((one) => is(one.how));
    return those.length ? [say.done({ how, things: inWords(those) })] : [];
  });
  return parts.join(", ") || say.takenNothing;
}

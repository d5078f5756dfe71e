/**
 * Notes on a round: written while it is fresh, listed with their rounds, and told again when the other
 * sock comes there.
 * @import {Kept} from "../storage/kept.js"
 * @import {Counter} from "./counter.js"
 * @import {Sheet} from "./sheet.js"
 * @import {Note, State} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/machine";
import { where, which } from "./moments.js";
import { view } from "./progress.js";

export class Notes {
  #text = "";
  #problem = "";

  /** @param {Counter} counter @param {Sheet} sheet @param {Kept} kept for what is half written */
  constructor(counter, sheet, kept) {
    this.counter = counter;
    this.sheet = sheet;
    this.kept = kept;
    this.half = `half.note-${counter.session.id}`;
  }

  open() {
    this.#problem = "";
    this.#text = this.kept.read(this.half) ?? "";
    this.#draw();
    document.getElementById("note-text")?.focus();
  }

  async #keep() {
    const text = this.#text.trim();
    if (!text) {
      this.#problem = say.noteEmpty;
      this.#draw();
      document.getElementById("note-text")?.focus();
      return;
    }
    await this.counter.note(text);
    this.#write("");
    this.sheet.close();
  }

  /** @param {string} text */
  #write(text) {
    this.#text = text;
    this.kept.write(this.half, text || null);
  }

  #draw() {
    const { state } = this.counter;
    const here = { sock: state.sock, place: state.places[state.sock], text: "", number: 0 };
    this.sheet.show(
      say.note,
      html`<div class="field">
          <label for="note-text">${say.whatHappened}</label>
          <p class="where" id="note-where">${say.noteComesAgain({ place: at(state, here) })}</p>
          <textarea id="note-text" rows="3" aria-describedby="note-where note-error"
            aria-invalid=${this.#problem ? "true" : nothing} .value=${this.#text}
            @input=${(/** @type {Event} */ event) => {
              this.#write(/** @type {HTMLTextAreaElement} */ (event.target).value);
            }}></textarea>
          <p class="error" id="note-error">${this.#problem}</p>
        </div>
        <button type="button" class="go" id="keep-note" @click=${() => this.#keep()}>${say.keepNote}</button>
        ${
          state.notes.length
            ? html`<h3>${say.notesOnPair}</h3>
                <ul class="notes">${[...state.notes].reverse().map((note) => html`<li><b>${at(state, note)}</b><br><bdi>${note.text}</bdi></li>`)}</ul>`
            : nothing
        }`,
    );
  }
}

/** @param {State} state @param {Note} note */
function at({ socks }, { sock, place }) {
  const { title, ended } = view(socks[sock], place);
  if (ended) return say.placeOff({ sock: which(sock) });
  return say.placeOfSock({ sock: which(sock), section: title, where: where(socks[sock], place) });
}

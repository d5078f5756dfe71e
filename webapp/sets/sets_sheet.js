/**
 * Instructions over sizes: the sets that are kept, what is written of one, and how it reads.
 * @import {Draft} from "../page/draft.js"
 * @import {Asks, InstructionSet, Problem, Values} from "../page/types"
 * @import {KeptSet} from "./kept_sets.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/sets";
import { toRequest } from "../page/request.js";
import { paperSheet } from "../paper/sheet.js";
import { DETAILS, KeptSets, titleOf } from "./kept_sets.js";
import { Reading } from "./reading.js";
import { SetForm } from "./set_form.js";
import { SetsList } from "./sets_list.js";
import { usualHere } from "./usual_sizes.js";

const PAUSE_MS = 10_000; // every size is planned

export class SetsSheet {
  #sheet = paperSheet("sets-sheet");
  #kept;
  #list;
  #form = new SetForm({
    write: ({ id }, words) => {
      this.#kept.write(id, words);
      this.#draw();
    },
    read: (set) => this.#read(set),
  });
  /** The set that is written on; none where all are listed. */
  #id = "";
  /** @type {Reading | null} how it reads, once that is asked for */
  #reading = null;
  /** @type {Problem[]} */
  #problems = [];
  #note = "";

  /**
   * @param {{ engine: Asks, draft: Draft, plan?: Values, closed?: () => void }} parts
   *   `plan`: the values that are counted now, none in the book
   */
  constructor({ engine, draft, plan, closed = () => {} }) {
    this.engine = engine;
    this.#kept = new KeptSets(draft);
    this.#list = new SetsList({
      kept: this.#kept,
      begin: plan && (() => this.#open(this.#kept.add(plan, usualHere(plan.units)))),
      open: (id) => this.#open(id),
      redraw: () => this.#draw(),
    });
    this.#draw();
    this.#sheet.addEventListener("close", closed);
    this.#sheet.showModal();
  }

  #draw() {
    const set = this.#kept.get(this.#id);
    const inside =
      this.#reading && set
        ? this.#reading.template()
        : set
          ? this.#form.template(set, this.#problems, this.#note)
          : this.#list.template();
    render(
      html`<div class="paper-sheet-head">
          <h2 id="sets-sheet-title" tabindex="-1" autofocus>${set ? titleOf(set) : say.setsTitle}</h2>
          <button type="button" id="close-sets" @click=${() => this.#sheet.close()}>${say.close}</button>
        </div>
        ${set ? html`<button type="button" class="plain-button" id="sets-back" @click=${() => this.#back()}>${this.#reading ? say.backToWords : say.allSets}</button>` : nothing}
        ${inside}`,
      this.#sheet,
    );
  }

  /** @param {string} id */
  #open(id) {
    this.#id = id;
    this.#list.left();
    this.#problems = [];
    this.#note = "";
    this.#show();
  }

  #back() {
    if (this.#reading) this.#reading = null;
    else this.#id = "";
    this.#show();
  }

  /** From its top. */
  #show() {
    this.#draw();
    this.#sheet.scrollTop = 0;
    document.getElementById("sets-sheet-title")?.focus();
  }

  /** @param {KeptSet} set */
  async #read({ id }) {
    const set = this.#kept.get(id);
    if (!set) return;
    this.#note = say.moment;
    this.#draw();
    try {
      const found = await this.#asked(set);
      if (this.#id !== id) return;
      this.#note = "";
      this.#problems = found.errors ?? [];
      if (this.#problems.length) {
        this.#draw();
        const wrong = this.#sheet.querySelector("[aria-invalid=true]");
        return wrong instanceof HTMLElement && wrong.focus();
      }
      this.#reading = new Reading({
        engine: this.engine,
        set,
        title: titleOf(set),
        found,
        draw: () => this.#draw(),
      });
      this.#show();
    } catch (error) {
      this.#note = error instanceof Error ? error.message : String(error);
      this.#draw();
    }
  }

  /** @param {KeptSet} set @returns {Promise<InstructionSet & { errors?: Problem[] }>} */
  #asked({ plan, words }) {
    const { by = "", sizes = "" } = words;
    const details = Object.fromEntries(DETAILS.map((name) => [name, words[name] ?? ""]));
    const call = { do: "set", request: toRequest(plan), set: { by, sizes, details } };
    return /** @type {Promise<any>} */ (this.engine.ask(call, { deadline: 6 * PAUSE_MS }));
  }
}

/**
 * The pieces of one yarn: each folds to a line of words once it is filled; under them the mark to set.
 * @import {Plan, Problem} from "./types"
 * @import {Form} from "./form.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { placeOf } from "./place_of.js";
import { within } from "./within.js";

const MARK = "fabric.mark";

export class Swatches {
  /** @param {Form} form */
  constructor(form) {
    this.form = form;
    this.place = /** @type {HTMLElement} */ (document.getElementById("mark-words"));
    form.addEventListener("change", (event) => {
      if (/** @type {CustomEvent} */ (event).detail === "") this.#fold();
    });
  }

  /** @returns {NodeListOf<HTMLDetailsElement>} */
  get #rows() {
    return this.form.element.querySelectorAll("details[data-row]");
  }

  /** What lay on the table before is a line each. */
  #fold() {
    for (const row of this.#rows) {
      row.open = ![...row.querySelectorAll("input")].some(({ value }) => value.trim());
    }
  }

  /** Words that nobody sees help nobody. @param {Problem[]} problems */
  open(problems) {
    for (const { field } of problems) {
      if (!within(field, "fabric.swatch", "fabric.swatches", "fabric.mark", "fabric.hung"))
        continue;
      for (let fold = placeOf(field)?.closest("details"); fold; ) {
        fold.open = true;
        fold = fold.parentElement?.closest("details");
      }
    }
  }

  /** @param {Plan | undefined} plan */
  show(plan) {
    for (const row of this.#rows) {
      const seen = plan?.fabric.observations?.find(({ field }) => field === row.dataset.row);
      const words = row.querySelector(".words");
      const number = Number(row.dataset.row?.split(".")[2]) + 1;
      if (words)
        words.textContent = seen
          ? say.numbered({ number, words: seen.words })
          : say.piece({ number });
    }
    const { line, mark_for_ball: ball } = plan?.fabric ?? {};
    const use = ball?.use;
    render(
      line
        ? html`<p class="line">${line} ${ball?.words ?? ""}</p>
          ${
            use && use !== this.form.value(MARK).trim()
              ? html`<button type="button" id="use-mark" @click=${() => this.form.set(MARK, use)}>${say.knitAtMark({ mark: use })}</button>`
              : nothing
          }`
        : nothing,
      this.place,
    );
  }
}

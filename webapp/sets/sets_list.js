/**
 * The sets of instructions that are kept: opened, copied, deleted, and brought back.
 * @import {Values} from "../page/types"
 * @import {KeptSet, KeptSets} from "./kept_sets.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/sets";
import { dayOf } from "../book/days.js";
import { titleOf } from "./kept_sets.js";

export class SetsList {
  /** @type {{ id: string, title: string, fields: Values } | null} */
  #deleted = null;

  /** Without `begin` there are no counts to begin one from. @param {{ kept: KeptSets, begin?: () => void, open: (id: string) => void, redraw: () => void }} parts */
  constructor({ kept, begin, open, redraw }) {
    this.kept = kept;
    this.begin = begin;
    this.open = open;
    this.redraw = redraw;
  }

  /** Another screen stands in its place: what was deleted is gone here too. */
  left() {
    this.#deleted = null;
  }

  template() {
    return html`<p>${this.begin ? say.setsMean : say.setsBegin}</p>
      ${this.begin ? html`<div class="row"><button type="button" class="go" id="new-set" @click=${this.begin}>${say.newSet}</button></div>` : nothing}
      <div role="status">${this.#deleted ? html`<p class="note">${say.setDeleted({ title: this.#deleted.title })}</p>` : nothing}</div>
      ${this.#deleted ? html`<div class="row"><button type="button" id="bring-back-set" @click=${() => this.#bringBack()}>${say.bringBackSet}</button></div>` : nothing}
      <ul class="kept-sets" aria-label=${say.keptSets}>${this.kept.all.map((set) => this.#row(set))}</ul>`;
  }

  /** @param {KeptSet} set */
  #row(set) {
    const { by = "", sizes = "", version = "" } = set.words;
    const title = titleOf(set);
    const begun = [by === "length" ? say.byLength : by, sizes, version].filter(Boolean);
    const copy = () => this.open(this.kept.copy(set.id, say.copyOf({ title })));
    return html`<li>
      <h3><bdi>${title}</bdi></h3>
      <p>${begun.map((one, at) => html`${at ? " · " : nothing}<bdi>${one}</bdi>`)} · ${dayOf(set.made)}</p>
      <div class="row">
        <button type="button" aria-label=${say.openSetOf({ title })} @click=${() => this.open(set.id)}>${say.openSet}</button>
        <button type="button" aria-label=${say.copySetOf({ title })} @click=${copy}>${say.copySet}</button>
        <button type="button" aria-label=${say.deleteSetOf({ title })} @click=${() => this.#remove(set)}>${say.deleteSet}</button>
      </div>
    </li>`;
  }

  /** @param {KeptSet} set */
  #remove(set) {
    this.#deleted = { id: set.id, title: titleOf(set), fields: this.kept.remove(set.id) };
    this.redraw();
    document.getElementById("bring-back-set")?.focus();
  }

  #bringBack() {
    if (this.#deleted) this.kept.restore(this.#deleted.id, this.#deleted.fields);
    this.#deleted = null;
    this.redraw();
    document.getElementById("sets-sheet-title")?.focus();
  }
}

/**
 * One wearer's page: what is next, how far the pair is, the feet, what is written of them, and how to part.
 * @import {Host, Plan, Visit, Wearer} from "./types"
 * @import {Wearers} from "./wearers.js"
 */
import { html, nothing } from "lit-html";
import * as say from "words/book";
import { short } from "../page/short.js";
import { nextSheet } from "../page/stays.js";
import { hasFoot } from "../page/values_of.js";
import { saysCloseness } from "./closeness.js";
import { hours } from "./hours.js";
import { pairShown, stateShown } from "./marks.js";
import { datesOfFoot, oldMeasures } from "./measured.js";
import { nextThing } from "./next_thing.js";
import { ParticularsForm } from "./particulars.js";
import { knittedFrom, sessionOf } from "./plans.js";
import { PlansList } from "./plans_list.js";
import { STATES, stateWords } from "./states.js";
import { earlierVisits, measures } from "./visits_list.js";

/** @typedef {import("./types").OnMachine} OnMachine */

export class WearerCard {
  #sure = false;
  #noTag = false;
  /** The pair at the machine to which one went from here. */
  #went = "";
  /** @type {Visit[] | undefined} */
  #visits;
  #id = "";
  /** @type {Map<string, OnMachine>} */
  #onMachine = new Map();
  /** Seconds that a pair took, by its session. @type {Map<string, number>} */
  #took = new Map();

  /** @param {{ host: Host, wearers: Wearers, draw: () => void, up: () => void, remove: (id: string) => void }} parts */
  constructor({ host, wearers, draw, up, remove }) {
    this.host = host;
    this.wearers = wearers;
    this.redraw = draw;
    this.up = up;
    this.remove = remove;
    this.plans = new PlansList({ host, draw });
    this.written = new ParticularsForm({ wearers, rename: host.rename, draw });
  }

  /** @param {string} id */
  async shown(id) {
    if (id !== this.#id) this.#visits = undefined;
    this.#id = id;
    this.#sure = false;
    this.#noTag = false;
    this.written.shown(id);
    this.#atMachine(id);
    await this.follow();
    document.getElementById(`to-machine-${this.#went}`)?.focus();
    this.#went = "";
  }

  async follow() {
    const id = this.#id;
    const visits = await this.wearers.visits(id);
    if (id !== this.#id || visits === this.#visits) return;
    this.#visits = visits;
    this.redraw();
  }

  /** What the machine knows of their pairs; without it the page lacks that and nothing else. @param {string} id */
  async #atMachine(id) {
    this.#took = new Map();
    const [there, took] = await Promise.all([
      this.host.onMachine().catch(() => new Map()),
      this.host.took(id).catch(() => new Map()),
    ]);
    if (id !== this.#id) return;
    this.#onMachine = there;
    this.#took = took;
    this.redraw();
  }

  /** @param {Wearer} wearer */
  template(wearer) {
    const visits = this.#visits;
    const now = visits?.at(-1);
    const plans = now?.plans ?? [];
    return html`
      <div class="book-head">
        <button type="button" id="all-wearers" class="plain-button" aria-label=${say.allWearers} @click=${this.up}><span aria-hidden="true">‹</span></button>
        <h2 id="book-title" tabindex="-1"><bdi>${short(wearer.label)}</bdi></h2>
      </div>
      ${visits ? this.#next(wearer, plans) : nothing}
      ${this.#states(wearer)}
      ${this.plans.template(plans, (plan) => hours(plan, this.#took))}
      <div class="row part-head">
        <h3>${say.feet}</h3>
        ${wearer.state === "to measure" ? nothing : html`<button type="button" class="plain-button" id="open-sheet" ?disabled=${!visits} @click=${() => this.#open(wearer)}>${say.footYarnCounts}</button>`}
      </div>
      ${visits ? measures(now?.values ?? {}, say.nothingMeasured) : html`<p class="quiet">${say.gettingMeasures}</p>`}
      ${now && oldMeasures(now) ? html`<p class="note" id="old-measures">${oldMeasures(now)}</p>` : nothing}
      <button type="button" ?disabled=${!visits} @click=${() => this.#measuring(wearer)}>${say.measuringSheet}</button>
      <h3>${say.wishes}</h3>
      ${this.written.template(wearer)}
      ${this.#tag(wearer)}
      <details class="again">
        <summary>${say.comeAgain}</summary>
        <p>${say.comeAgainMeans}</p>
        <div class="row">
          ${now && hasFoot(now.values) ? html`<button type="button" id="another-pair" @click=${() => this.#comeAgain(wearer, "foot")}>${say.anotherPair}</button>` : nothing}
          <button type="button" id="come-again" ?disabled=${!now} @click=${() => this.#comeAgain(wearer)}>${say.measureAgain}</button>
        </div>
      </details>
      ${visits && visits.length > 1 ? earlierVisits(visits.slice(0, -1), this.plans) : nothing}
      ${this.#parting(wearer)}`;
  }

  /** @param {Wearer} wearer @param {Plan[]} plans */
  #next(wearer, plans) {
    const session = plans.map(sessionOf).findLast(Boolean);
    const there = this.#onMachine.get(wearer.id);
    const now = this.#visits?.at(-1);
    return nextThing(wearer, there ?? { session }, {
      sheet: (step) => this.#open(wearer, step),
      machine: (id) => {
        this.#went = id;
        this.host.toMachine(id);
      },
      reach: (state) => this.wearers.reach(wearer.id, state),
      again: () => this.#comeAgain(wearer, ...(now && hasFoot(now.values) ? [FOOT] : [])),
    });
  }

  /** @param {Wearer} wearer */
  #states(wearer) {
    return html`<details class="states">
      <summary>${pairShown(wearer.state)} <span>${say.howFarNow({ state: stateWords(wearer.state) })}</span></summary>
      <fieldset>
        <legend>${say.howFar}</legend>
        <div class="choice">${STATES.map(
          ({
            name,
          }) => html`<label><input type="radio" name="wearer-state" value=${name} .checked=${name === wearer.state}
            @change=${() => this.wearers.reach(this.#id, name)} />${stateShown(name)}</label>`,
        )}</div>
      </fieldset>
    </details>`;
  }

  /** @param {Wearer} wearer */
  #parting(wearer) {
    return this.#sure
      ? html`<div class="line trouble" role="alert">
          <p>${say.deleteMeans({ label: short(wearer.label) })}</p>
          <div class="row"><button type="button" id="delete-surely" @click=${() => this.remove(wearer.id)}>${say.deleteThem}</button>
            <button type="button" @click=${() => this.#ask(false)}>${say.keepThem}</button></div>
        </div>`
      : html`<button type="button" class="plain-button" id="delete-wearer" @click=${() => this.#ask(true)}>${say.deleteWearer}</button>`;
  }

  /** @param {boolean} sure */
  #ask(sure) {
    this.#sure = sure;
    this.redraw();
    document.getElementById(sure ? "delete-surely" : "delete-wearer")?.focus();
  }

  /** @param {Wearer} wearer @param {"measure" | "yarn" | "counts"} [step] */
  async #open(wearer, step = "measure") {
    const visit = await this.#now(wearer);
    const none = { wearer: wearer.id, number: 1, at: Date.now(), values: this.host.machine() };
    this.host.open(wearer, visit ?? none, { old: "", step });
  }

  /** For a foot that is far away: what comes back is typed on their sheet. @param {Wearer} wearer */
  async #measuring(wearer) {
    await this.#open(wearer);
    this.host.measuringSheet();
  }

  /** The visit on hand; its sheet says what they wish. @param {Wearer} wearer */
  async #now({ id, ease }) {
    const visit = this.wearers.visit(id);
    if (ease && visit && !saysCloseness(visit)) await this.wearers.likes(id, ease);
    return this.wearers.visit(id);
  }

  /** @param {Wearer} wearer */
  #tag({ label }) {
    const write = async () => {
      this.#noTag = false;
      try {
        const visit = this.#visits?.at(-1);
        await this.host.tag(label, visit ? knittedFrom(visit) : {});
      } catch {
        this.#noTag = true;
      }
      this.redraw();
    };
    return html`<button type="button" id="wearer-tag" ?disabled=${!this.#visits} @click=${write}>${say.writeTag}</button>
      <div role="status">${this.#noTag ? html`<p class="note">${say.noTag}</p>` : nothing}</div>`;
  }

  /** A next visit, with the feet of this one or with feet to measure. @param {Wearer} wearer @param {..."foot"} foot */
  async #comeAgain(wearer, ...foot) {
    const now = await this.#now(wearer);
    if (!now) return;
    const values = nextSheet(this.host.machine(), now.values, "person", "wish", ...foot);
    const dates = foot.length ? datesOfFoot(now) : {};
    await this.wearers.comeAgain(wearer.id, values, dates);
    const visit = this.wearers.visit(wearer.id);
    if (!visit) return;
    const next = foot.length
      ? /** @type {const} */ ({ old: oldMeasures(now), step: "yarn" })
      : undefined;
    this.host.open(wearer, visit, next);
  }
}

const FOOT = /** @type {const} */ ("foot");

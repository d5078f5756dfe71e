/**
 * One wearer's page: how far the pair is, the way to the sheet, what they wish, and how to part.
 * @import {Host, Particulars, Plan, Visit, Wearer} from "./types"
 * @import {Wearers} from "./wearers.js"
 */
import { html, noChange, nothing } from "lit-html";
import * as say from "words/book";
import { short } from "../page/short.js";
import { nextSheet } from "../page/stays.js";
import { hasFoot } from "../page/values_of.js";
import { dayShown, FIRST, LAST, wrongDay } from "./days.js";
import { datesOfFoot, oldMeasures } from "./measured.js";
import { knittedFrom, sessionOf } from "./plans.js";
import { PlansList } from "./plans_list.js";
import { STATES, stateShown } from "./states.js";
import { earlierVisits, measures } from "./visits_list.js";

/** @typedef {"label" | "due" | "asked" | "price" | "length" | "colours" | "allergy"} Written */

export class WearerCard {
  #sure = false;
  #noTag = false;
  /** The pair at the machine to which one went from here. */
  #went = "";
  /** @type {Partial<Record<Written, string>>} */
  #errors = {};
  /** @type {Visit[] | undefined} */
  #visits;
  #id = "";
  /** The field that is being typed in: another tab's words for it come once it is left. @type {Written | ""} */
  #hand = "";

  /** @param {{ host: Host, wearers: Wearers, draw: () => void, remove: (id: string) => void }} parts */
  constructor({ host, wearers, draw, remove }) {
    this.host = host;
    this.wearers = wearers;
    this.redraw = draw;
    this.remove = remove;
    this.plans = new PlansList({ host, draw });
  }

  /** @param {string} id */
  async shown(id) {
    if (id !== this.#id) this.#visits = undefined;
    this.#id = id;
    this.#hand = ""; // not every browser says that a field is left because it is taken away
    this.#sure = false;
    this.#noTag = false;
    this.#errors = {};
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

  /** @param {Wearer} wearer */
  template(wearer) {
    const visits = this.#visits;
    const now = visits?.at(-1);
    return html`
      <h2 id="book-title" tabindex="-1"><bdi>${short(wearer.label)}</bdi></h2>
      <div class="halves">
        <div>
          ${visits ? measures(now?.values ?? {}, say.nothingMeasured) : html`<p class="quiet">${say.gettingMeasures}</p>`}
          ${now && oldMeasures(now) ? html`<p class="note" id="old-measures">${oldMeasures(now)}</p>` : nothing}
          <button type="button" class="go" id="open-sheet" ?disabled=${!visits} @click=${() => this.#open(wearer)}>
            ${wearer.state === "to measure" ? say.measureFoot : say.footYarnCounts}</button>
          ${this.plans.template(now?.plans ?? [], (plan) => this.#toMachine(wearer, plan))}
          <fieldset class="states">
            <legend>${say.howFar}</legend>
            <div class="choice">${STATES.map(
              ({
                name,
              }) => html`<label><input type="radio" name="wearer-state" value=${name} .checked=${name === wearer.state}
                @change=${() => this.wearers.reach(this.#id, name)} />${stateShown(name)}</label>`,
            )}</div>
          </fieldset>
          ${this.#tagButton(wearer)}
          ${this.#field("due", say.promisedFor, "", "date")}
          ${this.#field("label", say.label, "")}
        </div>
        <div>
          ${this.#field("asked", say.whoAsked, say.whoAskedWhere)}
          <div class="row quick">${[say.askedWearer, say.askedParent].map(
            (who) =>
              html`<button type="button" aria-pressed=${wearer.asked === who} class="chosen" @click=${() => this.#wasAsked(who)}>${who}</button>`,
          )}</div>
          <h3>${say.wishes}</h3>
          ${this.#field("length", say.howLong, say.howLongWhere)}
          <fieldset>
            <legend>${say.howClose}</legend>
            <div class="choice">${
              /** @type {const} */ ([
                ["snug", say.snug],
                ["", say.asUsual],
                ["loose", say.loose],
              ]).map(
                ([
                  ease,
                  words,
                ]) => html`<label><input type="radio" name="wearer-ease" .checked=${ease === wearer.ease}
                @change=${() => this.#put({ ease })} /><span>${words}</span></label>`,
              )
            }</div>
          </fieldset>
          ${this.#field("colours", say.colors, "")}
          ${this.#field("allergy", say.allergy, say.allergyWhere)}
          ${this.#field("price", say.price, say.priceWhere)}
        </div>
      </div>
      <hr class="knit" />
      <h3>${say.comeAgain}</h3>
      <p>${say.comeAgainMeans}</p>
      <div class="row">
        ${now && hasFoot(now.values) ? html`<button type="button" id="another-pair" @click=${() => this.#next(wearer, now, "foot")}>${say.anotherPair}</button>` : nothing}
        <button type="button" id="come-again" ?disabled=${!now} @click=${() => now && this.#next(wearer, now)}>${say.measureAgain}</button>
      </div>
      ${visits && visits.length > 1 ? earlierVisits(visits.slice(0, -1), this.plans) : nothing}
      <hr class="knit" />
      ${
        this.#sure
          ? html`<div class="line trouble" role="alert">
              <p>${say.deleteMeans({ label: short(wearer.label) })}</p>
              <div class="row"><button type="button" id="delete-surely" @click=${() => this.remove(wearer.id)}>${say.deleteThem}</button>
                <button type="button" @click=${() => this.#ask(false)}>${say.keepThem}</button></div>
            </div>`
          : html`<button type="button" id="delete-wearer" @click=${() => this.#ask(true)}>${say.deleteWearer}</button>`
      }`;
  }

  /** @param {Wearer} wearer @param {Plan} plan */
  #toMachine({ state }, plan) {
    const session = sessionOf(plan);
    const go = () => {
      this.#went = session ?? "";
      this.host.toMachine(this.#went);
    };
    return session && /^sock/.test(state)
      ? html`<button type="button" class="to-machine" id="to-machine-${session}" @click=${go}>${say.toMachine}</button>`
      : nothing;
  }

  /** @param {Written} name @param {string} title @param {string} where */
  #field(name, title, where, type = "text") {
    const wearer = this.wearers.get(this.#id);
    const error = this.#errors[name];
    const day = name === "due" && !error ? wrongDay(wearer?.due ?? "") : null;
    return html`<div class="field">
      <label for="wearer-${name}">${title}</label>
      ${where ? html`<p class="where" id="wearer-${name}-where">${where}</p>` : nothing}
      <div class="entry"><div class="typed"><input id="wearer-${name}" type=${type} min=${type === "date" ? FIRST : nothing} max=${type === "date" ? LAST : nothing} enterkeyhint=${type === "date" ? nothing : "next"} autocomplete="off" dir=${type === "text" ? "auto" : nothing}
        aria-describedby="${where ? `wearer-${name}-where ` : ""}wearer-${name}-error" aria-invalid=${error || day ? "true" : "false"}
        .value=${name === this.#hand ? noChange : (wearer?.[name] ?? "")} @blur=${() => this.#left()} @input=${(/** @type {any} */ event) => this.#typed(name, event.target)} /></div></div>
      <p class="error" id="wearer-${name}-error">${day ? html`${day.message} ${day.offer ? this.#offer(day.offer) : nothing}` : error}</p>
    </div>`;
  }

  /** @param {string} due a day that was likely meant */
  #offer(due) {
    const take = () => {
      this.#hand = "";
      this.#put({ due });
      document.getElementById("wearer-due")?.focus();
    };
    return html`<button type="button" class="offer" @click=${take}>${dayShown(due)}</button>`;
  }

  /** A field is left, perhaps because it is taken away just now: never in the midst of drawing. */
  #left() {
    this.#hand = "";
    queueMicrotask(() => this.redraw());
  }

  /** @param {Written} name @param {HTMLInputElement} field */
  #typed(name, field) {
    this.#hand = name;
    const { value, validity } = field;
    const wrong =
      name === "label" && !value.trim() ? say.noLabel : validity.badInput ? say.dayNotWhole : "";
    this.#errors = { ...this.#errors, [name]: wrong };
    if (wrong) return this.redraw();
    this.#put({ [name]: name === "label" ? value.trim() : value });
    if (name === "label") this.host.rename(this.#id, value.trim());
  }

  /** @param {string} asked */
  #wasAsked(asked) {
    this.#hand = "";
    this.#put({ asked });
  }

  /** @param {Partial<Particulars>} particulars */
  #put(particulars) {
    this.wearers.change(this.#id, particulars);
  }

  /** @param {boolean} sure */
  #ask(sure) {
    this.#sure = sure;
    this.redraw();
    document.getElementById(sure ? "delete-surely" : "delete-wearer")?.focus();
  }

  /** @param {Wearer} wearer */
  #open(wearer) {
    const none = { wearer: wearer.id, number: 1, at: Date.now(), values: this.host.machine() };
    this.host.open(wearer, this.#visits?.at(-1) ?? none);
  }

  /** @param {Wearer} wearer */
  #tagButton({ label }) {
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

  /** A next visit, with the feet of this one or with feet to measure. @param {Wearer} wearer @param {Visit} now @param {..."foot"} foot */
  async #next(wearer, now, ...foot) {
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

/**
 * From sock one to sock two: it is measured, or not; the calculator corrects sock two's counts, or they
 * stay; and sock two begins, or, when it is on the machine already, goes on with the new counts.
 * @import {Problem} from "../page/types"
 * @import {Kept} from "../storage/kept.js"
 * @import {Counter} from "./counter.js"
 * @import {Sheet} from "./sheet.js"
 * @import {FirstSock, Happening, Knit, State} from "./types"
 */
import { html, nothing } from "lit-html";
import * as say from "words/machine";
import { moved, view } from "./progress.js";

/** @typedef {Knit & { notes?: { field: string, text: string }[], measured: FirstSock }} Answer */

const FIELDS = /** @type {const} */ ([
  ["foot_rounds", say.footRounds, say.footRoundsWhere],
  ["length", say.footLength, say.footLengthWhere],
  ["unwashed_length", say.unwashedLength, say.unwashedLengthWhere],
  ["flat_width", say.flatWidth, say.flatWidthWhere],
]);

/**
 * The foot rounds that sock one got in truth: all of its plan, or fewer where she went on before the end.
 * @param {Knit} knit of sock one @param {Happening[]} happenings
 */
export function footRounds(knit, happenings) {
  let [last, left] = [0, false];
  for (const { sock, place, kind } of happenings) {
    if (sock !== 0 || !place || kind === "plan") continue;
    const { step, done } = view(knit, place);
    if (step?.part === "foot") [last, left] = [done, false];
    else if (last && !left) {
      left = true;
      if (kind === "done") last = knit.foot_rounds;
    }
  }
  return last || knit.foot_rounds;
}

export class SockTwo {
  /** @type {Record<string, string>} */
  #typed = {};
  /** @type {Problem[]} */
  #problems = [];
  /** @type {Answer | null} */
  #answer = null;
  #words = "";

  /**
   * @param {Counter} counter @param {Sheet} sheet
   * @param {{ ask: (call: object) => Promise<any>, measured: (request: object) => Record<string, string>, typed: Kept }} page
   *   the calculator, what was written of sock one on the page where it is this pair's, and where what is
   *   typed is kept
   */
  constructor(counter, sheet, { ask, measured, typed }) {
    this.counter = counter;
    this.sheet = sheet;
    this.ask = ask;
    this.measured = measured;
    this.kept = typed;
    this.half = `half.sock_two-${counter.session.id}`;
  }

  /** Whether measuring sock one can still change sock two. @param {State} state */
  static possible({ socks, places, ended }) {
    const left = socks[1].steps.slice(places[1].step);
    return ended[0] && left.some(({ part }) => part === "foot");
  }

  /** Whether the page has sock one's measures, which sock two's counts do not know yet. */
  get due() {
    const { state, session } = this.counter;
    return !state.measured && Object.keys(this.measured(session.request)).length > 0;
  }

  open() {
    const { state, happenings } = this.counter;
    this.#typed = {
      foot_rounds: String(footRounds(state.socks[0], happenings)),
      ...state.measured,
      ...this.measured(this.counter.session.request),
      ...this.kept.read(this.half),
    };
    this.#problems = [];
    this.#words = "";
    this.#draw();
  }

  /** @param {string} like what sock two shall be like */
  #wish(like) {
    this.#type("like", like);
    this.#work(likeId(like));
  }

  async #work(focus = "two-taught") {
    this.#answer = null;
    this.#problems = [];
    this.#words = say.workingOut;
    this.#draw();
    const typed = FIELDS.map(([name]) => [name, this.#typed[name]?.trim() ?? ""]);
    typed.push(["like", this.#typed.like ?? ""]);
    const told = Object.fromEntries(typed.filter(([, text]) => text));
    const first_sock = /** @type {FirstSock} */ ({ length: "", ...told });
    try {
      const request = { ...this.counter.session.request, first_sock };
      const answer = await this.ask({ do: "knit", request });
      this.#problems = answer.errors ?? [];
      this.#answer = answer.errors ? null : { ...answer, measured: first_sock };
      this.#words = this.#problems.some(
        ({ field }) => field === "first_sock" || !field.startsWith("first_sock."),
      )
        ? this.#problems.map(({ message, way_out }) => `${message} ${way_out}`).join(" ")
        : "";
    } catch (error) {
      this.#words = say.beginUnmeasured({
        trouble: error instanceof Error ? error.message : String(error),
      });
    }
    this.#draw();
    const [bad] = this.#problems;
    const next = document.getElementById(bad ? `machine-${bad.field.split(".")[1]}` : focus);
    next?.focus({ preventScroll: true });
    next?.scrollIntoView({ block: "center" });
  }

  /** @param {Answer | null} answer its new counts; null for those it has */
  async begin(answer) {
    const { counter } = this;
    if (answer) {
      const { measured, ...knit } = answer;
      await counter.replan(knit, measured, ({ socks, places }) => moved(socks[1], knit, places[1]));
      this.kept.write(this.half, null); // the pair has it
    }
    if (counter.state.sock !== 1) await counter.turn(1);
    this.sheet.close();
  }

  #draw() {
    const { state } = this.counter;
    const begun = state.places[1].step > 0 || state.places[1].done > 0 ? "yes" : "no";
    const answer = this.#answer;
    const rounds = state.socks[1].foot_rounds;
    this.sheet.show(
      say.measureOne,
      html`<p>${say.howToMeasure}</p>
        ${state.socks[0].off_machine ? html`<p>${state.socks[0].off_machine.words}</p>` : nothing}
        ${FIELDS.map(([name, label, whereTo]) => this.#field(name, label, whereTo))}
        <div role="status">${this.#words ? html`<p>${this.#words}</p>` : nothing}</div>
        ${
          answer
            ? html`<div class="lesson" id="two-taught" tabindex="-1">
                  ${answer.notes?.length ? answer.notes.map(({ text }) => html`<p>${text}</p>`) : html`<p>${say.twoFootRounds({ rounds: answer.foot_rounds })}</p>`}
                </div>
                ${answer.pair ? this.#wishes(answer.pair) : nothing}
                <button type="button" class="go" id="begin-two" @click=${() => this.begin(answer)}>${say.beginTwo({ begun })}</button>`
            : html`<button type="button" class="go" id="work-two" @click=${() => this.#work()}>${say.workOutTwo}</button>`
        }
        <hr class="knit">
        <p>${say.withoutMeasuring({ begun, rounds })} ${say.measureLater}</p>
        <button type="button" id="same-two" @click=${() => this.begin(null)}>${say.sameTwo({ begun })}</button>`,
    );
  }

  /** What to expect of each wish. @param {NonNullable<Knit["pair"]>} pair */
  #wishes({ wishes, why }) {
    return html`<fieldset><legend>${say.twoLike}</legend>
      <div class="choice stacked">${wishes.map(
        ({
          like,
          chosen,
          words,
        }) => html`<label><input type="radio" name="two-like" id=${likeId(like)}
          .checked=${chosen} @change=${() => this.#wish(like)} />
          <span>${say.like({ like: like === "sock one" ? "one" : like })} <small>${words}</small></span></label>`,
      )}</div>
      <p class="quiet">${why ? `${why} ` : ""}${say.fourInFive}</p></fieldset>`;
  }

  /** @param {string} name @param {string} text */
  #type(name, text) {
    this.#typed = { ...this.#typed, [name]: text };
    this.kept.write(this.half, { ...this.kept.read(this.half), [name]: text });
  }

  /** @param {string} name @param {string} label @param {string} whereTo */
  #field(name, label, whereTo) {
    const units = this.counter.session.request.units;
    const problem = this.#problems.find(({ field }) => field === `first_sock.${name}`);
    const id = `machine-${name}`;
    const counted = name === "foot_rounds";
    const type = (/** @type {Event} */ event) => {
      this.#type(name, /** @type {HTMLInputElement} */ (event.target).value);
      if (!this.#answer) return;
      this.#answer = null; // it was for what stood there before
      this.#draw();
    };
    const take = (/** @type {string} */ offer) => {
      this.#type(name, offer);
      this.#problems = this.#problems.filter((one) => one !== problem);
      this.#draw();
    };
    return html`<div class="field">
      <label for=${id}>${label}</label>
      <p class="where" id="${id}-where">${whereTo}</p>
      <div class="entry"><div class="typed ${counted ? "" : "with-unit"}">
        <input id=${id} type="text" inputmode=${counted ? "numeric" : units === "in" ? "text" : "decimal"} enterkeyhint="next" autocomplete="off"
          aria-describedby="${id}-where ${id}-error" aria-invalid=${problem ? "true" : nothing}
          .value=${this.#typed[name] ?? ""} @input=${type}>
        ${counted ? nothing : html`<span class="unit">${units}</span>`}
      </div></div>
      <p class="error" id="${id}-error">${
        problem
          ? html`${problem.message} ${problem.way_out} ${problem.offers?.map(
              (offer) =>
                html`<button type="button" class="offer" @click=${() => take(offer)}>${offer}</button>`,
            )}`
          : nothing
      }</p>
    </div>`;
  }
}

/** @param {string} like */
function likeId(like) {
  return `two-like-${like.replace(" ", "-")}`;
}

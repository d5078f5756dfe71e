/**
 * What sock one teaches for sock two: the planned count at one tap, the engine's sentence, and the way
 * to forget sock one again.
 * @import {Plan, Shown, Values} from "./types"
 * @import {Form} from "./form.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { within } from "./within.js";

/** The field of the note that says how many foot rounds sock two takes. */
export const SOCK_TWO = "first_sock.foot_rounds";
const LIKE = "first_sock.like";
const FIELDS = [
  SOCK_TWO,
  "first_sock.length",
  "first_sock.unwashed_length",
  "first_sock.flat_width",
  LIKE,
];

/** The sentence for sock two; "" where the counts are those of both socks. @param {Shown} plan */
export function wordsOfSockTwo(plan) {
  return plan.notes.find(({ field }) => field === SOCK_TWO)?.text ?? "";
}

export class FirstSock {
  #planned = "";
  #words = "";
  /** @type {Values | null} */
  #forgotten = null;

  /** @type {Values | null} what was typed before sock one was kept */
  #before = null;
  #lesson = "";
  /** @type {Values | null} */
  #keep = null;

  /** @param {Form} form */
  constructor(form) {
    this.form = form;
    this.planned = /** @type {HTMLElement} */ (document.getElementById("as-planned"));
    this.place = /** @type {HTMLElement} */ (document.getElementById("sock-two"));
    this.expected = /** @type {HTMLElement} */ (document.getElementById("off-machine"));
    this.wish = /** @type {HTMLElement} */ (document.getElementById("pair-wish"));
    form.addEventListener("change", (event) => {
      const { detail } = /** @type {CustomEvent} */ (event);
      if (detail === "" || FIELDS.includes(detail)) this.#forgotten = this.#before = null;
      this.#draw();
    });
    this.#draw();
  }

  /** @param {Plan | undefined} plan */
  show(plan) {
    this.#words = plan ? wordsOfSockTwo(plan) : "";
    this.#keep = plan?.fabric.keep ?? null;
    if (plan && !this.#words) this.#planned = String(plan.counts.foot.rounds);
    this.#wishes(plan?.pair);
    // With sock one measured the plan is that of sock two.
    if (plan?.off_machine) this.expected.textContent = plan.off_machine.words;
    this.expected.classList.toggle("over", !plan?.off_machine); // its room stays
    this.#draw();
  }

  /** What to expect of each wish for sock two. @param {Plan["pair"] | undefined} pair */
  #wishes(pair) {
    this.wish.hidden = !pair;
    for (const input of this.wish.querySelectorAll("input")) {
      const like = input.value || "foot";
      const words = pair?.wishes.find((one) => one.like === like)?.words;
      const place = input.parentElement?.querySelector("small");
      if (place && words) place.textContent = words;
    }
    const why = document.getElementById("pair-why");
    if (why) why.textContent = pair?.why ?? "";
  }

  #forget() {
    const values = this.form.values();
    this.#put({});
    this.#forgotten = values;
    this.#draw();
  }

  /** Sock one becomes one more piece of this yarn. @param {Values} keep */
  #keepIt(keep) {
    const before = this.form.values();
    const lesson = this.#words;
    const row = Object.keys(before).filter((name) => within(name, "fabric.swatches.ROW.needles"));
    // Stitches that were told per length are its width, where that was not measured; those that are guessed are not.
    const told = before.way === "gauge" && before["fabric.stitches"]?.trim();
    const width = before["first_sock.flat_width"]?.trim() || (told ? keep.flat_width : "");
    const length = before["first_sock.length"] ?? "";
    /** @type {Values} */
    const values = { ...before, way: "swatch" };
    const unwashed_length = before["first_sock.unwashed_length"] ?? "";
    const grams = before["stock.sock_one"] ?? "";
    const sizes = { length, unwashed_length, flat_width: width, grams };
    for (const [name, value] of Object.entries({ ...keep, ...sizes })) {
      if (name !== "needles" || width) values[`fabric.swatches.${row.length}.${name}`] = value;
    }
    for (const name of FIELDS) values[name] = "";
    this.form.fill(values);
    this.#before = before;
    this.#lesson = lesson;
    this.#draw();
  }

  /** @param {Values} values */
  #put(values) {
    for (const name of FIELDS) this.form.set(name, values[name] ?? "");
  }

  #draw() {
    const values = this.form.values();
    const rounds = values[SOCK_TWO]?.trim();
    const asPlanned = rounds === this.#planned;
    render(
      this.#planned
        ? html`<button type="button" aria-pressed=${asPlanned}
            @click=${() => this.form.set(SOCK_TWO, this.#planned)}>${say.asPlanned({ rounds: this.#planned })}</button>`
        : nothing,
      this.planned,
    );
    const [forgotten, before, keep] = [this.#forgotten, this.#before, this.#keep];
    render(
      html`
        ${
          this.#words
            ? html`<p class="lesson">${this.#words}</p>`
            : html`<p class="lesson pencil">${say.sockTwoWaits}</p>`
        }
        <div class="row">${
          keep
            ? html`<button type="button" id="keep-sock" @click=${() => this.#keepIt(keep)}>${say.useAsSwatch}</button> `
            : before
              ? html`<p>${say.keptAsSwatch} ${say.itsSockTwo({ lesson: this.#lesson })} <button type="button" @click=${() => this.form.fill(before)}>${say.undo}</button></p>`
              : nothing
        }
        ${
          FIELDS.some((name) => values[name]?.trim())
            ? html`<button type="button" id="forget-sock" @click=${() => this.#forget()}>${say.forgetOne}</button>`
            : forgotten
              ? html`<button type="button" id="recall-sock" @click=${() => this.#put(forgotten)}>${say.recallOne}</button>`
              : nothing
        }</div>
      `,
      this.place,
    );
  }
}

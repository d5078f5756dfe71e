/**
 * Her shelf of cylinders and yarns, ranked for this foot: asked for only while it is on screen, kept apart from
 * the plan's own fields until she takes one down.
 * @import {Draft} from "../page/draft.js"
 * @import {StepsNav} from "../page/steps_nav.js"
 * @import {Answer, Asks, Candidate, Problem, Request, Shelf, Values} from "../page/types"
 * @import {Place} from "../page/within.js"
 */
import { html, nothing, render } from "lit-html";
import * as say from "words/page";
import { FOLLOWED, Form } from "../page/form.js";
import { Newest } from "../page/newest.js";
import { ProblemsBeside } from "../page/problems_beside.js";
import { toRequest, toValues } from "../page/request.js";
import { wireRows } from "../page/rows.js";
import { within } from "../page/within.js";
import { nameOf, renderShelf } from "./shelf_list.js";

/** What a sock has of its cylinder and its yarn; a swatch stays in its fields, out of the way. */
/** @type {Place[]} */
const OWN = [
  "cylinder.slots",
  "first_sock",
  "fabric.stitches",
  "fabric.rounds",
  "fabric.yarn",
  "band",
  "fabric.strands",
  "fabric.along",
  "fabric.mark",
  "sock.heel.needles",
  "sock.heel.left",
  "sock.toe.needles",
  "sock.toe.left",
  "sock.cuff.every",
  "sock.cuff.change_after",
  "sock.cuff.change_every",
  "sock.cuff.flat_width",
  "sock.cuff.pulled_width",
  "stock.left",
];

export class ShelfScreen {
  /** @type {Request | undefined} */
  #request;

  /** @param {{engine: Asks, nav: StepsNav, draft: Draft, plan: Form, onTrouble: (sentence: string) => void}} parts */
  constructor({ engine, nav, draft, plan, onTrouble }) {
    this.nav = nav;
    this.draft = draft;
    this.plan = plan;
    this.onTrouble = onTrouble;
    this.newest = new Newest(engine);
    this.place = /** @type {HTMLElement} */ (document.getElementById("shelf-place"));
    this.undo = /** @type {HTMLElement} */ (document.getElementById("shelf-undo"));
    this.form = new Form(/** @type {HTMLFormElement} */ (document.getElementById("shelf-form")));
    this.problems = new ProblemsBeside(this.form);
    wireRows(this.form);
    this.form.fill(draft.shelf ?? {});
    this.form.addEventListener("change", (event) => {
      const { detail } = /** @type {CustomEvent} */ (event);
      if (detail !== FOLLOWED) draft.type("shelf", this.form);
      this.#work();
    });
    this.form.addEventListener("asked", () => this.place.focus());
    draft.addEventListener("change", (event) => {
      const { names, all } = /** @type {CustomEvent} */ (event).detail;
      if (names.includes("shelf")) this.form.follow(draft.shelf ?? {}, all);
    });
    nav.addEventListener("step", () => this.#work());
    // What was taken down for one wearer is neither told nor undone on the sheet of another.
    plan.addEventListener("fill", () => render(nothing, this.undo));
  }

  /** The foot has changed, perhaps. @param {Answer} answer */
  follow(answer) {
    this.#request = answer.request;
    this.#work();
  }

  /** So much is left of a yarn now. @param {number} row from 0 @param {string} left */
  put(row, left) {
    this.form.set(`shelf.yarns.${row}.left`, left);
  }

  #work() {
    this.newest.drop();
    if (this.nav.step !== "shelf" || !this.#request) return;
    const request = this.#request;
    const { shelf = {} } = toRequest(this.form.values());
    this.newest.work(async (ask) => {
      /** @type {Shelf & {errors?: Problem[]}} */
      const answer = await ask({ do: "shelf", request, shelf });
      this.problems.show(answer.errors ?? []);
      renderShelf(answer.errors ? null : answer, this.place, (one) => this.#take(one));
    }, this.onTrouble);
  }

  /** @param {Candidate} one */
  #take(one) {
    const before = this.plan.values();
    const { way, ...chosen } = toValues(one.choose);
    this.#put({ ...chosen, way, "stock.left": one.left?.text.replace("\u00a0", " ") ?? "" });
    render(
      html`<div class="line row"><p>${say.inPlanNow({ name: nameOf(one) })}</p>
        <button type="button" id="shelf-back" @click=${() => this.#put(before)}>${say.bringBackBefore}</button></div>`,
      this.undo,
    );
    this.undo.scrollIntoView({ block: "nearest" });
  }

  /** What hangs on cylinder and yarn is exchanged, all else stays as it is by now. @param {Values} values */
  #put(values) {
    const kept = Object.entries(this.plan.values()).filter(([name]) => !within(name, ...OWN));
    const own = Object.entries(values).filter(([name]) => within(name, ...OWN));
    this.plan.fill({ ...Object.fromEntries([...kept, ...own]), way: values.way });
  }
}

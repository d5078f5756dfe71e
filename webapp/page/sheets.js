/**
 * Which sheet the form shows: her own draft, a wearer's from the book, a plan that came by link, or the
 * example. A visiting sheet never overwrites her own, and both survive a reload.
 * @import {MeasuredPair} from "../machine/types"
 * @import {Asks, Problem, Values, Visit} from "./types"
 * @import {Draft} from "./draft.js"
 * @import {Form} from "./form.js"
 * @import {StepsNav} from "./steps_nav.js"
 */
import { samePlan, withSockOne } from "./pair_of_sheet.js";
import { isEmpty, toRequest, toValues } from "./request.js";
import { only } from "./stays.js";
import { isLink } from "./steps_nav.js";
import { VisitLine } from "./visit_line.js";

export class Sheets {
  /** @type {Visit | null} */
  #visit = null;

  /** @param {{form: Form, draft: Draft, nav: StepsNav, engine: Asks}} parts */
  constructor({ form, draft, nav, engine }) {
    this.form = form;
    this.draft = draft;
    this.nav = nav;
    this.engine = engine;
    this.line = new VisitLine({
      back: () => this.#leave(),
      copy: () => this.#copy(),
      bringBack: () => this.#bringBack(),
      before: () => this.draft.before !== null,
      mineEmpty: () => isEmpty(this.draft.mine ?? {}),
      visit: (visit) => this.#put(visit),
    });
  }

  /** Show what was left on the table, or the plan the address names. */
  start() {
    const { hash } = location;
    this.#visit = this.draft.visit;
    // A reload keeps her changes to a shared plan; the same link opened anew shows it as it was sent.
    const reloaded = Boolean(history.state?.step) && this.#visit?.link === hash;
    if (isLink(hash) && !reloaded) this.#visit = null;
    this.nav.addEventListener("step", () => this.line.read(this.#visit));
    this.nav.link = this.#visit?.link ?? "";
    // What was typed before the script was there stays.
    this.form.fill(this.#visit?.values ?? this.draft.mine ?? this.form.values());
    this.line.show(this.#visit);
    if (isLink(hash) && !reloaded) this.#open(hash);
    addEventListener("hashchange", () => {
      if (isLink(location.hash) && location.hash !== this.nav.link) this.#open(location.hash);
    });
  }

  /** The sheet on the table, where it is not her own. */
  get visit() {
    return this.#visit;
  }

  get visiting() {
    return this.#visit !== null;
  }

  /** For the next to measure machine and yarn stay alone; what stood there before is kept. */
  nextFoot() {
    const next = only(this.form.values(), "machine");
    this.draft.before = this.draft.mine;
    this.nav.go("measure");
    this.form.fill(next);
    this.line.show(null);
  }

  /** A wearer's sheet, come to from the book. @param {{id: string, label: string, allergy?: string, wishes?: string, values: Values}} wearer @param {import("../book/types").Next} [next] */
  openWearer({ id, label, allergy, wishes, values }, next) {
    const { old, step } = next ?? { old: "", step: "measure" };
    this.nav.link = "";
    this.nav.go(step);
    this.#visit = { kind: "wearer", id, label, allergy, wishes, old, opened: values, values };
    this.form.fill(values);
    this.line.show(this.#visit);
  }

  /** @param {string} id of a wearer whose label has changed @param {string} label */
  rename(id, label) {
    if (this.#visit?.id !== id) return;
    this.#visit = { ...this.#visit, label };
    this.draft.visit = this.#visit;
    this.line.show(this.#visit);
  }

  /**
   * Sock one was measured at the machine: the sheet that its pair was begun from says so, and no other.
   * @param {MeasuredPair} pair
   */
  learn({ wearer, request, measured }) {
    const { kind, id } = this.#visit ?? {};
    const mine = this.draft.mine ?? {};
    if (kind === "wearer" ? id === wearer : !wearer) {
      const values = this.form.values();
      if (samePlan(toRequest(values), request))
        return this.form.fill(withSockOne(values, request, measured));
    }
    // Her own page may lie beneath another sheet.
    if (!wearer && this.#visit && samePlan(toRequest(mine), request))
      this.draft.mine = withSockOne(mine, request, measured);
  }

  /** A wearer is deleted: nobody's sheet lies on the table but her own. @param {string} id */
  forget(id) {
    if (this.#visit?.id === id) this.#clear();
  }

  /** Her own page is another now: it came with a copy. @param {Values} values */
  takeMine(values) {
    this.draft.mine = values;
    if (!this.visiting) this.form.fill(values);
    this.line.show(this.#visit);
  }

  #bringBack() {
    const { mine, before } = this.draft;
    if (!before) return;
    this.draft.before = mine;
    this.form.fill(before);
    this.line.show(null);
  }

  /** Keep what is typed on the sheet it was typed on. @param {Values} values */
  keep(values) {
    if (this.#visit) {
      this.#visit = { ...this.#visit, values };
      this.draft.visit = this.#visit;
    } else {
      this.draft.mine = values;
    }
  }

  /** @param {string} link the address' fragment with its "#" */
  async #open(link) {
    this.line.opening();
    try {
      const answer = /** @type {{request?: object, errors?: Problem[]}} */ (
        await this.engine.ask({ do: "open", link })
      );
      if (location.hash !== link) return;
      if (answer.request) {
        const values = toValues(answer.request);
        this.#put({ kind: "link", link, opened: values, values });
        this.nav.go("counts");
        return;
      }
      const [{ message, way_out }] = answer.errors ?? [{ message: "", way_out: "" }];
      this.#leave();
      this.line.show(null, `${message} ${way_out}`.trim());
    } catch {
      // The link stays in the address, so that loading the page again opens it after all.
      this.line.show(null, "The shared plan could not be opened just now. Load the page again.");
    }
  }

  /** @param {Visit} visit */
  #put(visit) {
    this.#visit = visit;
    this.nav.link = visit.link ?? "";
    this.nav.settle();
    this.form.fill(visit.values);
    this.line.show(visit);
  }

  #leave() {
    this.nav.link = "";
    this.nav.settle();
    this.#clear();
  }

  #clear() {
    this.#visit = null;
    this.draft.visit = null;
    this.form.fill(this.draft.mine ?? {});
    this.line.show(null);
  }

  #copy() {
    if (!this.#visit) return;
    this.draft.before = this.draft.mine;
    this.draft.mine = this.#visit.values;
    this.#leave();
  }
}

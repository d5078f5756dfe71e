/**
 * Which sheet the form shows: her own draft, a wearer's from the book, a plan that came by link, or the
 * example. A visiting sheet never overwrites her own, and both survive a reload.
 * @import {MeasuredPair} from "../machine/types"
 * @import {Dated} from "../storage/dated.js"
 * @import {Asks, Problem, Request, Values, Visit} from "./types"
 * @import {Form} from "./form.js"
 * @import {StepsNav} from "./steps_nav.js"
 */
import * as say from "words/page";
import { change, merge } from "../storage/dated.js";
import { sameSheet } from "../storage/facts.js";
import { bundle } from "./bundle.js";
import { sameDates } from "./draft.js";
import { samePlan, withSockOne } from "./pair_of_sheet.js";
import { isEmpty, toRequest, toValues } from "./request.js";
import { only } from "./stays.js";
import { isLink } from "./steps_nav.js";
import { paper } from "./to_paper.js";
import { withItsUnit } from "./units_beside.js";
import { VisitLine } from "./visit_line.js";

export class Sheets {
  /** @type {Visit | null} */
  #visit = null;
  /** Nothing was typed, and no sheet put on the table, since the page was opened. */
  #untouched = true;

  /**
   * @param {{form: Form, draft: import("./draft.js").Draft, nav: StepsNav, engine: Asks, away: () => void}} parts
   *   away: takes the counts of the sheet before off the screen
   */
  constructor({ form, draft, nav, engine, away }) {
    this.form = form;
    this.draft = draft;
    this.nav = nav;
    this.engine = engine;
    this.away = away;
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
    // What was typed before the script was there stays.
    this.#lay(this.#visit?.values ?? this.draft.mine ?? this.form.values());
    if (isLink(hash) && !reloaded) this.#open(hash);
    addEventListener("hashchange", () => {
      if (isLink(location.hash) && location.hash !== this.nav.link) this.#open(location.hash);
    });
    this.draft.addEventListener("change", (event) =>
      this.#follow(/** @type {CustomEvent} */ (event).detail),
    );
  }

  /** @param {Values} values of the sheet that is on the table now */
  #lay(values) {
    this.nav.link = this.#visit?.link ?? "";
    this.form.fill(values);
    this.line.show(this.#visit);
  }

  /** The database has something later than what was shown at first, or another tab typed it. @param {{ names: string[], all: boolean }} what */
  #follow({ names, all }) {
    const { visit } = this.draft;
    if (names.includes("visit")) {
      if (visit && this.#visit && sameSheet(visit, this.#visit)) this.join(visit, all);
      else if (all && this.#untouched && !isLink(location.hash)) {
        this.#visit = visit;
        return this.#lay(visit?.values ?? this.draft.mine ?? {});
      }
    }
    if (names.includes("mine") && !this.#visit) this.form.follow(this.draft.mine ?? {}, all);
    if (names.includes("before")) this.line.show(this.#visit);
  }

  /** The sheet on the table, put together with the same from elsewhere. @param {Dated} other @param {boolean} [quietly] */
  join(other, quietly) {
    if (!this.#visit) return;
    const now = merge(this.#visit, other, withItsUnit);
    if (sameDates(this.#visit, now)) return;
    this.#visit = { ...this.#visit, ...now };
    this.form.follow(now.values, quietly);
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

  /** A wearer's sheet, come to from the book. @param {{id: string, label: string, allergy?: string, wishes?: string, number: number} & Dated} wearer @param {import("../book/types").Next} [next] */
  openWearer({ values, ...wearer }, next) {
    const { old, step } = next ?? { old: "", step: "measure" };
    this.nav.link = "";
    this.nav.go(step);
    this.#keepVisit({ kind: "wearer", ...wearer, old, opened: values, values });
    this.#lay(values);
  }

  /** @param {Visit | null} visit */
  #keepVisit(visit) {
    this.#untouched = false;
    this.#visit = visit;
    this.draft.visit = visit;
  }

  /** @param {string} id of a wearer whose label has changed @param {string} label */
  rename(id, label) {
    if (this.#visit?.id !== id) return;
    this.#keepVisit({ ...this.#visit, label });
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

  /** A wearer is deleted: nobody's sheet lies on the table but her own. @param {string} id @param {boolean} [elsewhere] in another tab */
  forget(id, elsewhere) {
    if (this.#visit?.id !== id) return;
    this.#clear();
    if (elsewhere) this.line.show(null, say.deletedElsewhere);
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

  /** Keep what is typed on the sheet it was typed on; returns whether that is anything else than it was. */
  keep() {
    const { form, draft } = this;
    const { usual } = form;
    let other = true;
    if (this.#visit) {
      const now = change(this.#visit, form.over(this.#visit.values), { usual });
      other = !sameDates(this.#visit, now);
      if (other) this.#keepVisit({ ...this.#visit, ...now });
    } else {
      other = draft.type("mine", form);
      // Another tab opened it since; what is typed here is later.
      if (other && draft.visit?.kind === "link") draft.visit = null;
    }
    if (other) this.#untouched = false;
    return other;
  }

  /** @param {string} link the address' fragment with its "#" */
  async #open(link) {
    this.line.opening();
    const { sent = "" } = document.documentElement.dataset;
    // What came with the link stands at once; without it the calculator's own counts come all the same.
    const part = link.startsWith("#2.") ? bundle(sent) : Promise.reject();
    let opened = false;
    part.then(({ show }) => opened || show(link, this)).catch(() => {});
    try {
      const answer = /** @type {{request?: object, set?: object, errors?: Problem[]}} */ (
        await this.engine.ask({ do: "open", link })
      );
      opened = true;
      if (location.hash !== link) return;
      part.then(({ check }) => check(answer, this)).catch(() => {});
      if (answer.set) return await this.#openSet(link, answer);
      if (answer.request) {
        const values = toValues(answer.request);
        this.#put({ kind: "link", link, opened: values, values, changed: {} });
        this.nav.go("counts");
        return;
      }
      const [{ message, way_out }] = answer.errors ?? [{ message: "", way_out: "" }];
      this.#leave();
      this.line.show(null, `${message} ${way_out}`.trim());
    } catch {
      // The link stays in the address, so that loading the page again opens it after all.
      this.line.show(null, say.sharedNotOpened);
    }
  }

  /** Instructions over sizes: the reader says first which size, or whose foot. @param {string} link @param {object} pattern */
  async #openSet(link, pattern) {
    const { sets = "", setsStyle } = document.documentElement.dataset;
    const [{ ReaderSheet }] = await Promise.all([bundle(sets, setsStyle), paper()]);
    if (location.hash !== link) return;
    this.#leave();
    new ReaderSheet({
      engine: this.engine,
      draft: this.draft,
      pattern,
      take: (/** @type {Request} */ request) => {
        const values = toValues(request);
        this.#put({ kind: "link", link, opened: values, values, changed: {} });
        this.nav.go("counts");
      },
    });
  }

  /** @param {Visit} visit */
  #put(visit) {
    this.#keepVisit(visit);
    this.nav.link = visit.link ?? "";
    this.nav.settle();
    this.#lay(visit.values);
  }

  #leave() {
    this.nav.link = "";
    this.nav.settle();
    this.#clear();
  }

  #clear() {
    this.#keepVisit(null);
    this.#lay(this.draft.mine ?? {});
  }

  #copy() {
    if (!this.#visit) return;
    this.draft.before = this.draft.mine;
    this.draft.mine = this.#visit.values;
    this.#leave();
  }
}

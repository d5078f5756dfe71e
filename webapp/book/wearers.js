/**
 * The wearers, and what happens to them: measured, planned, knitted for, come again, deleted and brought back.
 * @import {Values} from "../page/types"
 * @import {Dated, Dates} from "../storage/dated.js"
 * @import {Spelled} from "../storage/types"
 * @import {Deleted, Gone, KnittedPair, Particulars, Plan, State, Visit, Wearer} from "./types"
 */
import { hasFoot } from "../page/values_of.js";
import { filled, merge } from "../storage/dated.js";
import { persist } from "../storage/persist.js";
import { CLOSENESS, closenessOf, saysCloseness } from "./closeness.js";
import { changedTo, joined, lastOf, particulars, typedOn } from "./joined.js";
import { KeptWearers, same } from "./kept_wearers.js";
import {
  begun,
  knitted,
  knittedByHand,
  lookedAt,
  reached,
  withMeasured,
  withPlans,
} from "./plans.js";
import { wearerOf } from "./record.js";

export class Wearers extends KeptWearers {
  /** Never rejects, and never hangs. @param {Spelled} spelled */
  static async open(spelled) {
    const wearers = new Wearers(spelled);
    await wearers.flush();
    return wearers;
  }

  /** @param {string} label @param {Values} values @param {string} [id] */
  add(label, values, id = newId()) {
    this.known.set(id, wearerOf({ id, label, made: Date.now() }));
    const visit = { wearer: id, number: this.#free(id), at: Date.now(), values: filled(values) };
    this.sheets.set(id, [visit]);
    this.#sheetChanged(visit);
    persist();
    return /** @type {Wearer} */ (this.get(id));
  }

  /** @param {string} id @param {Partial<Particulars>} particulars */
  change(id, particulars) {
    const wearer = this.known.get(id);
    if (!wearer) return;
    this.known.set(id, changedTo(wearer, particulars));
    this.changed(id);
  }

  /** How close they like their socks, on the sheet of the visit on hand too. @param {string} id @param {Particulars["ease"]} ease */
  async likes(id, ease) {
    this.change(id, { ease });
    const visit = (await this.visits(id))?.at(-1);
    if (!visit || closenessOf(visit.values) === ease) return;
    const { values, changed = {} } = typedOn(visit, { ...visit.values, [CLOSENESS]: ease });
    this.#putSheet(visit, { values, changed });
    this.dispatchEvent(new CustomEvent("followed", { detail: this.visit(id) }));
  }

  /**
   * What is typed on a wearer's sheet. A wearer that the phone has lost is written anew.
   * @param {string} id @param {string} label @param {Dated & { number?: number }} sheet that of the visit on
   *   hand where no number is named
   */
  async keepSheet(id, label, sheet) {
    if (!this.known.has(id)) return void this.add(label, sheet.values, id);
    const visits = await this.visits(id);
    if (!visits) return;
    const none = { wearer: id, number: this.#free(id), at: Date.now(), values: {} };
    if (!visits.length) this.sheets.set(id, [none]);
    const visit = visits.find(({ number }) => number === sheet.number) ?? visits.at(-1);
    this.#putSheet(visit ?? none, sheet);
  }

  /** @param {Visit} visit @param {Dated} sheet */
  #putSheet({ changed = {}, ...visit }, sheet) {
    const { wearer: id, values } = visit;
    const now = { ...visit, ...merge({ values, changed }, sheet, this.spelled) };
    if (same(now, { ...visit, values, changed })) return;
    const visits = this.sheets.get(id) ?? [];
    this.sheets.set(
      id,
      visits.map((one) => (one.number === now.number ? now : one)),
    );
    this.#sheetChanged(now);
  }

  /** @param {Visit} visit */
  #sheetChanged(visit) {
    const { wearer: id, values } = visit;
    if (this.visit(id) !== visit) return this.change(id, {});
    const measured = hasFoot(values) && this.get(id)?.state === "to measure";
    this.change(id, {
      ...(measured ? { state: "measured" } : {}),
      ...(saysCloseness(visit) ? { ease: closenessOf(values) } : {}),
    });
  }

  /** The number of a next visit: not that of one that was set aside. @param {string} id */
  #free(id) {
    const visits = this.aside.filter(({ store }) => store === "visits");
    const keys = visits.map(({ key }) => /** @type {[string, number]} */ (key));
    return 1 + Math.max(0, ...keys.filter(([whose]) => whose === id).map(([, number]) => number));
  }

  /** The counts were looked at. @param {string} id @param {Plan} plan */
  async planned(id, plan) {
    await this.#plan(id, (plans) => lookedAt(plans, plan));
    if (/measure/.test(this.get(id)?.state ?? "")) this.change(id, { state: "planned" });
  }

  /** She says how far the pair is. @param {string} id @param {State} state */
  async reach(id, state) {
    this.change(id, { state });
    if (begun(state)) await this.#plan(id, knittedByHand);
  }

  /** The machine says how far the pair is. @param {KnittedPair} pair */
  async onMachine(pair) {
    const { wearer: id } = pair;
    const plans = (await this.visits(id))?.flatMap((visit) => visit.plans ?? []);
    const state = this.get(id)?.state;
    if (!plans || !state) return;
    await this.#plan(id, (those) => knitted(those, pair), pair.session);
    const visits = withMeasured(this.sheets.get(id) ?? [], pair, plans);
    this.sheets.set(id, visits);
    this.change(id, { state: reached(plans, state, pair) });
  }

  /** @param {string} id @param {(plans: Plan[]) => Plan[]} next @param {string} [session] as in `withPlans` */
  async #plan(id, next, session) {
    const visits = await this.visits(id);
    if (!visits?.length) return;
    const now = withPlans(visits, next, session);
    if (now === visits) return;
    this.sheets.set(id, now);
    this.changed(id);
  }

  /**
   * The wearer's next visit; what was measured before stays.
   * @param {string} id @param {Values} values @param {Dates} changed when the measures were taken that go along
   */
  async comeAgain(id, values, changed) {
    const visits = await this.visits(id);
    const wearer = this.known.get(id);
    if (!wearer || !visits) return;
    const { state: until, due, price } = wearer;
    const before = visits.slice(-1).map((visit) => ({ ...visit, state: until, due, price }));
    const number = Math.max(this.#free(id), (before[0]?.number ?? 0) + 1);
    const now = { wearer: id, number, at: Date.now(), values: filled(values), changed };
    this.sheets.set(id, [...visits.slice(0, -1), ...before, now]);
    const state = hasFoot(values) ? "measured" : "to measure";
    this.change(id, { state, due: "", price: "" });
  }

  /** Gone from the phone as well; what it gives can be handed to `restore`. @param {string} id @returns {Promise<Deleted | undefined>} */
  async remove(id) {
    const visits = (await this.visits(id)) ?? [];
    const wearer = this.known.get(id);
    if (!wearer) return;
    this.bury({ id, at: Date.now() });
    await this.flush();
    return { wearer, visits };
  }

  /** Deleted, here or on another phone. @param {Gone} gone */
  bury({ id, at }) {
    this.known.delete(id);
    this.sheets.delete(id);
    this.buried.set(id, at);
    this.changed(id);
  }

  /** With what another phone has of them, whose visits have the numbers that they have here. @param {Deleted} other */
  async join(other) {
    const { id } = other.wearer;
    const [here, visits] = [this.known.get(id), await this.visits(id)];
    if (!here || !visits) return this.restore(other);
    const both = joined({ wearer: here, visits }, other, this.spelled);
    this.known.set(id, both.wearer);
    this.sheets.set(id, both.visits);
    this.changed(id);
    this.dispatchEvent(new CustomEvent("followed", { detail: both.visits.at(-1) }));
  }

  /** As it is given, whatever is here. @param {Deleted} deleted */
  restore({ wearer, visits }) {
    const { id } = wearer;
    const [here, old] = [this.known.get(id), this.sheets.get(id) ?? []];
    const now = here ? changedTo({ ...wearer, ...here }, particulars(wearer)) : wearer;
    const at = this.buried.get(id) ?? -1;
    this.buried.delete(id);
    this.known.set(id, at < lastOf({ wearer: now, visits }) ? now : alive(now));
    this.sheets.set(
      id,
      visits.map((visit) => {
        const before = old.find(({ number }) => number === visit.number);
        return before ? { ...visit, ...typedOn(before, visit.values) } : visit;
      }),
    );
    this.changed(id);
  }
}

/** Brought back: newer than that it was deleted, on every phone. @param {Wearer} wearer @returns {Wearer} */
function alive(wearer) {
  return { ...wearer, changed: { ...wearer.changed, label: Date.now() } };
}

function newId() {
  const chance = crypto.getRandomValues(new Uint32Array(2));
  return [Date.now(), ...chance].map((number) => number.toString(36)).join("-");
}

/**
 * The wearers: all of them in memory, their visits once they are looked at, and written to the phone
 * soon after each change. Where the phone cannot keep them it goes on in memory, and says so.
 * @import {Values} from "../page/types"
 * @import {Dated, Dates} from "../storage/dated.js"
 * @import {Spelled} from "../storage/types"
 * @import {Aside, KnittedPair, Deleted, Gone, Particulars, Plan, State, Visit, Wearer} from "./types"
 */
import { hasFoot } from "../page/values_of.js";
import { channel } from "../storage/channel.js";
import { filled, merge } from "../storage/dated.js";
import { persist } from "../storage/persist.js";
import { forgotten, note } from "../storage/uncopied.js";
import { Unwritten } from "../storage/unwritten.js";
import { CLOSENESS, closenessOf, saysCloseness } from "./closeness.js";
import { Disk } from "./disk.js";
import {
  changedTo,
  joined,
  joinedVisits,
  joinedWearer,
  lastOf,
  particulars,
  typedOn,
} from "./joined.js";
import {
  begun,
  knitted,
  knittedByHand,
  lookedAt,
  reached,
  withMeasured,
  withPlans,
} from "./plans.js";
import { goneOf, visitOf, wearerOf } from "./record.js";

const PATIENCE = 2000; // ms
const SOON = 200; // ms

/**
 * Fires "change" after every change; "followed" (detail: the visit on hand) for what another tab typed, and
 * "gone" (detail: id) for what it deleted.
 */
export class Wearers extends EventTarget {
  /** @type {Aside[]} */
  aside = [];
  #disk = new Disk();
  #unwritten = new Unwritten((ids) => this.#write(ids), { patience: PATIENCE, soon: SOON });
  #loaded = false;
  /** @type {Map<string, Wearer>} */
  #all = new Map();
  /** @type {Map<string, Visit[]>} the last visit last */
  #visits = new Map();
  /** When those that are not here any longer were deleted, in ms. @type {Map<string, number>} */
  #gone = new Map();
  #tabs = channel("heelwise.book");
  #spelled;

  /** @param {Spelled} spelled */
  constructor(spelled) {
    super();
    this.#spelled = spelled;
    this.#unwritten.addEventListener("kept", () => this.#tell());
    this.#disk.addEventListener("lost", () => this.stuck && this.#unwritten.fail());
    this.#tabs?.addEventListener("message", ({ data }) => this.#fromOtherTab(data));
  }

  /** Never rejects, and never hangs. @param {Spelled} spelled */
  static async open(spelled) {
    const wearers = new Wearers(spelled);
    await wearers.flush();
    return wearers;
  }

  /** False while something is in memory only, or nothing could be read. */
  get kept() {
    return this.#unwritten.kept;
  }

  /** What another version of the page kept could not be taken over. */
  get stuck() {
    return this.#disk.stuck;
  }

  /** Because that one is newer. */
  get outdated() {
    return this.#disk.outdated;
  }

  /** In no order. */
  get all() {
    return [...this.#all.values()];
  }

  /** @param {string} id */
  get(id) {
    return this.#all.get(id);
  }

  /** @param {string} label @param {Values} values @param {string} [id] */
  add(label, values, id = newId()) {
    this.#all.set(id, wearerOf({ id, label, made: Date.now() }));
    const visit = { wearer: id, number: this.#free(id), at: Date.now(), values: filled(values) };
    this.#visits.set(id, [visit]);
    this.#sheetChanged(visit);
    persist();
    return /** @type {Wearer} */ (this.get(id));
  }

  /** The visit on hand, of a wearer whose visits were looked at. @param {string} id */
  visit(id) {
    return this.#visits.get(id)?.at(-1);
  }

  /** @param {string} id @param {Partial<Particulars>} particulars */
  change(id, particulars) {
    const wearer = this.#all.get(id);
    if (!wearer) return;
    this.#all.set(id, changedTo(wearer, particulars));
    this.#changed(id);
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

  /** The first one first; undefined while the phone does not hand them out. @param {string} id */
  async visits(id) {
    /** @type {Visit[]} */
    const found = [];
    try {
      const kept = this.#visits.has(id) ? [] : await this.#unwritten.soon(this.#disk.visits(id));
      for (const raw of kept) {
        this.#read("visits", [raw.wearer, raw.number], raw, () => found.push(visitOf(raw)));
      }
      if (this.#all.has(id) && !this.#visits.has(id)) this.#visits.set(id, found);
    } catch {
      this.#unwritten.fail();
    }
    return this.#visits.get(id);
  }

  /**
   * What is typed on a wearer's sheet. A wearer that the phone has lost is written anew.
   * @param {string} id @param {string} label @param {Dated & { number?: number }} sheet that of the visit on
   *   hand where no number is named
   */
  async keepSheet(id, label, sheet) {
    if (!this.#all.has(id)) return void this.add(label, sheet.values, id);
    const visits = await this.visits(id);
    if (!visits) return;
    const none = { wearer: id, number: this.#free(id), at: Date.now(), values: {} };
    if (!visits.length) this.#visits.set(id, [none]);
    const visit = visits.find(({ number }) => number === sheet.number) ?? visits.at(-1);
    this.#putSheet(visit ?? none, sheet);
  }

  /** @param {Visit} visit @param {Dated} sheet */
  #putSheet({ changed = {}, ...visit }, sheet) {
    const { wearer: id, values } = visit;
    const now = { ...visit, ...merge({ values, changed }, sheet, this.#spelled) };
    if (same(now, { ...visit, values, changed })) return;
    const visits = this.#visits.get(id) ?? [];
    this.#visits.set(
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
    const visits = withMeasured(this.#visits.get(id) ?? [], pair, plans);
    this.#visits.set(id, visits);
    this.change(id, { state: reached(plans, state, pair) });
  }

  /** @param {string} id @param {(plans: Plan[]) => Plan[]} next @param {string} [session] as in `withPlans` */
  async #plan(id, next, session) {
    const visits = await this.visits(id);
    if (!visits?.length) return;
    const now = withPlans(visits, next, session);
    if (now === visits) return;
    this.#visits.set(id, now);
    this.#changed(id);
  }

  /**
   * The wearer's next visit; what was measured before stays.
   * @param {string} id @param {Values} values @param {Dates} changed when the measures were taken that go along
   */
  async comeAgain(id, values, changed) {
    const visits = await this.visits(id);
    const wearer = this.#all.get(id);
    if (!wearer || !visits) return;
    const { state: until, due, price } = wearer;
    const before = visits.slice(-1).map((visit) => ({ ...visit, state: until, due, price }));
    const number = Math.max(this.#free(id), (before[0]?.number ?? 0) + 1);
    const now = { wearer: id, number, at: Date.now(), values: filled(values), changed };
    this.#visits.set(id, [...visits.slice(0, -1), ...before, now]);
    const state = hasFoot(values) ? "measured" : "to measure";
    this.change(id, { state, due: "", price: "" });
  }

  /** Gone from the phone as well; what it gives can be handed to `restore`. @param {string} id @returns {Promise<Deleted | undefined>} */
  async remove(id) {
    const visits = (await this.visits(id)) ?? [];
    const wearer = this.#all.get(id);
    if (!wearer) return;
    this.bury({ id, at: Date.now() });
    await this.flush();
    return { wearer, visits };
  }

  /** Deleted, here or on another phone. @param {Gone} gone */
  bury({ id, at }) {
    this.#all.delete(id);
    this.#visits.delete(id);
    this.#gone.set(id, at);
    this.#changed(id);
  }

  /** Those that were deleted and are not here again. @returns {Promise<Gone[]>} */
  async gone() {
    const found = this.#gone;
    try {
      for (const raw of await this.#unwritten.soon(this.#disk.gone())) {
        this.#read("gone", raw.id, raw, () => {
          const { id, at } = goneOf(raw);
          found.set(id, Math.max(at, found.get(id) ?? 0));
        });
      }
    } catch {
      this.#unwritten.fail();
    }
    return [...found].filter(([id]) => !this.#all.has(id)).map(([id, at]) => ({ id, at }));
  }

  /** With what another phone has of them, whose visits have the numbers that they have here. @param {Deleted} other */
  async join(other) {
    const { id } = other.wearer;
    const [here, visits] = [this.#all.get(id), await this.visits(id)];
    if (!here || !visits) return this.restore(other);
    const both = joined({ wearer: here, visits }, other, this.#spelled);
    this.#all.set(id, both.wearer);
    this.#visits.set(id, both.visits);
    this.#changed(id);
    this.dispatchEvent(new CustomEvent("followed", { detail: both.visits.at(-1) }));
  }

  /** As it is given, whatever is here. @param {Deleted} deleted */
  restore({ wearer, visits }) {
    const { id } = wearer;
    const [here, old] = [this.#all.get(id), this.#visits.get(id) ?? []];
    const now = here ? changedTo({ ...wearer, ...here }, particulars(wearer)) : wearer;
    const at = this.#gone.get(id) ?? -1;
    this.#gone.delete(id);
    this.#all.set(id, at < lastOf({ wearer: now, visits }) ? now : alive(now));
    this.#visits.set(
      id,
      visits.map((visit) => {
        const before = old.find(({ number }) => number === visit.number);
        return before ? { ...visit, ...typedOn(before, visit.values) } : visit;
      }),
    );
    this.#changed(id);
  }

  /** Delete what cannot be read. @param {Aside} one */
  async drop(one) {
    try {
      await this.#unwritten.soon(this.#disk.remove(one.store, one.key));
    } catch {
      return this.#unwritten.fail(); // it stands there still
    }
    this.aside = this.aside.filter((other) => other !== one);
    this.#tell();
  }

  /** Write now what is not written yet. */
  flush() {
    return this.#unwritten.flush();
  }

  /** @param {string[]} ids of those whose place on the phone is not as it is here */
  async #write(ids) {
    if (!this.#loaded) await this.#load();
    if (!ids.length) return;
    const kept = ids.filter((id) => this.#all.has(id));
    const gone = ids.filter((id) => !this.#all.has(id));
    const whole = kept.map((id) => ({
      wearer: /** @type {Wearer} */ (this.#all.get(id)),
      visits: this.#visits.get(id) ?? [],
    }));
    const stones = gone.map((id) => ({ id, at: this.#gone.get(id) ?? Date.now() }));
    const now = await this.#disk.write(whole, stones, (here, there) => this.#with(here, there));
    this.#tabs?.postMessage({ kept, gone });
    for (const one of now) this.#take(one);
  }

  /** Put together with what the phone holds of them. @param {Deleted} here @param {{ wearer: any, visits: any[] }} raw */
  #with(here, { wearer, visits }) {
    const { id } = here.wearer;
    const there = { ...here };
    if (wearer) this.#read("wearers", id, wearer, () => (there.wearer = wearerOf(wearer)));
    /** @type {Visit[]} */
    const found = [];
    for (const raw of visits) {
      this.#read("visits", [id, raw.number], raw, () => found.push(visitOf(raw)));
    }
    return joined(here, { ...there, visits: found }, this.#spelled);
  }

  /** Another tab has written too. @param {Deleted} written */
  #take({ wearer, visits }) {
    const { id } = wearer;
    const [here, old] = [this.#all.get(id), this.#visits.get(id)];
    if (!here) return;
    const both = joinedWearer(here, wearer);
    if (!same(both, here)) {
      this.#all.set(id, both);
      this.#tell();
    }
    const now = joinedVisits(old ?? [], visits, this.#spelled);
    if (!old || same(now, old)) return;
    this.#visits.set(id, now);
    this.#tell();
    this.dispatchEvent(new CustomEvent("followed", { detail: now.at(-1) }));
  }

  async #load() {
    await this.#disk.wearers((some) => {
      for (const raw of some) {
        const here = this.#all.get(raw.id);
        if (!here && this.#unwritten.has(raw.id)) continue; // deleted meanwhile
        this.#read("wearers", raw.id, raw, () => {
          const wearer = wearerOf(raw);
          this.#all.set(raw.id, here ? joinedWearer(here, wearer) : wearer);
        });
      }
    });
    this.#loaded = true;
    this.#tell();
  }

  /** @param {Aside["store"]} store @param {IDBValidKey} key @param {unknown} raw @param {() => void} read */
  #read(store, key, raw, read) {
    try {
      read();
    } catch {
      const [name, text] = [String(key), JSON.stringify(raw)];
      if (!this.aside.some((one) => String(one.key) === name))
        this.aside.push({ store, key, text });
      this.#tell();
    }
  }

  /** @param {{ kept: string[], gone: string[] }} ids */
  async #fromOtherTab({ kept, gone }) {
    for (const id of gone) {
      this.#all.delete(id);
      this.#visits.delete(id);
      this.dispatchEvent(new CustomEvent("gone", { detail: id }));
    }
    for (const id of kept) await this.#follow(id).catch(() => {}); // the phone is silent: it is read later
    this.#tell();
  }

  /** What another tab has written of a wearer. @param {string} id */
  async #follow(id) {
    const [raw, visits] = await Promise.all([this.#disk.wearer(id), this.#disk.visits(id)]);
    const here = this.#all.get(id);
    if (!raw || (!here && this.#unwritten.has(id))) return; // deleted here
    if (here) {
      const there = this.#with(
        { wearer: here, visits: this.#visits.get(id) ?? [] },
        { wearer: raw, visits },
      );
      return this.#take(there);
    }
    this.#read("wearers", id, raw, () => this.#all.set(id, wearerOf(raw)));
  }

  /** @param {string} id */
  #changed(id) {
    this.#unwritten.add(id);
    if (this.#all.has(id)) note("wearer", id);
    else forgotten("wearer", id);
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new Event("change"));
  }
}

/** Brought back: newer than that it was deleted, on every phone. @param {Wearer} wearer @returns {Wearer} */
function alive(wearer) {
  return { ...wearer, changed: { ...wearer.changed, label: Date.now() } };
}

/** @param {object} one @param {object} other */
function same(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}

function newId() {
  const chance = crypto.getRandomValues(new Uint32Array(2));
  return [Date.now(), ...chance].map((number) => number.toString(36)).join("-");
}

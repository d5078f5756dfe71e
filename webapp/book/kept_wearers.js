/**
 * The wearers as the phone keeps them: all of them in memory, their visits once they are looked at, and
 * written soon after each change, together with what another tab has written. Where the phone cannot keep
 * them it goes on in memory, and says so.
 * @import {Spelled} from "../storage/types"
 * @import {Aside, Deleted, Gone, Visit, Wearer} from "./types"
 */
import { channel } from "../storage/channel.js";
import { forgotten, note } from "../storage/uncopied.js";
import { Unwritten } from "../storage/unwritten.js";
import { Disk } from "./disk.js";
import { joined, joinedVisits, joinedWearer } from "./joined.js";
import { goneOf, visitOf, wearerOf } from "./record.js";

const PATIENCE = 2000; // ms
const SOON = 200; // ms

/**
 * Fires "change" after every change; "followed" (detail: the visit on hand) for what another tab typed, and
 * "gone" (detail: id) for what it deleted.
 */
export class KeptWearers extends EventTarget {
  /** @type {Aside[]} */
  aside = [];
  #disk = new Disk();
  #unwritten = new Unwritten((ids) => this.#write(ids), { patience: PATIENCE, soon: SOON });
  #loaded = false;
  /** @type {Map<string, Wearer>} @protected */
  known = new Map();
  /** @type {Map<string, Visit[]>} the last visit last @protected */
  sheets = new Map();
  /** When those that are not here any longer were deleted, in ms. @type {Map<string, number>} @protected */
  buried = new Map();
  #tabs = channel("heelwise.book");
  /** @type {Spelled} @protected */
  spelled;

  /** @param {Spelled} spelled */
  constructor(spelled) {
    super();
    this.spelled = spelled;
    this.#unwritten.addEventListener("kept", () => this.#tell());
    this.#disk.addEventListener("lost", () => this.stuck && this.#unwritten.fail());
    this.#tabs?.addEventListener("message", ({ data }) => this.#fromOtherTab(data));
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
    return [...this.known.values()];
  }

  /** @param {string} id */
  get(id) {
    return this.known.get(id);
  }

  /** The visit on hand, of a wearer whose visits were looked at. @param {string} id */
  visit(id) {
    return this.sheets.get(id)?.at(-1);
  }

  /** The first one first; undefined while the phone does not hand them out. @param {string} id */
  async visits(id) {
    /** @type {Visit[]} */
    const found = [];
    try {
      const kept = this.sheets.has(id) ? [] : await this.#unwritten.soon(this.#disk.visits(id));
      for (const raw of kept) {
        this.#read("visits", [raw.wearer, raw.number], raw, () => found.push(visitOf(raw)));
      }
      if (this.known.has(id) && !this.sheets.has(id)) this.sheets.set(id, found);
    } catch {
      this.#unwritten.fail();
    }
    return this.sheets.get(id);
  }

  /** Those that were deleted and are not here again. @returns {Promise<Gone[]>} */
  async gone() {
    const found = this.buried;
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
    return [...found].filter(([id]) => !this.known.has(id)).map(([id, at]) => ({ id, at }));
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
    const kept = ids.filter((id) => this.known.has(id));
    const gone = ids.filter((id) => !this.known.has(id));
    const whole = kept.map((id) => ({
      wearer: /** @type {Wearer} */ (this.known.get(id)),
      visits: this.sheets.get(id) ?? [],
    }));
    const stones = gone.map((id) => ({ id, at: this.buried.get(id) ?? Date.now() }));
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
    return joined(here, { ...there, visits: found }, this.spelled);
  }

  /** Another tab has written too. @param {Deleted} written */
  #take({ wearer, visits }) {
    const { id } = wearer;
    const [here, old] = [this.known.get(id), this.sheets.get(id)];
    if (!here) return;
    const both = joinedWearer(here, wearer);
    if (!same(both, here)) {
      this.known.set(id, both);
      this.#tell();
    }
    const now = joinedVisits(old ?? [], visits, this.spelled);
    if (!old || same(now, old)) return;
    this.sheets.set(id, now);
    this.#tell();
    this.dispatchEvent(new CustomEvent("followed", { detail: now.at(-1) }));
  }

  async #load() {
    await this.#disk.wearers((some) => {
      for (const raw of some) {
        const here = this.known.get(raw.id);
        if (!here && this.#unwritten.has(raw.id)) continue; // deleted meanwhile
        this.#read("wearers", raw.id, raw, () => {
          const wearer = wearerOf(raw);
          this.known.set(raw.id, here ? joinedWearer(here, wearer) : wearer);
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
      this.known.delete(id);
      this.sheets.delete(id);
      this.dispatchEvent(new CustomEvent("gone", { detail: id }));
    }
    for (const id of kept) await this.#follow(id).catch(() => {}); // the phone is silent: it is read later
    this.#tell();
  }

  /** What another tab has written of a wearer. @param {string} id */
  async #follow(id) {
    const [raw, visits] = await Promise.all([this.#disk.wearer(id), this.#disk.visits(id)]);
    const here = this.known.get(id);
    if (!raw || (!here && this.#unwritten.has(id))) return; // deleted here
    if (here) {
      const there = this.#with(
        { wearer: here, visits: this.sheets.get(id) ?? [] },
        { wearer: raw, visits },
      );
      return this.#take(there);
    }
    this.#read("wearers", id, raw, () => this.known.set(id, wearerOf(raw)));
  }

  /** @param {string} id @protected */
  changed(id) {
    this.#unwritten.add(id);
    if (this.known.has(id)) note("wearer", id);
    else forgotten("wearer", id);
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new Event("change"));
  }
}

/** @param {object} one @param {object} other */
export function same(one, other) {
  return JSON.stringify(one) === JSON.stringify(other);
}

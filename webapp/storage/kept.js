/**
 * What is typed, chosen or begun on the page, apart from the book and what was counted at the machine: kept
 * in memory, in local storage and in a database.
 *
 * The database is what a browser that is killed cannot lose; it answers some time after the page could be
 * seen. Local storage answers at once, so it has the first guess, and it is all there is where the database
 * is refused; but a browser may write it seconds late. Whatever is kept has the time of its change beside
 * it, so both are put together and neither has to be believed: the later stays, of a sheet field by field.
 * Another tab's changes come the same way.
 * @import { Fact, Kinds, Spelled } from "./types"
 */
import { channel } from "./channel.js";
import { Database } from "./database.js";
import { change } from "./dated.js";
import { factOf, later, sameFact } from "./facts.js";
import { LocalCopy } from "./local_copy.js";
import { Unwritten } from "./unwritten.js";

const NAME = "heelwise.typed";
const STORE = "kept";
const ASIDE = "aside "; // in front of the name of what cannot be read
const PATIENCE = 2000; // ms
const SOON = 50; // ms

/** @type {import("./database.js").Upgrade<unknown>[]} */
const UPGRADES = [
  (made) => {
    made.createObjectStore(STORE, { keyPath: "name" });
  },
];

/**
 * Fires "change" (detail: the names, and whether it is all the database had) when something came from
 * there or from another tab, and "stored" when whether all is kept may have changed.
 */
export class Kept extends EventTarget {
  /** @type {Map<string, Fact>} */
  #facts = new Map();
  #kinds;
  #local;
  #spelled;
  /** @type {Database<unknown>} */
  #disk = new Database(NAME, UPGRADES, {});
  /** What the database holds and nobody can read, by its name there. @type {Map<string, { words: string, text: string }>} */
  #aside = new Map();
  #loaded = false;
  #unwritten = new Unwritten((names) => this.#write(names), { patience: PATIENCE, soon: SOON });
  #tabs = channel(NAME);
  /** Kept once the database has answered, or is not waited for any longer; never rejects. @type {Promise<void>} */
  ready;
  /** Kept once the database has answered, however late; for ever pending where it is refused. @type {Promise<void>} */
  answered;
  /** @type {() => void} */
  #nowAnswered = () => {};

  /** @param {Kinds} kinds @param {Spelled} spelled */
  constructor(kinds, spelled) {
    super();
    this.#kinds = kinds;
    this.#spelled = spelled;
    this.#local = new LocalCopy(kinds);
    this.#tabs?.addEventListener("message", ({ data }) => this.#heard(data));
    this.#unwritten.addEventListener("kept", () => this.dispatchEvent(new Event("stored")));
    this.answered = new Promise((resolve) => {
      this.#nowAnswered = resolve;
    });
    this.ready = this.#unwritten.flush();
  }

  /** False while something that cannot be had anew is in memory only. */
  get stored() {
    return this.#unwritten.kept || !this.#local.refused.size;
  }

  /** What cannot be read: in words, and as it is. */
  get aside() {
    const there = [...this.#aside].map(([place, { words, text }]) => ({ place, words, text }));
    return [...this.#local.aside, ...there];
  }

  /** Delete it for good. @param {string} place of it */
  async drop(place) {
    if (!this.#aside.delete(place)) return this.#local.drop(place);
    await this.#disk.twice((database) => database.delete(STORE, place)).catch(() => {});
  }

  /** Null where there is nothing. @param {string} name @returns {any} */
  read(name) {
    return this.#fact(name)?.value ?? null;
  }

  /** Names that begin so, of which there is something. @param {string} beginning */
  names(beginning) {
    const all = new Set([...this.#facts.keys(), ...this.#local.names()]);
    return [...all].filter((name) => name.startsWith(beginning) && this.read(name) !== null);
  }

  /** @param {string} name @param {any} value null where there is nothing any longer */
  write(name, value) {
    const fact = { at: Math.max(Date.now(), (this.#fact(name)?.at ?? 0) + 1), value };
    this.#put(name, fact);
    if (this.#kinds[name]?.guess) return;
    this.#tabs?.postMessage([name, fact]);
    this.#unwritten.add(name);
  }

  /** @param {string} name @returns {Fact | undefined} */
  #fact(name) {
    if (!this.#facts.has(name)) {
      const fact = this.#local.read(name);
      if (fact) this.#facts.set(name, fact);
    }
    return this.#facts.get(name);
  }

  /** @param {string} name @param {Fact} fact */
  #put(name, fact) {
    this.#facts.set(name, fact);
    this.#local.write(name, fact);
    this.dispatchEvent(new Event("stored"));
  }

  /** Put together with what is here. @param {string} name @param {Fact} fact @returns {boolean} whether that changes it */
  #take(name, fact) {
    const here = this.#fact(name);
    const now = here ? later(here, fact, this.#spelled) : fact;
    if (here && sameFact(here, now)) return false;
    this.#put(name, now);
    return true;
  }

  /** From another tab. @param {[string, any]} message */
  #heard([name, raw]) {
    const fact = this.#read(name, raw);
    if (!fact || !this.#take(name, fact)) return;
    if (!sameFact(fact, /** @type {Fact} */ (this.#fact(name)))) this.#unwritten.add(name);
    this.#tell([name], false);
  }

  /** @param {string[]} names @param {boolean} all */
  #tell(names, all) {
    this.dispatchEvent(new CustomEvent("change", { detail: { names, all } }));
  }

  /** @param {string[]} names */
  async #write(names) {
    if (!this.#loaded) await this.#load();
    if (!names.length) return;
    /** @type {Map<string, Fact>} */
    const now = new Map();
    await this.#disk.twice(async (database) => {
      const writing = database.transaction(STORE, "readwrite", { durability: "strict" });
      const store = writing.objectStore(STORE);
      for (const name of names) {
        const here = this.#fact(name);
        if (!here) continue;
        const there = this.#read(name, await store.get(name));
        const fact = there ? later(here, there, this.#spelled) : here;
        now.set(name, fact);
        await store.put({ name, ...fact });
      }
      await writing.done;
    });
    const others = [...now].filter(([name, fact]) => this.#take(name, fact));
    if (others.length)
      this.#tell(
        others.map(([name]) => name),
        false,
      );
  }

  /** Put together what the database has and what was here before it answered. */
  async #load() {
    /** @type {any[]} */
    let all = [];
    await this.#disk.twice(async (database) => {
      const reading = database.transaction(STORE, "readwrite", { durability: "strict" });
      all = await reading.store.getAll();
      for (const raw of all) await this.#settle(reading.store, raw);
      await reading.done;
    });
    this.#loaded = true;
    const known = all.flatMap((raw) => {
      const fact = this.#read(raw.name, raw);
      return fact ? [{ name: raw.name, fact }] : [];
    });
    const changed = known.filter(({ name, fact }) => this.#take(name, this.#since(name, fact)));
    for (const name of new Set([...this.#local.names(), ...this.#facts.keys()])) {
      const there = known.find((one) => one.name === name)?.fact;
      const here = this.#fact(name);
      if (!here || this.#kinds[name]?.guess || (there && sameFact(here, there))) continue;
      this.#unwritten.add(name);
    }
    this.#tell(
      changed.map(({ name }) => name),
      true,
    );
    this.#nowAnswered();
  }

  /** What cannot be read makes room for what is typed next; what is over goes. @param {any} store @param {any} raw */
  async #settle(store, raw) {
    const { name } = raw;
    if (name.startsWith(ASIDE)) return this.#tellAside(name, raw);
    if (!this.#kinds[name.split(".")[0]]) return; // another version's
    const fact = this.#read(name, raw);
    const over = fact?.value === null && name.includes(".") && !this.#local.read(name);
    if (over || !fact) await store.delete(name);
    if (fact || !this.#kinds[name.split(".")[0]].words) return; // or it can be had anew
    const place = `${ASIDE}${Date.now()} ${name}`;
    await store.put({ ...raw, name: place });
    this.#tellAside(place, raw);
  }

  /** @param {string} place @param {any} raw */
  #tellAside(place, raw) {
    const kind = this.#kinds[place.split(" ")[2]?.split(".")[0]];
    this.#aside.set(place, { words: kind?.words ?? "", text: JSON.stringify(raw.value) ?? "" });
  }

  /**
   * What local storage has of a sheet under the same date, and otherwise, a version of the page wrote that
   * knows no dates: since then. @param {string} name @param {Fact} there @returns {Fact}
   */
  #since(name, there) {
    const here = this.#local.read(name);
    if (!this.#kinds[name]?.flat || !here?.value || !there.value) return there;
    const { values, changed } = here.value;
    const odd = [...new Set([...Object.keys(values), ...Object.keys(there.value.values)])].filter(
      (field) =>
        (changed[field] ?? 0) === (there.value.changed[field] ?? 0) &&
        (values[field] ?? "") !== (there.value.values[field] ?? ""),
    );
    const now = { ...there.value.values };
    for (const field of odd) now[field] = values[field] ?? "";
    return odd.length ? { ...there, value: change(there.value, now) } : there;
  }

  /** @param {string} name @param {any} raw @returns {Fact | undefined} */
  #read(name, raw) {
    const kind = this.#kinds[name.split(".")[0]];
    return raw && kind ? factOf(raw, kind) : undefined;
  }
}

// Versions of the book's database that never were, on the real database.js: what a test upgrades to.
import { visitOf, wearerOf } from "../../webapp/book/record.js";
import { Database } from "../../webapp/storage/database.js";

const first = (made) => {
  made.createObjectStore("wearers", { keyPath: "id" });
  made.createObjectStore("visits", { keyPath: ["wearer", "number"] });
};

/** Each wearer gets a number; what else is done to one of them is the test's. */
const numbered = (more) => async (_, transaction) => {
  const store = transaction.objectStore("wearers");
  for (const [at, one] of (await store.getAll()).entries()) {
    await store.put({ ...one, at });
    await more(store, one, at);
  }
};

const STEPS = {
  good: numbered(() => {}),
  "throws half-way": numbered((_, __, at) => {
    if (at === 1) throw new Error("half-way");
  }),
  "is refused half-way": numbered((store, one, at) => at === 1 && store.add(one)),
  "loses one": numbered((store, one, at) => at === 1 && store.delete(one.id)),
  "spoils one": numbered((store, one, at) => at === 1 && store.put({ ...one, at: "?" })),
};

const readers = {
  wearers: (raw) => {
    if (!Number.isInteger(raw.at)) throw new TypeError("no number");
    return wearerOf(raw);
  },
  visits: visitOf,
};

/** Open the book as a next version would; what came of it. @param {keyof STEPS} step */
async function next(step) {
  const database = new Database("heelwise.book", [first, STEPS[step]], readers);
  globalThis.next = database;
  try {
    const wearers = await database.twice((opened) => opened.getAll("wearers"));
    return { stuck: database.stuck, wearers };
  } catch (error) {
    return { stuck: database.stuck, error: error.name };
  }
}

globalThis.bench = { next };

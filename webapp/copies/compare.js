/**
 * What a copy would change here: what is new, what has gone further or was changed later, what was deleted,
 * and what is other than here, for her to choose. Nothing that nobody can date goes unasked.
 * @import {Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 * @import {Kept} from "../machine/types"
 * @import {Change, Found, Machine, Read} from "./types"
 */
import { canonical } from "./canonical.js";
import { change, made } from "./change.js";
import { sheetChanges } from "./compare_sheets.js";
import { wearerChanges } from "./compare_wearers.js";
import { ofEnded, ofPair, ofSettings, rows } from "./rows.js";
import { SETTINGS } from "./words.js";

/** @param {Read} read @param {{ host: Host, wearers: Wearers }} here @returns {Promise<Found>} */
export async function compare(read, { host, wearers }) {
  const { copy, unread, lacking, damaged } = read;
  const book = await wearerChanges(read, host, wearers);
  const found = [...book.found, ...sheetChanges(read, host)];
  if (copy.pairs.length || copy.ended.length || copy.gone.pairs.length || copy.settings) {
    found.push(...(await machineChanges(read, await host.knitting())));
  }
  return {
    changes: found.filter((one) => typeof one !== "string"),
    same: found.filter((one) => typeof one === "string"),
    stones: book.stones,
    unread,
    lacking,
    damaged,
  };
}

/** @param {Read} read @param {Machine} machine */
async function machineChanges({ copy, altered }, machine) {
  const { pairs, ended, settings, gone } = copy;
  const here = await machine.copy();
  const deleted = new Map(here.gone.map(({ id, at }) => [id, at]));
  const known = new Map(here.ended.map((one) => [one.id, one]));
  const found = pairs.map((file) => {
    // Here it is knitted by now, or the file is of a version that kept all that happened in it.
    const last = known.get(file.session.id)?.last ?? 0;
    if (last && last >= file.happenings.length) return /** @type {Change["kind"]} */ ("pair");
    const mine = here.pairs.find(({ session }) => session.id === file.session.id) ?? null;
    const further = mine && beginning(mine, file);
    if (mine && beginning(file, mine)) return /** @type {Change["kind"]} */ ("pair");
    const one = change("pair", file.session.label, mine, file, {
      altered: altered.has(file),
      rows: (other) => rows(ofPair(other, machine), ofPair(file, machine)),
      put: ({ take }) => {
        if (take === "file") return machine.take(file, Boolean(mine) && !further);
      },
    });
    if (further && typeof one === "object") Object.assign(one, { how: "further", take: "file" });
    return sinceDeleted(one, deleted.get(file.session.id), lastOf(file));
  });
  for (const file of ended) {
    const begun = here.pairs.find(({ session }) => session.id === file.id);
    const further = begun !== undefined && begun.happenings.length <= file.last;
    const one = change("pair", file.label, known.get(file.id) ?? null, file, {
      altered: altered.has(file),
      rows: (mine) => rows(ofEnded(mine), ofEnded(file)),
      put: ({ take }) => {
        if (take === "file") return machine.takeEnded(file);
      },
    });
    if (further && typeof one === "object") Object.assign(one, { how: "further", take: "file" });
    const now = sinceDeleted(one, deleted.get(file.id), file.ended);
    found.push(begun && !further ? "pair" : now);
  }
  for (const { id, at } of gone.pairs) {
    const under = here.pairs.find(({ session }) => session.id === id);
    const done = known.get(id);
    const last = under ? lastOf(under) : done?.ended;
    if (last === undefined || at < last) continue;
    const title = under?.session.label ?? done?.label ?? "";
    const put = (/** @type {Change} */ { take }) =>
      take === "file" ? machine.remove(id, at) : undefined;
    found.push(made({ kind: "pair", title, how: "gone", altered: false, put }));
  }
  if (!settings || !Object.keys(settings).length) return found;
  const one = change("settings", SETTINGS, here.settings, settings, {
    altered: altered.has(settings),
    rows: (mine) => rows(ofSettings(mine), ofSettings(settings)),
    put: ({ take }) => {
      if (take === "file") machine.set(settings);
    },
  });
  return [...found, one];
}

/** When something happened in a pair last, in ms. @param {Kept} kept */
function lastOf({ session, happenings }) {
  return Math.max(session.began, ...happenings.map(({ at }) => at));
}

/**
 * What is new to this phone and was deleted here is left out, unless she chooses otherwise.
 * @param {Change | Change["kind"]} one @param {number | undefined} at when it was deleted here @param {number} last when anything happened in it last
 */
function sinceDeleted(one, at, last) {
  if (typeof one === "object" && one.how === "new" && at !== undefined && at >= last) {
    Object.assign(one, { how: "deleted", take: "here" });
  }
  return one;
}

/** Whether a pair is as another was once; put away or not, and whoever it is for. @param {Kept} early @param {Kept} late */
function beginning(early, late) {
  const [one, other] = [early, late].map(({ session }) =>
    canonical({ ...session, away: 0, wearer: 0, who: 0 }),
  );
  return (
    one === other &&
    early.happenings.every(
      (happening, at) => canonical(happening) === canonical(late.happenings[at]),
    )
  );
}

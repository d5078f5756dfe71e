/**
 * What a copy would change here: what is new, what has gone further, and what is other than here, for
 * her to choose. Nothing of what is here goes unasked.
 * @import {Deleted, Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 * @import {Kept} from "../machine/types"
 * @import {Values} from "../page/types"
 * @import {Change, Found, Machine, Read, Row, SheetName} from "./types"
 */
import { canonical } from "./canonical.js";
import { ofEnded, ofPair, ofSettings, ofWearer, rows } from "./rows.js";
import { titleOf } from "./titles.js";
import { Unreadable } from "./unreadable.js";
import { visitsOf } from "./visits.js";
import { SETTINGS, SHEETS } from "./words.js";

// What always has a value in its form says nothing of her own.
const CHOSEN = /^(units|way|who|chart\.by|person\.shoe_size\.system)$|\.kind$/;

/** @param {Read} read @param {{ host: Host, wearers: Wearers }} here @returns {Promise<Found>} */
export async function compare(read, { host, wearers }) {
  const { copy, unread, lacking, damaged } = read;
  const found = [...(await wearerChanges(read, host, wearers)), ...sheetChanges(read, host)];
  if (copy.pairs.length || copy.ended.length || copy.settings) {
    found.push(...(await machineChanges(read, await host.knitting())));
  }
  return {
    changes: found.filter((one) => typeof one !== "string"),
    same: found.filter((one) => typeof one === "string"),
    unread,
    lacking,
    damaged,
  };
}

/** @param {Read} read @param {Host} host @param {Wearers} wearers */
async function wearerChanges({ copy: { book }, altered }, host, wearers) {
  /** @type {(Change | Change["kind"])[]} */
  const found = [];
  const ids = book.map(({ wearer }) => wearer.id).filter((id) => wearers.get(id));
  const all = await visitsOf(wearers, ids);
  if (!all) {
    throw new Unreadable(
      "The phone does not hand out all visits just now, so nothing can be compared. Pick the file again in a while; nothing was taken in.",
    );
  }
  for (const file of book) {
    const { id, label } = file.wearer;
    const wearer = wearers.get(id);
    const here = wearer ? { wearer, visits: all.get(id) ?? [] } : null;
    found.push(
      change("wearer", label, here, file, {
        altered: altered.has(file),
        rows: (mine) => rows(ofWearer(mine), ofWearer(file)),
        put: (one) => {
          // A sheet that still lies on the table would be written over the file's.
          if (one.take === "file") host.replaced(id);
          wearers.restore(here ? joined(here, file, one.take) : file);
        },
      }),
    );
  }
  return found;
}

/** @param {Read} read @param {Host} host */
function sheetChanges({ copy: { sheets }, altered }, host) {
  const here = host.sheets.copy();
  const names = /** @type {SheetName[]} */ (Object.keys(SHEETS));
  return names.flatMap((name) => {
    const [mine, file] = [typed(here[name]), typed(sheets[name])];
    if (!file) return [];
    return change("sheet", SHEETS[name], mine, file, {
      altered: altered.has(sheets[name]),
      rows: (one) => rows(new Map(Object.entries(one)), new Map(Object.entries(file)), titleOf),
      put: ({ take }) => {
        if (take === "file") host.sheets.take(name, file);
      },
    });
  });
}

/** @param {Read} read @param {Machine} machine */
async function machineChanges({ copy: { pairs, ended, settings }, altered }, machine) {
  const here = await machine.copy();
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
    return one;
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
    found.push(begun && !further ? "pair" : one);
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

/**
 * @template T @param {Change["kind"]} kind @param {string} title @param {T | null} here @param {T} file
 * @param {{ altered: boolean, rows: (here: T) => Row[], put: (change: Change) => Promise<void> | void }} how
 * @returns {Change | Change["kind"]} its kind alone where both are the same
 */
function change(kind, title, here, file, { altered, rows: differing, put }) {
  if (here && canonical(here) === canonical(file)) return kind;
  /** @type {Change} */
  const one = {
    kind,
    title,
    how: here ? "other" : "new",
    altered,
    rows: here ? differing(here) : [],
    take: here ? "here" : "file",
    put: () => put(one),
  };
  return one;
}

/** Of the visits none is dropped: where both have one, it is the chosen one's. @param {Deleted} here @param {Deleted} file @param {Change["take"]} take @returns {Deleted} */
function joined(here, file, take) {
  const [first, other] = take === "file" ? [file, here] : [here, file];
  const visits = new Map([...other.visits, ...first.visits].map((visit) => [visit.number, visit]));
  return {
    wearer: first.wearer,
    visits: [...visits.values()].sort((one, two) => one.number - two.number),
  };
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

/** What she has typed of a sheet; null where that is nothing. @param {Values | null} values @returns {Values | null} */
function typed(values) {
  const own = Object.entries(values ?? {}).filter(([, value]) => value.trim());
  return own.some(([name]) => !CHOSEN.test(name)) ? Object.fromEntries(own) : null;
}

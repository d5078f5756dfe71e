/**
 * What a copy would change in the book.
 * @import {Deleted, Gone, Host} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 * @import {Change, Read} from "./types"
 */
import * as say from "words/copies";
import { joined, lastOf } from "../book/joined.js";
import { canonical } from "./canonical.js";
import { change, made } from "./change.js";
import { aligned, together, undated } from "./joining.js";
import { ofWearer, rows } from "./rows.js";
import { Unreadable } from "./unreadable.js";
import { visitsOf } from "./visits.js";

/** @param {Read} read @param {Host} host @param {Wearers} wearers @returns {Promise<{ found: (Change | Change["kind"])[], stones: Gone[] }>} */
export async function wearerChanges(read, host, wearers) {
  const { book, gone } = read.copy;
  const ids = [...book.map(({ wearer }) => wearer.id), ...gone.wearers.map(({ id }) => id)];
  const all = await visitsOf(
    wearers,
    ids.filter((id) => wearers.get(id)),
  );
  if (!all) {
    throw new Unreadable(say.nothingCompared);
  }
  const stones = new Map((await wearers.gone()).map(({ id, at }) => [id, at]));
  /** @param {string} id @returns {Deleted | null} */
  const hereOf = (id) => {
    const wearer = wearers.get(id);
    return wearer ? { wearer, visits: all.get(id) ?? [] } : null;
  };
  const found = book.map((file) => {
    const here = hereOf(file.wearer.id);
    if (!here) return absent(file, stones.get(file.wearer.id), read, wearers);
    const dated = read.dated && !read.altered.has(file);
    return dated ? byDates(here, file, host, wearers) : other(here, file, { read, host, wearers });
  });
  const buried = gone.wearers.flatMap((stone) => {
    const here = hereOf(stone.id);
    return here && stone.at >= lastOf(here) ? bury(here, stone, host, wearers) : [];
  });
  const fresh = gone.wearers.filter(({ id, at }) => !wearers.get(id) && at > (stones.get(id) ?? 0));
  return { found: [...found, ...buried], stones: fresh };
}

/** New here, or deleted here since. @param {Deleted} file @param {number | undefined} at when it was deleted @param {Read} read @param {Wearers} wearers */
function absent(file, at, { altered }, wearers) {
  const deleted = at !== undefined && at >= lastOf(file);
  return made({
    kind: "wearer",
    title: file.wearer.label,
    how: deleted ? "deleted" : "new",
    take: deleted ? "here" : "file",
    altered: altered.has(file),
    put: ({ take }) => {
      if (take === "file") wearers.restore(file);
    },
  });
}

/** Deleted on the other phone. @param {Deleted} here @param {Gone} stone @param {Host} host @param {Wearers} wearers */
function bury(here, stone, host, wearers) {
  return made({
    kind: "wearer",
    title: here.wearer.label,
    how: "gone",
    altered: false,
    put: ({ take }) => {
      if (take === "here") return;
      wearers.bury(stone);
      host.forget(stone.id);
    },
  });
}

/** Put together by the dates. @param {Deleted} here @param {Deleted} theirs @param {Host} host @param {Wearers} wearers @returns {Change | Change["kind"]} */
function byDates(here, theirs, { spelled }, wearers) {
  const file = aligned(here, theirs);
  const [mine, both] = /** @type {const} */ (["here", "file"]).map((take) =>
    together(here, file, take, spelled),
  );
  const open = undated(here, file);
  if (!open && canonical(both) === canonical(joined(here, here, spelled))) return "wearer";
  return made({
    kind: "wearer",
    title: here.wearer.label,
    how: open ? "other" : "newer",
    take: open ? "here" : "file",
    altered: false,
    rows: rows(ofWearer(open ? mine : here), ofWearer(both)),
    put: ({ take }) => wearers.join(together(here, file, take, spelled)),
  });
}

/** Of a file that does not say when. @param {Deleted} here @param {Deleted} file @param {{ read: Read, host: Host, wearers: Wearers }} parts */
function other(here, file, { read, host, wearers }) {
  return change("wearer", file.wearer.label, here, file, {
    altered: read.altered.has(file),
    rows: (mine) => rows(ofWearer(mine), ofWearer(file)),
    put: ({ take }) => {
      // A sheet that still lies on the table would be written over the file's.
      if (take === "file") host.replaced(file.wearer.id);
      wearers.restore(chosen(here, file, take));
    },
  });
}

/** Of the visits none is dropped: where both have one, it is the chosen one's. @param {Deleted} here @param {Deleted} file @param {Change["take"]} take @returns {Deleted} */
function chosen(here, file, take) {
  const [first, second] = take === "file" ? [file, here] : [here, file];
  const visits = new Map([...second.visits, ...first.visits].map((visit) => [visit.number, visit]));
  return {
    wearer: first.wearer,
    visits: [...visits.values()].sort((one, two) => one.number - two.number),
  };
}

/**
 * What a copy would change of what is typed apart from the book.
 * @import {Host} from "../book/types"
 * @import {Values} from "../page/types"
 * @import {Dated} from "../storage/dated.js"
 * @import {Change, Read, SheetName} from "./types"
 */
import { CHOICES } from "../page/fields.js";
import { inAnyRow } from "../page/within.js";
import { merge } from "../storage/dated.js";
import { canonical } from "./canonical.js";
import { change, made } from "./change.js";
import { sheetTogether, undatedSheet } from "./joining.js";
import { rows } from "./rows.js";
import { titleOf } from "./titles.js";
import { SHEETS } from "./words.js";

// What always has a value in its form says nothing of its own; the first three are the form's alone.
const CHOSEN = new Set(["way", "who", "chart.by", ...CHOICES]);
CHOSEN.delete("cylinder.carrier"); // has none until somebody chooses it

/** @param {Read} read @param {Host} host @returns {(Change | Change["kind"])[]} */
export function sheetChanges({ copy: { sheets, dates }, altered, dated }, host) {
  const here = host.sheets.copy();
  const names = /** @type {SheetName[]} */ (Object.keys(SHEETS));
  return names.flatMap((name) => {
    const [mine, file] = [typed(here[name]), typed(sheets[name])];
    const changed = dates[name];
    const known = dated && changed && !altered.has(sheets[name]);
    if (name !== "before" && known && (mine ? Object.keys(changed).length : file)) {
      return byDates(name, { values: sheets[name] ?? {}, changed }, host, !mine);
    }
    if (!file) return [];
    return change("sheet", SHEETS[name], mine, file, {
      altered: altered.has(sheets[name]),
      rows: (one) => differing(one, file),
      put: ({ take }) => {
        if (take === "file") host.sheets.take(name, file);
      },
    });
  });
}

/**
 * Put together by the dates.
 * @param {Exclude<SheetName, "before">} name @param {Dated} file @param {Host} host
 * @param {boolean} fresh nothing of it is typed here @returns {Change | Change["kind"]}
 */
function byDates(name, file, { sheets, spelled }, fresh) {
  const here = sheets.dated(name);
  const [mine, both] = /** @type {const} */ (["here", "file"]).map((take) =>
    sheetTogether(here, file, take, spelled),
  );
  const open = !fresh && undatedSheet(here, file);
  if (!open && canonical(both) === canonical(merge(here, here, spelled))) return "sheet";
  return made({
    kind: "sheet",
    title: SHEETS[name],
    how: fresh ? "new" : open ? "other" : "newer",
    take: open ? "here" : "file",
    altered: false,
    rows: differing(open ? mine.values : here.values, both.values),
    put: ({ take }) => sheets.join(name, sheetTogether(here, file, take, spelled)),
  });
}

/** @param {Values} one @param {Values} other */
function differing(one, other) {
  return rows(new Map(Object.entries(one)), new Map(Object.entries(other)), titleOf);
}

/** What she has typed of a sheet; null where that is nothing. @param {Values | null} values @returns {Values | null} */
function typed(values) {
  const own = Object.entries(values ?? {}).filter(([, value]) => value.trim());
  return own.some(([name]) => !CHOSEN.has(inAnyRow(name))) ? Object.fromEntries(own) : null;
}

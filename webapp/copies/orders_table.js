/**
 * The orders as a table for a spreadsheet, one wearer a line.
 * @import {Wearer} from "../book/types"
 */
import * as say from "words/copies";
import { stateWords } from "../book/states.js";
import { csv } from "../page/csv.js";

const COLUMNS = /** @type {const} */ ([
  "label",
  "state",
  "due",
  "length",
  "ease",
  "colours",
  "allergy",
  "price",
  "deposit",
  "pairs",
  "contact",
  "asked",
]);

/** @param {Wearer[]} wearers */
export function ordersTable(wearers) {
  return csv([
    COLUMNS.map((name) => say.column({ name })),
    ...wearers.map((one) =>
      COLUMNS.map((name) => (name === "state" ? stateWords(one.state) : one[name])),
    ),
  ]);
}

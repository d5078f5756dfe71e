/**
 * The orders as a table for a spreadsheet, one wearer a line.
 * @import {Wearer} from "../book/types"
 */
import * as say from "words/copies";
import { stateWords } from "../book/states.js";

const COLUMNS = /** @type {const} */ ([
  "label",
  "state",
  "due",
  "length",
  "ease",
  "colours",
  "allergy",
  "price",
  "asked",
]);

/** RFC 4180, with the mark that makes spreadsheets read it as UTF-8. @param {Wearer[]} wearers */
export function ordersTable(wearers) {
  const lines = [
    COLUMNS.map((name) => say.column({ name })),
    ...wearers.map((one) =>
      COLUMNS.map((name) => (name === "state" ? stateWords(one.state) : one[name])),
    ),
  ];
  return `\ufeff${lines.map((line) => line.map(cell).join(",")).join("\r\n")}\r\n`;
}

/** What a spreadsheet would work out as a formula is made a text (OWASP, CSV injection). @param {string} text */
function cell(text) {
  const harmless = /^\s*[=+\-@＝＋－＠\t\r\n]/.test(text) ? `'${text}` : text;
  return `"${harmless.replaceAll('"', '""')}"`;
}

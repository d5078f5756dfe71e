/**
 * The orders as a table for a spreadsheet, one wearer a line.
 * @import {Wearer} from "../book/types"
 */

const COLUMNS = /** @type {const} */ ([
  ["label", "Label"],
  ["state", "How far"],
  ["due", "Promised for"],
  ["length", "How long"],
  ["ease", "How close"],
  ["colours", "Colours"],
  ["allergy", "Allergy"],
  ["price", "Price"],
  ["asked", "Who was asked"],
]);

/** RFC 4180, with the mark that makes spreadsheets read it as UTF-8. @param {Wearer[]} wearers */
export function ordersTable(wearers) {
  const lines = [
    COLUMNS.map(([, title]) => title),
    ...wearers.map((one) => COLUMNS.map(([name]) => one[name])),
  ];
  return `\ufeff${lines.map((line) => line.map(cell).join(",")).join("\r\n")}\r\n`;
}

/** What a spreadsheet would work out as a formula is made a text (OWASP, CSV injection). @param {string} text */
function cell(text) {
  const harmless = /^\s*[=+\-@＝＋－＠\t\r\n]/.test(text) ? `'${text}` : text;
  return `"${harmless.replaceAll('"', '""')}"`;
}

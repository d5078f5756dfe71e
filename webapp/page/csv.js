/** A table as a file for a spreadsheet: RFC 4180, with the mark that makes spreadsheets read it as UTF-8. */

/** @param {(string | number | null)[][]} lines */
export function csv(lines) {
  return `\ufeff${lines.map((line) => line.map(cell).join(",")).join("\r\n")}\r\n`;
}

/** What a spreadsheet would work out as a formula is made a text (OWASP, CSV injection). @param {string | number | null} value */
function cell(value) {
  const text = String(value ?? "");
  const harmless = /^\s*[=+\-@＝＋－＠\t\r\n]/.test(text) ? `'${text}` : text;
  return `"${harmless.replaceAll('"', '""')}"`;
}

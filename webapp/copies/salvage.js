/**
 * What can still be read of a copy whose text is damaged or cut short: each record is looked for by how it
 * begins, and read alone. No text that somebody typed begins so, for its quotes are escaped.
 */

const BEGIN =
  /\{\s*"(wearer|session|ended)"\s*:\s*\{|"(mine|before|shelf|chart|sets|dates|settings|gone|sums|holds)"\s*:\s*(?=[{[])/g;
const RECORD = /\{\s*"(?:wearer|session|ended)"\s*:\s*\{/g;

/**
 * In the form of a copy; what could not be read stands in its place as a text.
 * @param {string} text
 * @returns {{ book: unknown[], pairs: unknown[], ended: unknown[], sheets: Record<string, unknown>, [part: string]: unknown }}
 */
export function salvaged(text) {
  /** @type {Record<string, unknown[]>} */
  const records = { wearer: [], session: [], ended: [] };
  /** @type {Record<string, unknown>} */
  const parts = {};
  for (let at = 0, found = next(BEGIN, text, at); found; found = next(BEGIN, text, at)) {
    const { 0: begun, 1: record, 2: part, index } = found;
    const from = record ? index : index + begun.length;
    const end = next(RECORD, text, from + 1)?.index ?? text.length;
    const closed = closing(text, from, end);
    const value = parsed(text.slice(from, closed ?? end));
    if (record) records[record].push(value);
    else parts[part] ??= value;
    at = typeof value === "string" ? from + 1 : (closed ?? end);
  }
  const { settings = null, dates, gone, sums, holds, ...sheets } = parts;
  const { wearer: book, session: pairs, ended } = records;
  return { book, pairs, ended, sheets, dates, settings, gone, sums, holds };
}

/** @param {RegExp} sign @param {string} text @param {number} from */
function next(sign, text, from) {
  sign.lastIndex = from;
  return sign.exec(text);
}

/** Where the bracket that opens at `from` is closed again. @param {string} text @param {number} from @param {number} end @returns {number | undefined} */
function closing(text, from, end) {
  let [deep, quoted] = [0, false];
  for (let at = from; at < end; at += 1) {
    const sign = text[at];
    if (quoted && sign === "\\") at += 1;
    else if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === "{" || sign === "[")) deep += 1;
    else if (!quoted && (sign === "}" || sign === "]")) deep -= 1;
    if (deep === 0) return at + 1;
  }
}

/** @param {string} text @returns {unknown} the text itself where it is no JSON */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

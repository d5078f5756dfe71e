/**
 * One text for one value, whatever order its names were written in: names sorted by UTF-16 code units, no
 * white space, numbers and texts as JSON.stringify writes them (RFC 8785, JSON Canonicalization Scheme).
 * @param {any} value what JSON can say; a name without a value is left out, as JSON does
 * @returns {string}
 */
export function canonical(value) {
  if (typeof value !== "object" || !value) return JSON.stringify(value ?? null);
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`;
  const named = Object.keys(value)
    .filter((name) => value[name] !== undefined)
    .sort()
    .map((name) => `${JSON.stringify(name)}:${canonical(value[name])}`);
  return `{${named.join()}}`;
}

/** What a file may hold at all: nothing in it leads behind an object, or is endless. */

const DEEPEST = 12; // objects within objects; the deepest that is kept has 8
const BEHIND_OBJECTS = ["__proto__", "constructor", "prototype"];

/** @param {any} raw @param {number} [deep] @throws {TypeError} */
export function sound(raw, deep = 0) {
  if (typeof raw === "number" && !Number.isFinite(raw)) throw new TypeError("no number");
  if (typeof raw !== "object" || !raw) return raw;
  if (deep > DEEPEST) throw new TypeError("too deep");
  for (const [name, inside] of Object.entries(raw)) {
    if (BEHIND_OBJECTS.includes(name)) throw new TypeError("no name");
    sound(inside, deep + 1);
  }
  return raw;
}

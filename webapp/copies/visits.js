/**
 * The visits of many wearers: some at a time, for one after the other takes long.
 * @import {Visit} from "../book/types"
 * @import {Wearers} from "../book/wearers.js"
 */

const AT_ONCE = 50;

/** @param {Wearers} wearers @param {string[]} ids @returns {Promise<Map<string, Visit[]> | null>} null where the phone does not hand them out */
export async function visitsOf(wearers, ids) {
  /** @type {Map<string, Visit[]>} */
  const found = new Map();
  for (let from = 0; from < ids.length; from += AT_ONCE) {
    const some = ids.slice(from, from + AT_ONCE);
    const visits = await Promise.all(some.map((id) => wearers.visits(id)));
    for (const [at, those] of visits.entries()) {
      if (!those) return null;
      found.set(some[at], those);
    }
  }
  return found;
}

/**
 * Python's memory as build/memory_snapshot.mjs wrote it down, put back into a Pyodide that has only
 * been loaded: what it would import and work out at a start is there at once.
 *
 * This reaches behind Pyodide's door, so it holds for exactly the version that is pinned, and
 * whatever is amiss here ends in an ordinary start (see client.js).
 */

/**
 * The snapshot over the line, if the line is fast and nobody is to save on it: it is 1.2 MB more to fetch than the archives it
 * stands for.
 * @param {string} address "" for none
 * @param {Promise<boolean>} fast whether the line is
 * @returns {Promise<Uint8Array<ArrayBuffer> | undefined>}
 */
export async function fetched(address, fast) {
  const { connection } = /** @type {{ connection?: { saveData?: boolean } }} */ (navigator);
  if (!address || !(await fast) || !crypto.subtle || connection?.saveData) return;
  const response = await fetch(address);
  return response.ok ? read(response, address) : undefined;
}

/**
 * @param {Response} response
 * @param {string} address its name holds the first digits of its SHA-256
 * @returns {Promise<Uint8Array<ArrayBuffer>>}
 */
export async function read(response, address) {
  const bytes = new Uint8Array(await response.arrayBuffer());
  const sum = new DataView(await crypto.subtle.digest("SHA-256", bytes)).getUint32(0);
  if (!address.includes(`-${sum.toString(16).padStart(8, "0")}.`)) {
    throw new Error("The snapshot is not what it was when it was made.");
  }
  return bytes;
}

/** @param {string} address "" for none @returns {Promise<Response | undefined>} */
export async function stored(address) {
  if (!address || !crypto.subtle) return;
  try {
    return await caches.match(address, { ignoreSearch: true });
  } catch {
    // Storage may be closed to us (private windows, no https).
  }
}

/**
 * Put memory back as it was.
 * @param {any} module Pyodide's, loaded and not started
 * @param {Uint8Array<ArrayBuffer>} bytes
 * @returns {object} what Pyodide keeps of JavaScript's objects
 */
export function restore(module, bytes) {
  let at = 4 + new DataView(bytes.buffer).getUint32(0, true);
  const facts = JSON.parse(new TextDecoder().decode(bytes.subarray(4, at)));
  const { HEAP32, HEAPU8 } = module;
  if (facts.build !== module.API.config.BUILD_ID || facts.size !== HEAPU8.length) {
    throw new Error("The snapshot belongs to another Pyodide.");
  }
  // Where this browser's way of calling Python's functions lies: each engine has its own, and the
  // snapshot has that of node.
  const offset = HEAP32[module.__PyEM_EMSCRIPTEN_TRAMPOLINE_OFFSET / 4];
  const trampoline = (module.__PyRuntime + offset) / 4;
  const own = HEAP32[trampoline];
  for (const [from, to] of facts.runs) {
    HEAPU8.set(bytes.subarray(at, at + to - from), from);
    at += to - from;
  }
  if (at !== bytes.length) throw new Error("The snapshot is not whole.");
  HEAP32[trampoline] = own;
  return facts.objects;
}

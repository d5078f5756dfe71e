/**
 * What takes a worker longest to get, made ready by the page while the worker itself still starts:
 * Pyodide's WebAssembly, compiled, and the snapshot where it is stored on the phone. Browsers do most
 * of both beside the page's own thread. On a first visit the line takes longer than either, and what is
 * left to the page's thread would come in between while she types: the worker does it all, then.
 */

import { read, stored } from "./snapshot.js";

/**
 * Hand it over piece by piece. Rejects with the cause if a piece cannot be had.
 * @param {{ pyodide: string, snapshot: string }} addresses
 * @param {(message: object, transfer?: Transferable[]) => void} hand to the worker
 */
export async function makeReady({ pyodide, snapshot }, hand) {
  const compiling = navigator.serviceWorker?.controller
    ? compile(`${pyodide}pyodide.asm.wasm`)
    : Promise.resolve(null);
  const handed = compiling.then((module) => hand({ module }));
  const response = await stored(snapshot);
  hand({ stored: Boolean(response) });
  if (response) {
    const memory = await read(response, snapshot);
    hand({ memory }, [memory.buffer]);
  }
  await handed;
}

/** @type {Map<string, Promise<WebAssembly.Module>>} once for all workers of this page, by address */
const compiled = new Map();

/** @param {string} address */
function compile(address) {
  const found = compiled.get(address);
  if (found) return found;
  const compiling = (async () => WebAssembly.compileStreaming(fetch(address)))();
  compiled.set(address, compiling);
  compiling.catch(() => compiled.delete(address));
  return compiling;
}

/**
 * What takes a worker longest to get, made ready by the page while the worker itself still starts:
 * Pyodide's WebAssembly, compiled, and the snapshot where it is stored on the phone. Browsers do most
 * of both beside the page's own thread.
 */

import { read, stored } from "./snapshot.js";

/**
 * Hand it over piece by piece. Rejects with the cause if a piece cannot be had.
 * @param {{ pyodide: string, snapshot: string }} addresses
 * @param {(message: object, transfer?: Transferable[]) => void} hand to the worker
 */
export async function makeReady({ pyodide, snapshot }, hand) {
  const compiling = compile(`${pyodide}pyodide.asm.wasm`).then((module) => hand({ module }));
  const response = await stored(snapshot);
  hand({ stored: Boolean(response) });
  if (response) {
    const memory = await read(response, snapshot);
    hand({ memory }, [memory.buffer]);
  }
  await compiling;
}

/** @param {string} address */
async function compile(address) {
  return WebAssembly.compileStreaming(fetch(address));
}

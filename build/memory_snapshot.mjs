// node memory_snapshot.mjs STDLIB.zip GLUE.mjs PYODIDE.wasm ENGINE.zip SNAPSHOT
// Starts Pyodide, the very one that the phone gets, whose files lie in one folder, lets warm_up.py work inside it, and writes its
// memory down, so that a phone starts where this ends. webapp/worker/snapshot.js reads it.
//
// A snapshot is four bytes (little-endian) with the length of the facts, the facts as JSON, and the
// pages of memory that differ from those of a Pyodide that has only been loaded:
//   build    the Pyodide it belongs to      size  bytes of memory
//   objects  what Pyodide keeps of JavaScript's objects
//   runs     [start, end] of each run of pages in memory, in the order of the pages
import crypto from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import { pathToFileURL } from "node:url";

const PAGE = 4096;
const OPEN = "/dev/stdin,/dev/stdout,/dev/stderr";

const [library, glue, , engine, target] = process.argv.splice(2);

// The same bytes every time and everywhere: no chance, no clock and no place gets in.
process.argv[1] = "./this.program"; // as a browser has it
let chance = 1;
crypto.randomFillSync = (bytes) => {
  for (const i of bytes.keys()) {
    chance = (Math.imul(chance, 1103515245) + 12345) >>> 0;
    bytes[i] = chance >>> 16;
  }
  return bytes;
};
Math.random = () => 0.5;
Date.now = () => 0;
performance.now = () => 0;

/** @type {Uint8Array} memory as WebAssembly lays it out, before any code has run */
let laidOut;
const { instantiate } = WebAssembly;
WebAssembly.instantiate = async (source, imports) => {
  const made = await instantiate.call(WebAssembly, source, imports);
  const memory = made.instance?.exports.memory;
  if (memory) laidOut = new Uint8Array(memory.buffer).slice();
  return made;
};

try {
  await writeFile(target, await snapshot());
} catch (error) {
  console.error(error.message); // without Pyodide's own source around it
  process.exit(1);
}

async function snapshot() {
  const { loadPyodide } = await import("pyodide");
  const { default: create } = await import(pathToFileURL(glue).href);
  const packages = new URL("node_modules/pyodide/pyodide-lock.json", import.meta.url);
  const { info } = JSON.parse(await readFile(packages, "utf8"));
  /** @type {Uint8Array} memory after loading, before Python's own start */
  let loaded;
  const pyodide = await loadPyodide({
    _makeSnapshot: true,
    indexURL: dirname(glue),
    createPyodideModule: async (settings) => {
      const { preRun, API } = settings;
      const only = { ...settings, noInitialRun: true, preRun: [...preRun], API: { ...API } };
      loaded = (await create(only)).HEAPU8.slice();
      return create(settings);
    },
    stdLibURL: pathToFileURL(library).href,
    lockFileContents: { info, packages: {} },
    env: { PYTHONHASHSEED: "0" },
  });
  pyodide.FS.writeFile("/engine.zip", await readFile(engine));
  const recipe = await readFile(new URL("warm_up.py", import.meta.url));
  pyodide.FS.writeFile("warm_up.py", recipe);
  pyodide.pyimport("warm_up").warm_up("/engine.zip");
  const open = pyodide.FS.streams.filter(Boolean).map(({ path }) => path);
  if (String(open) !== OPEN) throw new Error(`These files are still open: ${open}`);

  clean(pyodide._module);
  const raw = pyodide.makeMemorySnapshot();
  const [, start, length] = new Uint32Array(raw.buffer, 0, 4);
  const memory = raw.subarray(start);
  if (memory.length !== laidOut.length) {
    throw new Error("The memory has grown, and would have to grow again on every phone.");
  }
  return pack(
    {
      build: pyodide._api.config.BUILD_ID,
      size: memory.length,
      objects: JSON.parse(new TextDecoder().decode(raw.subarray(48, 48 + length))),
    },
    memory,
    loaded,
  );
}

/**
 * Write zeros over memory that was given back: what was in it would cost a phone a download.
 * @param {object} module Pyodide's
 */
function clean({ _malloc, _free, _sbrk, HEAPU8 }) {
  const taken = [];
  for (let size = 1 << 16; size >= 8; size >>= 1) {
    const end = _sbrk(0);
    while (_sbrk(0) === end) {
      const block = _malloc(size);
      HEAPU8.fill(0, block, block + size);
      taken.push(block);
    }
  }
  for (const block of taken) _free(block);
}

/**
 * Pages that loading leaves as WebAssembly laid them out, and that were never touched after, are
 * left out.
 * @param {object} facts @param {Uint8Array} memory @param {Uint8Array} loaded
 */
function pack(facts, memory, loaded) {
  const runs = [];
  for (let page = 0; page < memory.length; page += PAGE) {
    const [now, before, first] = [memory, loaded, laidOut].map((bytes) =>
      Buffer.from(bytes.buffer, bytes.byteOffset + page, PAGE),
    );
    if (now.equals(first) && before.equals(first)) continue;
    if (runs.at(-1)?.[1] === page) runs.at(-1)[1] += PAGE;
    else runs.push([page, page + PAGE]);
  }
  const text = Buffer.from(JSON.stringify({ ...facts, runs }));
  const head = Buffer.alloc(4);
  head.writeUint32LE(text.length);
  return Buffer.concat([head, text, ...runs.map(([from, to]) => memory.subarray(from, to))]);
}

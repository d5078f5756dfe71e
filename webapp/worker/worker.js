/**
 * The worker that runs the engine: Python in WebAssembly, away from the page's own thread.
 * What it hears and says is told in runner.js.
 */

/// <reference path="./globals.d.ts" />

// Only `info` gets into the bundle: Pyodide then needs no list of packages from the network.
import { info } from "pyodide/pyodide-lock.json";
import { aloud } from "./aloud.js";
import { bytesOf, Line, LineGone } from "./line.js";
import { fetched, restore } from "./snapshot.js";

/** @type {((text: string) => string) | undefined} */
let answerText;
const line = new Line(sizeOf, (come, of) => postMessage({ come, of }));
/** What the page hands over (ahead.js), each as a promise that is kept when it comes. */
const ahead = {
  /** @type {PromiseWithResolvers<WebAssembly.Module | null>} */
  module: Promise.withResolvers(),
  /** @type {PromiseWithResolvers<boolean>} */
  stored: Promise.withResolvers(),
  /** @type {PromiseWithResolvers<Uint8Array<ArrayBuffer>>} */
  memory: Promise.withResolvers(),
};

addEventListener("message", async ({ data }) => {
  if ("module" in data) ahead.module.resolve(data.module);
  else if ("stored" in data) ahead.stored.resolve(data.stored);
  else if ("memory" in data) ahead.memory.resolve(data.memory);
  else if (data.id === undefined) {
    try {
      answerText = await start(data);
      postMessage({ ready: true });
    } catch (error) {
      postMessage({ failed: String(error), gone: error instanceof LineGone });
    }
  } else {
    try {
      postMessage({ id: data.id, text: answerText?.(data.text) });
    } catch (error) {
      // answer_text never raises. If it did, the same call would raise again, and Python goes on;
      // anything else is the interpreter's own end. Memory once taken is never given back: out of it, Python
      // is as good as ended.
      const { name = "", type = "" } = /** @type {{ name?: string, type?: string }} */ (error);
      const broken = name === "PythonError" && type !== "MemoryError";
      postMessage({ id: data.id, [broken ? "raised" : "crashed"]: String(error) });
    }
  }
});

/**
 * @param {{ pyodide: string, engine: string, words: string, snapshot: string }} addresses
 *   words: those of the engine's sentences; snapshot: "" to do without
 * @returns {Promise<(text: string) => string>} the engine's door, its messages as sentences
 */
async function start({ pyodide, engine, words, snapshot }) {
  // Pyodide tries it, to see whether this is a module; Trusted Types would tell of that as of an attack.
  Object.assign(globalThis, { importScripts: undefined });
  compileOnce();
  const library = `${pyodide}python_stdlib.zip`;
  const wasm = `${pyodide}pyodide.asm.wasm`;
  const failure = useOurs(wasm, library);
  const begun = performance.now();
  const scripts = Promise.all([
    import(`${pyodide}pyodide.mjs`),
    import(`${pyodide}pyodide.asm.mjs`),
  ]);
  const sentencesHere = import(words);
  sentencesHere.catch(() => {}); // told below
  // Some 0.16 MB, so a line of 4 Mbit a second and more, the way there and back included.
  const fast = scripts.then(() => onTheLine(pyodide, begun) < 400);
  const [{ loadPyodide }, { default: create }] = await scripts.catch((error) => {
    throw navigator.onLine ? error : new LineGone(String(error));
  });
  const options = { indexURL: pyodide, lockFileContents: { info, packages: {} } };
  const memory = (await ahead.stored.promise)
    ? ahead.memory.promise
    : await fetched(snapshot, fast);
  if (!memory) line.expect([wasm, library, engine]);
  const python = await Promise.race([
    memory ? wake(loadPyodide, create, options, memory) : boot(loadPyodide, options, engine),
    failure,
  ]);
  const { default: sentences } = await sentencesHere;
  const answer = python.pyimport("engine.api").answer_text;
  return (text) => JSON.stringify(aloud(JSON.parse(answer(text)), sentences));
}

/**
 * Milliseconds until the scripts of a folder were here; to read them takes a busy phone longer still,
 * which says nothing of its line.
 * @param {string} folder @param {number} begun when they were asked for
 */
function onTheLine(folder, begun) {
  const scripts = performance
    .getEntriesByType("resource")
    .filter(({ name }) => name.startsWith(folder) && name.endsWith(".mjs"));
  const timed = /** @type {PerformanceResourceTiming[]} */ (scripts);
  // What the browser had already tells nothing, and the archives may be there as well.
  if (timed.some(({ transferSize }) => transferSize === 0)) return Number.POSITIVE_INFINITY;
  // Where the browser does not tell, their reading is counted in.
  const ends = timed.map(({ responseEnd }) => responseEnd);
  return (ends.length ? Math.max(...ends) : performance.now()) - begun;
}

/**
 * Python as the snapshot has it.
 * @param {Function} loadPyodide @param {Function} create @param {{ indexURL: string }} options
 * @param {Uint8Array<ArrayBuffer> | Promise<Uint8Array<ArrayBuffer>>} memory the snapshot
 */
async function wake(loadPyodide, create, options, memory) {
  return loadPyodide({
    ...options,
    stdLibURL: `${options.indexURL}empty.zip`, // all of it that the engine uses is in the snapshot
    _loadSnapshot: new Uint8Array(), // says that one comes; `restore` has it
    /** @param {object} settings */
    createPyodideModule: async (settings) => {
      const [module, bytes] = await Promise.all([create(settings), memory]);
      module.API.restoreSnapshot = () => restore(module, bytes);
      return module;
    },
  });
}

/**
 * Python from its own start, and the engine read from its archive.
 * @param {Function} loadPyodide @param {object} options @param {string} engine
 */
async function boot(loadPyodide, options, engine) {
  const content = line.get(engine, bytesOf);
  const python = await loadPyodide(options);
  postMessage({ alive: true });
  python.FS.writeFile("/engine.zip", await content);
  python.pyimport("sys").path.insert(0, "/engine.zip");
  return python;
}

/**
 * Pyodide wraps some 260 functions, each in a WebAssembly module of a few bytes, of which only 30
 * differ: compile those once.
 */
function compileOnce() {
  const { Module } = WebAssembly;
  /** @type {Map<string, WebAssembly.Module>} */
  const made = new Map();
  WebAssembly.Module = new Proxy(Module, {
    construct(target, [bytes]) {
      const found = made.get(String(bytes)) ?? new target(bytes);
      made.set(String(bytes), found);
      return found;
    },
  });
}

/**
 * Have Pyodide take the WebAssembly that is compiled already, by the page or here, in place of fetching
 * its own only once it comes to it; and its library by our line.
 *
 * Pyodide also swallows a failure here and then waits for ever: hear of it from the promise
 * returned, which never resolves and rejects with the cause.
 * @param {string} wasm @param {string} library their addresses
 * @returns {Promise<never>}
 */
function useOurs(wasm, library) {
  const { fetch } = globalThis;
  const compiled = ahead.module.promise.then(
    (module) => module ?? line.get(wasm, (response) => WebAssembly.compileStreaming(response)),
  );
  compiled.catch(() => {}); // told below, when Pyodide asks for it
  return new Promise((_, reject) => {
    globalThis.fetch = async (resource, options) => {
      const { href = "" } = resource instanceof URL ? resource : {};
      if (href === wasm) return new Response();
      if (href !== library) return fetch(resource, options);
      return new Response(
        await line.get(library, bytesOf).catch((error) => {
          reject(error);
          throw error;
        }),
      );
    };
    WebAssembly.instantiateStreaming = async (_, imports = {}) => {
      try {
        const module = await compiled;
        return { module, instance: await WebAssembly.instantiate(module, imports) };
      } catch (error) {
        reject(error);
        throw error;
      }
    };
  });
}

/** Bytes of one of the site's files, where the build has told them. @param {string} address */
function sizeOf(address) {
  return Object.entries(SIZES).find(([name]) => address.endsWith(`/${name}`))?.[1];
}

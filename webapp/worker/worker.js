/**
 * The worker that runs the engine: Python in WebAssembly, away from the page's own thread.
 * What it hears and says is told in runner.js.
 */

// Only `info` gets into the bundle: Pyodide then needs no list of packages from the network.
import { info } from "pyodide/pyodide-lock.json";
import { atHand, read, restore } from "./snapshot.js";

/** @type {((text: string) => string) | undefined} */
let answerText;

addEventListener("message", async ({ data }) => {
  if (data.id === undefined) {
    try {
      answerText = await start(data);
      postMessage({ ready: true });
    } catch (error) {
      postMessage({ failed: String(error) });
    }
  } else {
    try {
      postMessage({ id: data.id, text: answerText?.(data.text) });
    } catch (error) {
      // answer_text never raises. If it did, the same call would raise again, and Python goes on;
      // anything else is the interpreter's own end, out of memory say.
      const broken = error instanceof Error && error.name === "PythonError";
      postMessage({ id: data.id, [broken ? "raised" : "crashed"]: String(error) });
    }
  }
});

/**
 * @param {{ pyodide: string, engine: string, snapshot: string }} addresses snapshot: "" to do without
 * @returns {Promise<(text: string) => string>} the engine's door
 */
async function start({ pyodide, engine, snapshot }) {
  const failure = compileAhead(`${pyodide}pyodide.asm.wasm`);
  const begun = performance.now();
  const scripts = Promise.all([
    import(`${pyodide}pyodide.mjs`),
    import(`${pyodide}pyodide.asm.mjs`),
  ]);
  // Some 0.2 MB, so a line of 4 Mbit a second and more; a slow phone takes part of that to read them.
  const fast = scripts.then(() => performance.now() - begun < 500);
  const found = atHand(snapshot, fast);
  const [{ loadPyodide }, { default: create }] = await Promise.race([scripts, failure]);
  const options = { indexURL: pyodide, lockFileContents: { info, packages: {} } };
  const response = await found;
  const python = await Promise.race([
    response
      ? wake(loadPyodide, create, options, read(response, snapshot))
      : boot(loadPyodide, options, engine),
    failure,
  ]);
  return python.pyimport("engine.api").answer_text;
}

/**
 * Python as the snapshot has it.
 * @param {Function} loadPyodide @param {Function} create @param {{ indexURL: string }} options
 * @param {Promise<Uint8Array<ArrayBuffer>>} reading the snapshot
 */
async function wake(loadPyodide, create, options, reading) {
  const python = await loadPyodide({
    ...options,
    stdLibURL: `${options.indexURL}empty.zip`, // all of it that the engine uses is in the snapshot
    _loadSnapshot: new Uint8Array(), // says that one comes; `restore` has it
    /** @param {object} settings */
    createPyodideModule: async (settings) => {
      const [module, bytes] = await Promise.all([create(settings), reading]);
      module.API.restoreSnapshot = () => restore(module, bytes);
      return module;
    },
  });
  python.pyimport("random").seed();
  return python;
}

/**
 * Python from its own start, and the engine read from its archive.
 * @param {Function} loadPyodide @param {object} options @param {string} engine
 */
async function boot(loadPyodide, options, engine) {
  const [content, python] = await Promise.all([fetchArchive(engine), loadPyodide(options)]);
  postMessage({ alive: true });
  python.FS.writeFile("/engine.zip", content);
  python.pyimport("sys").path.insert(0, "/engine.zip");
  return python;
}

/**
 * Fetch and compile Pyodide's WebAssembly from now on, not only once Pyodide turns to it.
 *
 * Pyodide also swallows a failure here and then waits for ever: hear of it from the promise
 * returned, which never resolves and rejects with the cause.
 * @param {string} address
 * @returns {Promise<never>}
 */
function compileAhead(address) {
  const { fetch } = globalThis;
  const response = fetch(address);
  const compiled = WebAssembly.compileStreaming(response);
  globalThis.fetch = (resource, options) =>
    resource instanceof URL && resource.href === address ? response : fetch(resource, options);
  return new Promise((_, reject) => {
    compiled.then(() => postMessage({ alive: true }), reject);
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

/**
 * @param {string} address
 * @returns {Promise<Uint8Array>}
 */
async function fetchArchive(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

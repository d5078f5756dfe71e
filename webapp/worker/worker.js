/**
 * The worker that runs the engine: Python in WebAssembly, away from the page's own thread.
 * What it hears and says is told in runner.js.
 */

// Only `info` gets into the bundle: Pyodide then needs no list of packages from the network.
import { info } from "pyodide/pyodide-lock.json";

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
 * @param {{ pyodide: string, engine: string }} addresses
 * @returns {Promise<(text: string) => string>} the engine's door
 */
async function start({ pyodide, engine }) {
  const archive = fetchArchive(engine);
  // Pyodide swallows a failure to load its WebAssembly and then waits for ever: hear of it here.
  const wasm = new Promise((_, reject) => {
    const { instantiateStreaming } = WebAssembly;
    WebAssembly.instantiateStreaming = (source, imports) => {
      const done = instantiateStreaming.call(WebAssembly, source, imports);
      done.then(() => postMessage({ alive: true }), reject);
      return done;
    };
  });
  const { loadPyodide } = await import(`${pyodide}pyodide.mjs`);
  const started = loadPyodide({ indexURL: pyodide, lockFileContents: { info, packages: {} } });
  const [content, python] = await Promise.all([archive, Promise.race([wasm, started])]);
  postMessage({ alive: true });
  python.FS.writeFile("/engine.zip", content);
  python.pyimport("sys").path.insert(0, "/engine.zip");
  return python.pyimport("engine.api").answer_text;
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

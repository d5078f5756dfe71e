// node compile_archive.mjs SOURCES.zip COMPILED.zip
// Starts Pyodide, the very one that the phone gets, and lets compile_archive.py work inside it.
import { readFile, writeFile } from "node:fs/promises";
import { loadPyodide } from "pyodide";

const [sources, target] = process.argv.slice(2);
const recipe = new URL("compile_archive.py", import.meta.url);
// A fixed hash seed: the order of a set must not find its way into a compiled module. And of where each
// instruction was written the line alone: the columns, which nobody reads on a phone, were a tenth of
// all that it downloads.
const pyodide = await loadPyodide({ env: { PYTHONHASHSEED: "0", PYTHONNODEBUGRANGES: "1" } });
pyodide.FS.writeFile("compile_archive.py", await readFile(recipe));
pyodide.FS.writeFile("sources.zip", await readFile(sources));
try {
  pyodide.pyimport("compile_archive").compile_file("sources.zip", "compiled.zip");
} catch (error) {
  console.error(error.message); // Python's words, without Pyodide's own source around them
  process.exit(1);
}
await writeFile(target, pyodide.FS.readFile("compiled.zip"));

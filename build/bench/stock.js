// Pyodide as its manual shows it: loaded with its defaults, the wheels unpacked, the engine's
// sources unpacked, imported. With `snapshot` set, pint's own registry of all units is made as well.
let answerText;

addEventListener("message", async ({ data }) => {
  if (data.id !== undefined) return postMessage({ id: data.id, text: answerText(data.text) });
  const { loadPyodide } = await import(`${data.pyodide}pyodide.mjs`);
  const pyodide = await loadPyodide();
  const { wheels } = await (await fetch(`${data.pyodide}wheels.json`)).json();
  for (const wheel of wheels) {
    const response = await fetch(`${data.pyodide}${wheel}`);
    pyodide.unpackArchive(await response.arrayBuffer(), "wheel");
  }
  pyodide.unpackArchive(await (await fetch(data.engine)).arrayBuffer(), "zip");
  if (data.snapshot) pyodide.pyimport("pint").UnitRegistry();
  answerText = pyodide.pyimport("engine.api").answer_text;
  postMessage({ ready: true });
});

// What no start from a snapshot can do without: WebAssembly fetched and compiled, the snapshot
// fetched and copied, Pyodide's glue read. Answers nothing.
addEventListener("message", async ({ data }) => {
  if (data.id !== undefined) return postMessage({ id: data.id, text: "{}" });
  const copied = fetch(data.snapshot)
    .then((response) => response.arrayBuffer())
    .then((bytes) => new Uint8Array(31_457_280).set(new Uint8Array(bytes)));
  await Promise.all([
    WebAssembly.compileStreaming(fetch(`${data.pyodide}pyodide.asm.wasm`)),
    import(`${data.pyodide}pyodide.asm.mjs`),
    copied,
  ]);
  postMessage({ ready: true });
});

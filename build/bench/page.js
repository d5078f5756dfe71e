// The page's main.js in the bench: the same worker line, worker and files, started one way or
// another (`?way=`), and the moments kept. `?store` has the service worker store the site first.
import { Engine } from "../worker/client.js";
import { script } from "./trusted.js";

const { worker, pyodide, engine, words, snapshot, serviceWorker } =
  document.documentElement.dataset;
const query = new URLSearchParams(location.search);
const ways = {
  "stock, default units": { worker: "bench/stock.js", pyodide: "bench/", snapshot: "bench/units" },
  stock: { worker: "bench/stock.js", pyodide: "bench/" },
  snapshot: { worker, pyodide, engine, words, snapshot },
  "no snapshot": { worker, pyodide, engine, words },
  floor: { worker: "bench/floor.js", pyodide, snapshot },
};
const call = (number) => ({
  do: "page",
  request: {
    units: "cm",
    foot: { length: `${22 + (number % 60) / 10} cm` },
    cylinder: { slots: 60 },
    fabric: { stitches: "30 / 10 cm", rounds: "38 / 10 cm" },
  },
});

globalThis.bench = {
  stored: () => navigator.serviceWorker.ready.then(() => true),
  /** Milliseconds from navigation to the first plan. */
  started: async (way) => {
    const line = new Engine({ engine: "bench/engine.zip", ...ways[way] });
    globalThis.bench.line = line;
    await line.ask(call(0), { deadline: 120_000 });
    return performance.now();
  },
  /** Milliseconds of each of so many calls, as a keystroke makes one. */
  keystrokes: async (times) => {
    const taken = [];
    for (let number = 1; number <= times; number++) {
      const begun = performance.now();
      await globalThis.bench.line.ask(call(number));
      taken.push(performance.now() - begun);
    }
    return taken;
  },
};
if (query.has("store")) navigator.serviceWorker.register(script(serviceWorker));
const way = query.get("way");
if (way) globalThis.bench.start = globalThis.bench.started(way);

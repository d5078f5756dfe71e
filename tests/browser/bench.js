// Takes the place of the page's own main.js in tests of worker and offline: the same bundle, the
// same worker, the same files around it, but every handle within the tests' reach.
import { watchForUpdates } from "../offline/updates.js";
import { Engine } from "../worker/client.js";

const {
  worker,
  pyodide,
  engine: archive,
  words,
  snapshot,
  serviceWorker,
  version,
} = document.documentElement.dataset;
const patience = Number(new URLSearchParams(location.search).get("patience") ?? 60_000);

const bench = {
  version,
  /** @type {string[]} */ states: [],
  /** @type {string[]} */ violations: [],
  /** @type {(() => void)[]} */ offers: [],
  stored: false,
  engine: new Engine({ worker, pyodide, engine: archive, words, snapshot, patience }),
};
globalThis.bench = bench;

document.addEventListener("securitypolicyviolation", (event) =>
  bench.violations.push(`${event.violatedDirective} ${event.blockedURI}`),
);
bench.engine.addEventListener("state", () => bench.states.push(bench.engine.state));
watchForUpdates({
  serviceWorker,
  engine: bench.engine,
  onOffer: (accept) => bench.offers.push(accept),
  onOfflineReady: () => {
    bench.stored = true;
  },
});

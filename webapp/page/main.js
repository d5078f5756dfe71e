/** The page's entry: puts form, engine, steps and sheets together; each piece of screen has its own module. */
import { watchForUpdates } from "../offline/updates.js";
import { Engine } from "../worker/client.js";
import { Calculator } from "./calculator.js";
import { wireChoices } from "./choices.js";
import { CountsScreen } from "./counts_screen.js";
import { Draft } from "./draft.js";
import { FirstSock } from "./first_sock.js";
import { Form } from "./form.js";
import { toRequest } from "./request.js";
import { Sheets } from "./sheets.js";
import { Status } from "./status.js";
import { StepsNav } from "./steps_nav.js";
import { wireTheme } from "./theme.js";
import { WordsBeside } from "./words_beside.js";

const {
  worker = "",
  pyodide = "",
  engine: archive = "",
  snapshot,
  serviceWorker,
} = document.documentElement.dataset;

wireTheme();
const draft = new Draft();
const form = new Form(/** @type {HTMLFormElement} */ (document.getElementById("form")));
const nav = new StepsNav();
const engine = new Engine({ worker, pyodide, engine: archive, snapshot });
const calculator = new Calculator(engine);
const status = new Status(engine);
const beside = new WordsBeside(form);
const sheets = new Sheets({ form, draft, nav, engine });
const screen = new CountsScreen(nav, sheets);
const firstSock = new FirstSock(form);

wireChoices(form);
const work = () => {
  const values = form.values();
  calculator.work(toRequest(values), values);
};
form.addEventListener("change", () => {
  sheets.keep(form.values());
  status.stored(draft.stored);
  work();
});
engine.addEventListener("state", () => {
  if (engine.state === "starting") status.trouble("");
  if (engine.state === "ready") work();
});
nav.addEventListener("step", () => {
  if (nav.step === "counts") beside.ask();
});
calculator.addEventListener("readings", (event) => {
  beside.showReadings(/** @type {CustomEvent} */ (event).detail);
});
calculator.addEventListener("answer", (event) => {
  const answer = /** @type {CustomEvent} */ (event).detail;
  status.trouble("");
  beside.show(answer);
  screen.show(answer);
  firstSock.show(answer.plan);
});
calculator.addEventListener("trouble", (event) => {
  status.trouble(/** @type {CustomEvent} */ (event).detail);
});

sheets.start();
if (nav.step === "counts") beside.ask();

addEventListener("load", () => {
  if (!serviceWorker) return;
  watchForUpdates({
    serviceWorker,
    onOffer: (/** @type {() => void} */ accept) => status.newVersion(accept),
    onOfflineReady: () => status.offlineReady(),
  });
});

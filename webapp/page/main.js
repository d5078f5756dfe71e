/** The page's entry: puts form, engine, steps and sheets together; each piece of screen has its own module. */
import { note } from "../storage/uncopied.js";
import { Engine } from "../worker/client.js";
import { AtMachine } from "./at_machine.js";
import { bundle } from "./bundle.js";
import { Calculator } from "./calculator.js";
import { ChartScreen } from "./chart.js";
import { wireChoices } from "./choices.js";
import { CodeSheet } from "./code_sheet.js";
import { copyLine } from "./copy_line.js";
import { CountsScreen } from "./counts_screen.js";
import { Dialogs } from "./dialogs.js";
import { Draft } from "./draft.js";
import { FirstSock } from "./first_sock.js";
import { FOLLOWED, Form } from "./form.js";
import { LastCounts } from "./last_counts.js";
import { placesBeside } from "./places_beside.js";
import { Pockets } from "./pockets.js";
import { ProblemsBeside } from "./problems_beside.js";
import { isEmpty, toRequest } from "./request.js";
import { wireRows } from "./rows.js";
import { Share } from "./share.js";
import { Sheets } from "./sheets.js";
import { ShelfScreen } from "./shelf.js";
import { Status } from "./status.js";
import { keepSteady } from "./steady.js";
import { isLink, StepsNav } from "./steps_nav.js";
import { Swatches } from "./swatches.js";
import { wireTheme } from "./theme.js";
import { ToBook } from "./to_book.js";
import { WordsBeside } from "./words_beside.js";

const {
  worker = "",
  pyodide = "",
  engine: archive = "",
  snapshot,
  updates = "",
  serviceWorker,
} = document.documentElement.dataset;

const COUNTER_MS = 2000; // the calculator waits no longer than this for the counter

placesBeside(document);
const draft = new Draft();
wireTheme(draft);
const form = new Form(/** @type {HTMLFormElement} */ (document.getElementById("form")));
const nav = new StepsNav(new Dialogs());
const engine = new Engine({ worker, pyodide, engine: archive, snapshot, later: true });
const atMachine = new AtMachine({ engine, nav, draft, shelf: () => shelf });
// A sock on the machine needs no calculator: the counter comes before it.
const counter = atMachine.start();
if (counter) Promise.race([counter, pause(COUNTER_MS)]).finally(() => engine.start());
else engine.start();
const calculator = new Calculator(engine);
const status = new Status(engine, draft);
const beside = new WordsBeside(form);
const problems = new ProblemsBeside(form);
const sheets = new Sheets({ form, draft, nav, engine });
const share = new Share({ engine, sheets, code: new CodeSheet(engine) });
const screen = new CountsScreen(nav, share);
const toBook = new ToBook({
  engine,
  nav,
  draft,
  sheets,
  form,
  atMachine,
  take: {
    mine: (values) => sheets.takeMine(values),
    before: (values) => {
      draft.before = values;
    },
    shelf: (values) => shelf.form.fill(values),
    chart: (values) => chart.take(values),
  },
});
atMachine.addEventListener("sock one", (event) => {
  sheets.learn(/** @type {CustomEvent} */ (event).detail);
});
const last = new LastCounts(draft, screen);
const firstSock = new FirstSock(form);
const pockets = new Pockets(form);
const swatches = new Swatches(form);
const onTrouble = (/** @type {string} */ sentence) => status.trouble(sentence);
const chart = new ChartScreen({ engine, nav, draft, onTrouble });
const shelf = new ShelfScreen({ engine, nav, draft, plan: form, onTrouble });

wireChoices(form);
wireRows(form);
keepSteady(form.element);
const work = () => {
  const values = form.values();
  atMachine.knitIt.changed();
  calculator.work(toRequest(values), values);
};
form.addEventListener("change", (event) => {
  const { detail } = /** @type {CustomEvent} */ (event);
  // Nobody asked for counts of an empty sheet that lies there because another was taken away.
  if (detail === "" && nav.step === "counts" && !isEmpty(form.values())) problems.ask();
  // A shared plan that is being opened is not what is still typed.
  const opening = isLink(location.hash) && !sheets.visiting;
  last.show(opening ? {} : form.values());
  shelf.form.showIn(form.units);
  chart.showIn(form.units);
  if (detail !== FOLLOWED && sheets.keep()) {
    if (!sheets.visiting) note("mine");
    toBook.keep(sheets.visit);
  }
  work();
});
for (const [name, other] of /** @type {const} */ ([
  ["shelf", shelf.form],
  ["chart", chart.form],
])) {
  other.addEventListener("change", (event) => {
    const { detail } = /** @type {CustomEvent} */ (event);
    if (detail && detail !== FOLLOWED) note(name);
  });
}
form.addEventListener("asked", () => nav.go("counts"));
for (const one of [form, shelf.form, chart.form]) {
  one.addEventListener("replaced", (event) => {
    status.elsewhere(/** @type {CustomEvent} */ (event).detail);
  });
  one.addEventListener("change", (event) => {
    if (/** @type {CustomEvent} */ (event).detail !== FOLLOWED) status.elsewhere([]);
  });
}
draft.addEventListener("stored", () => status.stored(draft.stored));
engine.addEventListener("state", () => {
  if (engine.state === "starting") status.trouble("");
  if (engine.state === "ready") work();
});
nav.addEventListener("step", () => {
  if (nav.step === "counts") problems.ask();
});
calculator.addEventListener("readings", (event) => {
  beside.showReadings(/** @type {CustomEvent} */ (event).detail);
});
calculator.addEventListener("answer", (event) => {
  const answer = /** @type {CustomEvent} */ (event).detail;
  status.trouble("");
  beside.show(answer);
  screen.show(answer);
  last.settle(answer);
  problems.show(answer.errors ?? []);
  swatches.show(answer.plan);
  firstSock.show(answer.plan);
  toBook.follow(answer);
  pockets.show(answer.plan);
  atMachine.knitIt.offer(answer, sheets.visit);
  chart.follow(answer);
  shelf.follow(answer);
});
problems.addEventListener("told", (event) => {
  swatches.open(/** @type {CustomEvent} */ (event).detail);
  screen.markProblems(/** @type {CustomEvent} */ (event).detail);
});
calculator.addEventListener("trouble", (event) => {
  onTrouble(/** @type {CustomEvent} */ (event).detail);
});

sheets.start();
copyLine();
atMachine.addEventListener("left", copyLine);
performance.mark("usable"); // what is typed from now on stays (build/bench.py)
const troubled = document.getElementById("not-started");
if (troubled) troubled.hidden = true; // somebody else's error, of an extension say (opening.js)

if (document.readyState === "complete") storeAll();
else addEventListener("load", storeAll);

/** Have the site kept on the phone, once nothing that is looked at waits for the line. */
async function storeAll() {
  if (!serviceWorker) return;
  const part = await bundle(updates).catch(() => null); // no network: next time
  if (!part) return;
  status.changed(part.changes);
  part.watchForUpdates({
    serviceWorker,
    onOffer: (/** @type {() => void} */ accept) => status.newVersion(accept),
    onOfflineReady: () => status.offlineReady(),
  });
}

/** @param {number} ms @returns {Promise<void>} */
function pause(ms) {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

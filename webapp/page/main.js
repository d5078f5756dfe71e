/** The page's entry: puts form, engine, steps and sheets together; each piece of screen has its own module. */
import * as say from "words/page";
import { change } from "../storage/dated.js";
import { note } from "../storage/uncopied.js";
import { Engine } from "../worker/client.js";
import { AtMachine } from "./at_machine.js";
import { bundle } from "./bundle.js";
import { Calculator } from "./calculator.js";
import { wireChoices } from "./choices.js";
import { copyLine } from "./copy_line.js";
import { CountsScreen } from "./counts_screen.js";
import { Dialogs } from "./dialogs.js";
import { Draft } from "./draft.js";
import { FirstSock } from "./first_sock.js";
import { FOLLOWED, Form } from "./form.js";
import { Hers } from "./hers.js";
import { tapeCame, wireInHand } from "./in_hand.js";
import { LastCounts } from "./last_counts.js";
import { wirePanels } from "./panels.js";
import { placesBeside } from "./places_beside.js";
import { Pockets } from "./pockets.js";
import { ProblemsBeside } from "./problems_beside.js";
import { isEmpty, toRequest } from "./request.js";
import { wireRows } from "./rows.js";
import { Sheets } from "./sheets.js";
import { showSoFar } from "./so_far.js";
import { Status } from "./status.js";
import { keepSteady } from "./steady.js";
import { isLink, StepsNav } from "./steps_nav.js";
import { Swatches } from "./swatches.js";
import { wireTheme } from "./theme.js";
import { ToBehind } from "./to_behind.js";
import { ToBook } from "./to_book.js";
import { paper } from "./to_paper.js";
import { ToShare } from "./to_share.js";
import { WordsBeside } from "./words_beside.js";

const {
  worker = "",
  pyodide = "",
  engine: archive = "",
  words = "",
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
const engine = new Engine({ worker, pyodide, engine: archive, words, snapshot, later: true });
const onTrouble = (/** @type {string} */ sentence) => status.trouble(sentence);
const atMachine = new AtMachine({
  engine,
  nav,
  draft,
  shelf: async () => (await behind.load()).shelf,
});
// A sock on the machine needs no calculator: the counter comes before it.
const counter = atMachine.start();
if (counter) Promise.race([counter, pause(COUNTER_MS)]).finally(() => engine.start());
else engine.start();
const calculator = new Calculator(engine);
const status = new Status(engine, draft);
const behind = new ToBehind({ form, draft, nav, engine, onTrouble, beside: listBeside });
const beside = new WordsBeside(form);
const problems = new ProblemsBeside(form);
const away = () => {
  calculator.drop();
  screen.showLast(undefined);
};
const sheets = new Sheets({ form, draft, nav, engine, away });
const screen = new CountsScreen(nav, new ToShare({ engine, sheets }), form);
const toBook = new ToBook({
  engine,
  nav,
  draft,
  sheets,
  form,
  atMachine,
  measuringSheet: () => measuringSheet(),
  take: {
    mine: (values) => sheets.takeMine(values),
    before: (values) => {
      draft.before = values;
    },
    shelf: async (values) => (await behind.load()).shelf.form.fill(values),
    chart: async (values) => (await behind.load()).chart.take(values),
    sets: (values) => draft.write("sets", change(draft.sheet("sets"), values)),
  },
});
atMachine.addEventListener("sock one", (event) => {
  sheets.learn(/** @type {CustomEvent} */ (event).detail);
});
const hers = new Hers({ draft, load: () => atMachine.load(), changed: () => work() });
const last = new LastCounts(draft, screen);
const firstSock = new FirstSock(form);
const pockets = new Pockets(form);
const swatches = new Swatches(form);

const measuringSheet = async () => {
  try {
    const { MeasuringSheet } = await paper();
    new MeasuringSheet({ engine, draft, form, label: sheets.visit?.label ?? "" });
  } catch {
    onTrouble(say.sheetNotLoaded);
  }
};
document.getElementById("measuring")?.addEventListener("click", measuringSheet);
wireChoices(form);
wireRows(form);
wirePanels(/** @type {HTMLElement} */ (document.getElementById("panels")));
keepSteady(form.element);
wireInHand(form.element, /** @type {HTMLElement} */ (document.getElementById("in-hand")), nav);
const work = () => {
  const values = form.values();
  atMachine.knitIt.changed();
  calculator.work(hers.in(toRequest(values), sheets.visit), values);
};
form.addEventListener("change", (event) => {
  const { detail } = /** @type {CustomEvent} */ (event);
  // Nobody asked for counts of an empty sheet that lies there because another was taken away.
  if (detail === "" && nav.step === "counts" && !isEmpty(form.values())) problems.ask();
  // A shared plan that is being opened is not what is still typed.
  const opening = isLink(location.hash) && !sheets.visiting;
  last.show(opening ? {} : form.values());
  behind.showIn(form.units);
  if (detail !== FOLLOWED && sheets.keep()) {
    if (!sheets.visiting) note("mine");
    toBook.keep(sheets.visit);
  }
  work();
});
form.addEventListener("asked", () => nav.go("counts"));
tellReplaced(form);
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
  showSoFar(answer, /** @type {HTMLElement} */ (document.getElementById("so-far")));
  screen.show(answer);
  last.settle(answer);
  hers.follow(answer, sheets.visit);
  problems.show(answer.errors ?? []);
  swatches.show(answer.plan);
  firstSock.show(answer.plan);
  toBook.follow(answer);
  pockets.show(answer.plan);
  atMachine.knitIt.offer(answer, sheets.visit);
  behind.follow(answer);
});
problems.addEventListener("told", (event) => {
  swatches.open(/** @type {CustomEvent} */ (event).detail);
  screen.markProblems(/** @type {CustomEvent} */ (event).detail);
});
calculator.addEventListener("trouble", (event) => {
  onTrouble(/** @type {CustomEvent} */ (event).detail);
});

// Where nothing is to be put back into the form, what she does goes first.
if (!draft.mine && !draft.visit) await pause(0);
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
  await behind.load().catch(() => {}); // no network: when it is opened
  if (!serviceWorker) return;
  const part = await bundle(updates).catch(() => null); // no network: next time
  if (!part) return;
  tapeCame(part.slidingTape);
  part.watchForUpdates({
    serviceWorker,
    engine,
    onOffer: (/** @type {() => void} */ accept) => status.newVersion(accept),
    onOfflineReady: () => status.offlineReady(),
    onCopy: (/** @type {File | null} */ file) => toBook.takeCopy(file),
  });
}

/** What she typed into a list of her own beside the plan. @param {"shelf" | "chart"} name @param {Form} list */
function listBeside(name, list) {
  list.addEventListener("change", (event) => {
    const { detail } = /** @type {CustomEvent} */ (event);
    if (detail && detail !== FOLLOWED) note(name);
  });
  tellReplaced(list);
}

/** What another tab typed in place of something is said, until something is typed here. @param {Form} one */
function tellReplaced(one) {
  one.addEventListener("replaced", (event) => {
    status.elsewhere(/** @type {CustomEvent} */ (event).detail);
  });
  one.addEventListener("change", (event) => {
    if (/** @type {CustomEvent} */ (event).detail !== FOLLOWED) status.elsewhere([]);
  });
}

/** @param {number} ms @returns {Promise<void>} */
function pause(ms) {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

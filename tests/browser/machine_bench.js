// Takes the place of the page's own main.js in tests of what a session is made of: journal, tabs, places
// and pace, with no screen before them.
import { endedFrom } from "../machine/ended.js";
import { reached } from "../machine/for_wearer.js";
import { Journal } from "../machine/journal.js";
import { OneCounter } from "../machine/one_counter.js";
import * as pace from "../machine/pace.js";
import * as progress from "../machine/progress.js";
import { endedOf } from "../machine/record.js";

const { after, apply, fold } = progress;

const machine = {
  ...progress,
  ...pace,
  endedFrom,
  endedOf,
  reached,
  Journal,
  OneCounter,
  /** @type {string[]} */ heard: [],

  /** Open the journal and listen to it. */
  async open(patience = 2000) {
    machine.journal = await Journal.open({ patience });
    machine.journal.addEventListener("kept", () =>
      machine.heard.push(machine.journal.kept ? "kept" : "in memory"),
    );
    machine.journal.addEventListener("changed", () => machine.heard.push("changed"));
    return machine.journal.kept;
  },

  /** One tap more, made from what the journal says. */
  async tap(session, took = null) {
    const kept = await machine.journal.read(session);
    const { sock, socks, places, last } = fold(kept.session, kept.happenings);
    const place = after(socks[sock], places[sock]);
    const number = last + 1;
    const happening = { session, number, sock, kind: "done", place, took, at: Date.now() };
    await machine.journal.append(happening);
    return number;
  },

  /** What this tab takes for true. */
  async state(session) {
    const kept = await machine.journal.read(session);
    return fold(kept.session, kept.happenings);
  },

  /** The states and views that a list of doings leads through. */
  walk(session, doings) {
    let state = fold(session, []);
    const happenings = [];
    const seen = doings.map(({ kind, sock = state.sock, ...more }) => {
      const happening = { session: session.id, number: state.last + 1, sock, kind, ...more };
      const knit = state.socks[sock];
      if (kind === "done") happening.place = after(knit, state.places[sock]);
      if (kind === "back") happening.place = state.undo.at(-1) ?? state.places[sock];
      happenings.push(happening);
      state = apply(state, happening);
      const { places, undo, ended } = state;
      return { sock: state.sock, places, undo, ended, view: progress.view(knit, places[sock]) };
    });
    return { seen, same: JSON.stringify(fold(session, happenings)) === JSON.stringify(state) };
  },

  /** What is in the database, by no code of ours. */
  stored(session) {
    return new Promise((resolve) => {
      const opening = indexedDB.open("heelwise.machine");
      opening.onupgradeneeded = () => opening.transaction.abort(); // there is none, nor shall be
      opening.onerror = () => resolve([]);
      opening.onsuccess = () => {
        const reading = opening.result.transaction("happenings").objectStore("happenings").getAll();
        reading.onsuccess = () => {
          opening.result.close();
          resolve(reading.result.filter((one) => one.session === session).map((one) => one.number));
        };
      };
    });
  },
};
globalThis.machine = machine;

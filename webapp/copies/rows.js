/**
 * What stands here and what is in a copy, in words and side by side.
 * @import {Deleted} from "../book/types"
 * @import {Choices} from "../machine/settings.js"
 * @import {Ended, Kept} from "../machine/types"
 * @import {Machine, Row} from "./types"
 */
import * as say from "words/copies";
import * as atMachine from "words/machine";
import { measuresOf } from "../book/measures.js";
import { stateWords } from "../book/states.js";
import { seconds, USUAL } from "../machine/settings.js";
import { SWITCHES } from "../machine/settings_sheet.js";

/**
 * Only what differs, side by side.
 * @param {Map<string, string>} mine @param {Map<string, string>} theirs
 * @param {(name: string) => string} [title] where they go by other names than are shown
 * @returns {Row[]}
 */
export function rows(mine, theirs, title = (name) => name) {
  const found = [...new Set([...mine.keys(), ...theirs.keys()])]
    .map((name) => ({ name, here: mine.get(name) ?? "", file: theirs.get(name) ?? "" }))
    .filter(({ here, file }) => here !== file)
    .map(({ name, ...both }) => ({ title: title(name), ...both }));
  // What is not shown word by word must not look as if nothing differed.
  const before = { title: say.writtenBefore, here: say.thisPhones, file: say.theFiles };
  return found.length ? found : [before];
}

/** A wearer. @param {Deleted} one @returns {Map<string, string>} */
export function ofWearer({ wearer, visits }) {
  const names = /** @type {const} */ ([
    "label",
    "state",
    "due",
    "asked",
    "length",
    "ease",
    "colours",
    "allergy",
    "price",
    "deposit",
    "pairs",
    "contact",
  ]);
  const measures = measuresOf(visits.at(-1)?.values ?? {});
  return new Map([
    ...names.map(
      (name) =>
        /** @type {[string, string]} */ ([
          say.column({ name }),
          name === "state" ? stateWords(wearer.state) : wearer[name],
        ]),
    ),
    ...measures.map(({ title, text }) => /** @type {[string, string]} */ ([title, text])),
    [say.visits, String(visits.length)],
  ]);
}

/** A pair at the machine. @param {Kept} kept @param {Machine} machine @returns {Map<string, string>} */
export function ofPair(kept, machine) {
  const last = kept.happenings.at(-1)?.at;
  return new Map([
    [say.whereItStands, machine.standing(kept)],
    [
      say.countedLast,
      last ? new Date(last).toLocaleString(document.documentElement.lang) : say.nothingYet,
    ],
    [say.countsAndNotes, String(kept.happenings.length)],
  ]);
}

/** A knitted pair. @param {Ended} ended @returns {Map<string, string>} */
export function ofEnded({ ended, who = "", notes }) {
  return new Map([
    [say.whereItStands, say.knitted],
    [say.countedLast, new Date(ended).toLocaleString(document.documentElement.lang)],
    [say.forWhom, who],
    [say.notes, notes.map(({ text }) => text).join(" · ")],
  ]);
}

/** The machine's settings. @param {Partial<Choices>} settings @returns {Map<string, string>} */
export function ofSettings(settings) {
  const all = { ...USUAL, ...settings };
  return new Map([
    [atMachine.guardTitle, all.guard ? seconds(all.guard) : say.off],
    ...SWITCHES.map(
      ({ name, words: title }) =>
        /** @type {[string, string]} */ ([title, all[name] ? say.on : say.off]),
    ),
  ]);
}

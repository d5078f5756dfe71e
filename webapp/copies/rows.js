/**
 * What stands here and what is in a copy, in words and side by side.
 * @import {Deleted, Wearer} from "../book/types"
 * @import {Choices} from "../machine/settings.js"
 * @import {Ended, Kept} from "../machine/types"
 * @import {Machine, Row} from "./types"
 */
import { measuresOf } from "../book/measures.js";
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
  const before = { title: "What was written before", here: "this phone’s", file: "the file’s" };
  return found.length ? found : [before];
}

/** A wearer. @param {Deleted} one @returns {Map<string, string>} */
export function ofWearer({ wearer, visits }) {
  /** @type {[keyof Wearer, string][]} */
  const titles = [
    ["label", "Label"],
    ["state", "How far"],
    ["due", "Promised for"],
    ["asked", "Who was asked"],
    ["length", "How long"],
    ["ease", "How close"],
    ["colours", "Colours"],
    ["allergy", "Allergy"],
    ["price", "Price"],
  ];
  const measures = measuresOf(visits.at(-1)?.values ?? {});
  return new Map([
    ...titles.map(
      ([name, title]) => /** @type {[string, string]} */ ([title, String(wearer[name])]),
    ),
    ...measures.map(({ title, text }) => /** @type {[string, string]} */ ([title, text])),
    ["Visits", String(visits.length)],
  ]);
}

/** A pair at the machine. @param {Kept} kept @param {Machine} machine @returns {Map<string, string>} */
export function ofPair(kept, machine) {
  const last = kept.happenings.at(-1)?.at;
  return new Map([
    ["Where it stands", machine.standing(kept)],
    ["Counted last", last ? new Date(last).toLocaleString() : "nothing yet"],
    ["Counts and notes", String(kept.happenings.length)],
  ]);
}

/** A knitted pair. @param {Ended} ended @returns {Map<string, string>} */
export function ofEnded({ ended, who = "", notes }) {
  return new Map([
    ["Where it stands", "knitted"],
    ["Counted last", new Date(ended).toLocaleString()],
    ["For", who],
    ["Notes", notes.map(({ text }) => text).join(" · ")],
  ]);
}

/** The machine's settings. @param {Partial<Choices>} settings @returns {Map<string, string>} */
export function ofSettings(settings) {
  const all = { ...USUAL, ...settings };
  return new Map([
    ["Two within this time count as one", all.guard ? seconds(all.guard) : "off"],
    ...SWITCHES.map(
      ({ name, words: title }) =>
        /** @type {[string, string]} */ ([title, all[name] ? "on" : "off"]),
    ),
  ]);
}

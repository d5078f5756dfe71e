// Reads a question a line (as JSON) and prints what came of it. A text is taken as a file that she picked.
// An object is what a phone holds, read as the page reads it from the phone: written as a copy, and read
// again as a fresh phone reads it.
import { createInterface } from "node:readline";
import { goneOf, visitOf, wearerOf } from "../../webapp/book/record.js";
import { copyOf, readCopy } from "../../webapp/copies/file.js";
import { Locked } from "../../webapp/copies/lock.js";
import { Unreadable } from "../../webapp/copies/unreadable.js";
import { endedOf, happeningOf, sessionOf } from "../../webapp/machine/record.js";
import { choicesOf } from "../../webapp/machine/settings.js";
import { valuesOf } from "../../webapp/page/values_of.js";

/** @param {any} phone @returns what the page accepts of it */
function held({ wearers, visits, sheets, sessions, happenings, ended, settings, dates, gone }) {
  const good = (all, reader) => all.map((one) => read(one, reader)).filter(Boolean);
  const all = good(visits, visitOf);
  const counts = good(happenings, happeningOf);
  return {
    book: good(wearers, wearerOf).map((wearer) => ({
      wearer,
      visits: all.filter((one) => one.wearer === wearer.id),
    })),
    sheets: Object.fromEntries(
      Object.entries(sheets).map(([name, one]) => [name, read(one, valuesOf)]),
    ),
    pairs: good(sessions, sessionOf).map((session) => ({
      session,
      happenings: counts.filter((one) => one.session === session.id),
    })),
    ended: good(ended, endedOf),
    settings: read(settings, choicesOf),
    dates: { mine: dates ?? {} },
    gone: { wearers: good(gone ?? [], goneOf), pairs: [] },
  };
}

function read(one, reader) {
  try {
    return reader(one);
  } catch {
    return null;
  }
}

async function answered(question) {
  if (typeof question !== "string") {
    const copy = held(question);
    const text = copyOf(copy);
    return { held: copy, text, ...(await told(text)) };
  }
  return told(question);
}

async function told(text) {
  try {
    const { copy, unread, altered, ...more } = await readCopy(new Blob([text]));
    const again = await readCopy(new Blob([copyOf(copy)]));
    return { copy, unread, altered: [...altered], ...more, again };
  } catch (error) {
    if (error instanceof Locked) return { sentence: "It is locked." };
    return error instanceof Unreadable ? { sentence: error.message } : { thrown: String(error) };
  }
}

for await (const line of createInterface({ input: process.stdin })) {
  const begun = process.cpuUsage();
  const answer = await answered(JSON.parse(line));
  const { user, system } = process.cpuUsage(begun);
  answer.ms = (user + system) / 1000;
  answer.polluted = Object.keys(Object.prototype).length + ("shown" in {});
  console.log(JSON.stringify(answer));
}

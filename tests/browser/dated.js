// One call of storage/dated.js a line (as JSON: its name and what it is given); prints what it gives.
import { createInterface } from "node:readline";
import { change, datesOf, merge, newest } from "../../webapp/storage/dated.js";

const spelled = (name, text, units) =>
  /^\d+$/.test(text) && name !== "who" ? `${text} ${units}` : text;
const calls = { change, datesOf, newest, merge: (one, other) => merge(one, other, spelled) };

for await (const line of createInterface({ input: process.stdin })) {
  const [name, ...given] = JSON.parse(line);
  console.log(JSON.stringify(calls[name](...given)));
}

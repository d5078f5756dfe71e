// Reads one text a line (as JSON), takes each as a file that she picked, and prints what came of it.
import { createInterface } from "node:readline";
import { copyOf, readCopy, Unreadable } from "../../webapp/copies/file.js";

for await (const line of createInterface({ input: process.stdin })) {
  const file = new Blob([JSON.parse(line)]);
  const begun = process.cpuUsage();
  let answer;
  try {
    const copy = await readCopy(file);
    answer = { copy: copyOf(copy), again: copyOf(await readCopy(new Blob([copyOf(copy)]))) };
  } catch (error) {
    answer = error instanceof Unreadable ? { sentence: error.message } : { thrown: String(error) };
  }
  const { user, system } = process.cpuUsage(begun);
  answer.ms = (user + system) / 1000;
  answer.polluted = Object.keys(Object.prototype).length + ("shown" in {});
  console.log(JSON.stringify(answer));
}

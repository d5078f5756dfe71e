/** Whether a pair stands in the machine's database. */
import { peeked } from "./peeked.js";

export async function anyPair() {
  return (await peeked("heelwise.machine", "sessions", (store) => store.count())) > 0;
}

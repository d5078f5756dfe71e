/**
 * What goes to paper, and its style: loaded once something is to be printed.
 * @import * as Paper from "../paper/main.js"
 */
import { bundle } from "./bundle.js";

/** @type {Promise<typeof Paper> | undefined} */
let part;

export function paper() {
  const { paper = "", paperStyle } = document.documentElement.dataset;
  part ??= bundle(paper, paperStyle).catch((error) => {
    part = undefined; // asked again, it may come
    throw error;
  });
  return part;
}

/**
 * What passes a plan on or goes to paper, and its style: loaded once it is wanted.
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

/**
 * A set's document as one file of HTML that needs nothing else.
 * @import {Block} from "../page/types"
 */
import * as say from "words/sets";
import { FILE_STYLE } from "./file_style.js";
import { markupOf, tree, trees } from "./tree.js";

/** @param {Block[]} blocks @param {{ title: string, language: string }} facts */
export function htmlOf(blocks, { title, language }) {
  const page = tree(
    "html",
    { lang: language },
    tree(
      "head",
      {},
      tree("meta", { charset: "utf-8" }),
      tree("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
      tree("title", {}, title),
      tree("style", {}, FILE_STYLE),
    ),
    tree(
      "body",
      {},
      tree("nav", { "aria-label": say.contents }, contents(blocks)),
      tree("main", {}, ...trees(blocks)),
    ),
  );
  return `<!DOCTYPE html>\n${markupOf(page)}\n`;
}

/** The headings below the title, as links. @param {Block[]} blocks @param {string} [file] in which they stand */
export function contents(blocks, file = "") {
  const heads = blocks.flatMap((one) => (one.kind === "heading" && one.level === 2 ? [one] : []));
  const items = heads.map(({ id, text }) =>
    tree("li", {}, tree("a", { href: `${file}#${id}` }, text)),
  );
  return tree("ol", {}, ...items);
}

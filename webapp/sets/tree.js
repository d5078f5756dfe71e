/**
 * The blocks of a set's document as elements, once: screen and paper get nodes of them, files their markup.
 * @import {Block, Schematic, Table} from "../page/types"
 */
import * as say from "words/sets";

const SVG = "http://www.w3.org/2000/svg";
/** @typedef {{ tag: string, of: Record<string, string | number>, in: (Tree | string)[] }} Tree */

/** @param {string} tag @param {Record<string, string | number>} of its attributes @param {...(Tree | string)} within @returns {Tree} */
export function tree(tag, of, ...within) {
  return { tag, of, in: within };
}

/** Between a figure and its fraction or unit, which are in no language and never part. */
const BEFORE_UNIT = /(?<=\d) (?=\d+\/\d|(?:cm|mm|m|in|yd|g|oz|%)(?![\p{L}\d]))/gu;

/** @param {string} text */
function told(text) {
  return text.replace(BEFORE_UNIT, "\u00a0");
}

/** @param {Block[]} blocks @param {string} [before] set before each id, where more than one document stands on a page */
export function trees(blocks, before = "") {
  return blocks.map((block) => treeOf(block, before));
}

/** @param {Block} block @param {string} before @returns {Tree} */
function treeOf(block, before) {
  switch (block.kind) {
    case "heading":
      return tree(`h${block.level}`, { id: before + block.id }, told(block.text));
    case "caution":
      return tree(
        "p",
        { class: "caution" },
        tree("strong", {}, say.caution),
        ` ${told(block.text)}`,
      );
    case "list":
      return tree(
        block.ordered ? "ol" : "ul",
        {},
        ...block.items.map((one) => tree("li", {}, told(one))),
      );
    case "table":
      return tableOf(block);
    case "schematic":
      return schematicOf(block);
    default:
      return tree("p", {}, told(block.text));
  }
}

/** @param {Table} table */
function tableOf({ caption, head, rows }) {
  const heads = head.map((one) => tree("th", { scope: "col" }, told(one)));
  const lines = rows.map((row) => {
    const cells = row.cells.map((cell, at) =>
      tree("td", { "data-head": told(head[at + 1] ?? "") }, told(cell)),
    );
    return tree("tr", {}, tree("th", { scope: "row" }, told(row.head)), ...cells);
  });
  return tree(
    "table",
    {},
    tree("caption", {}, told(caption)),
    tree("thead", {}, tree("tr", {}, ...heads)),
    tree("tbody", {}, ...lines),
  );
}

/** @param {Schematic} drawn */
function schematicOf({ text, width, height, letter_height, paths, letters }) {
  const drawing = tree(
    "svg",
    { xmlns: SVG, viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": text },
    ...paths.map(({ kind, d }) => tree("path", { class: kind, d })),
    ...letters.map(({ letter, x, y }) =>
      tree(
        "text",
        { x, y: y + letter_height / 3, "font-size": letter_height, "text-anchor": "middle" },
        letter,
      ),
    ),
  );
  return tree("figure", {}, drawing, tree("figcaption", {}, text));
}

/** @param {Tree | string} one @param {string} [space] its namespace @returns {Node} */
export function nodeOf(one, space = "http://www.w3.org/1999/xhtml") {
  if (typeof one === "string") return document.createTextNode(one);
  const own = one.tag === "svg" ? SVG : space;
  const made = document.createElementNS(own, one.tag);
  for (const [name, value] of Object.entries(one.of)) {
    if (name !== "xmlns") made.setAttribute(name, String(value));
  }
  made.append(...one.in.map((inner) => nodeOf(inner, own)));
  return made;
}

/** As markup that HTML and XML read alike. @param {Tree | string} one @returns {string} */
export function markupOf(one) {
  if (typeof one === "string") return escaped(one);
  const attributes = Object.entries(one.of).map(
    ([name, value]) => ` ${name}="${escaped(String(value))}"`,
  );
  const begun = `<${one.tag}${attributes.join("")}`;
  if (!one.in.length && /^(meta|link|path|item|itemref|rootfile)$/.test(one.tag))
    return `${begun}/>`;
  return `${begun}>${one.in.map(markupOf).join("")}</${one.tag}>`;
}

/** Without what XML 1.0 cannot hold. @param {string} text */
function escaped(text) {
  return text
    .replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;");
}

/**
 * A set's document as plain text: a line for each step, tables as lines of what each cell is.
 * @import {Block, Table} from "../page/types"
 */
import * as say from "words/sets";

/** @param {Block[]} blocks */
export function textOf(blocks) {
  return `${blocks.map(one).join("\n\n")}\n`;
}

/** @param {Block} block @returns {string} */
function one(block) {
  switch (block.kind) {
    case "heading":
      return `${"#".repeat(block.level)} ${block.text}`;
    case "caution":
      return `${say.caution} ${block.text}`;
    case "list":
      return block.items
        .map((item, at) => `${block.ordered ? `${at + 1}.` : "-"} ${item}`)
        .join("\n");
    case "table":
      return [block.caption, ...block.rows.map((row) => line(block, row))].join("\n");
    default:
      return block.text;
  }
}

/** @param {Table} table @param {Table["rows"][number]} row */
function line({ head }, row) {
  const cells = row.cells.map((cell, at) => `${head[at + 1]}: ${cell}`);
  return `- ${row.head}. ${cells.join("; ")}`;
}

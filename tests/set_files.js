// The page's own writers of a set's files, in node: {blocks, facts}, then the folder they go to.
import { readFileSync, writeFileSync } from "node:fs";
import { epubOf } from "../webapp/sets/as_epub.js";
import { htmlOf } from "../webapp/sets/as_html.js";
import { textOf } from "../webapp/sets/as_text.js";

const { blocks, facts } = JSON.parse(readFileSync(0, "utf8"));
const folder = process.argv[2];
const now = new Date("2026-11-28T12:00:00Z");
writeFileSync(`${folder}/set.epub`, epubOf(blocks, { ...facts, now }));
writeFileSync(`${folder}/set.html`, htmlOf(blocks, facts));
writeFileSync(`${folder}/set.txt`, textOf(blocks));

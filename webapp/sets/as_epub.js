/**
 * A set's document as a book: EPUB 3.3 (W3C), with what EPUB Accessibility 1.1 asks to be said of it.
 * @import {Block} from "../page/types"
 * @import {KeptSet} from "./kept_sets.js"
 * @import {Tree} from "./tree.js"
 */
import { strToU8, zipSync } from "fflate";
import * as say from "words/sets";
import { contents } from "./as_html.js";
import { FILE_STYLE } from "./file_style.js";
import { markupOf, tree, trees } from "./tree.js";

const XML = '<?xml version="1.0" encoding="utf-8"?>\n';
const XHTML = "http://www.w3.org/1999/xhtml";
const OPS = "http://www.idpf.org/2007/ops";
const READING = "instructions.xhtml";

/** @param {Block[]} blocks @param {{ set: KeptSet, title: string, language: string, now?: Date }} facts */
export function epubOf(blocks, { set, title, language, now = new Date() }) {
  const body = tree("main", {}, ...trees(blocks));
  const list = tree(
    "nav",
    { "epub:type": "toc" },
    tree("h1", {}, say.contents),
    contents(blocks, READING),
  );
  const container = tree(
    "container",
    { version: "1.0", xmlns: "urn:oasis:names:tc:opendocument:xmlns:container" },
    tree(
      "rootfiles",
      {},
      tree("rootfile", {
        "full-path": "OEBPS/package.opf",
        "media-type": "application/oebps-package+xml",
      }),
    ),
  );
  /** @type {Record<string, string>} */
  const files = {
    "META-INF/container.xml": XML + markupOf(container),
    "OEBPS/package.opf": XML + markupOf(packageOf(set, title, language, now)),
    "OEBPS/contents.xhtml": page(say.contents, language, list),
    [`OEBPS/${READING}`]: page(title, language, body),
    "OEBPS/style.css": FILE_STYLE,
  };
  const texts = Object.entries(files).map(([name, text]) => [name, strToU8(text)]);
  // First, and not packed: that is how a reader knows what it is (EPUB 3.3, 4.2.2).
  const mimetype = [strToU8("application/epub+zip"), { level: 0 }];
  const inside = /** @type {any} */ ({ mimetype, ...Object.fromEntries(texts) });
  return zipSync(inside, { mtime: now });
}

/** @param {string} title @param {string} language @param {Tree} body */
function page(title, language, body) {
  /** @type {Record<string, string>} */
  const prefix = body.tag === "nav" ? { "xmlns:epub": OPS } : {};
  const whole = tree(
    "html",
    { xmlns: XHTML, ...prefix, lang: language, "xml:lang": language },
    tree(
      "head",
      {},
      tree("title", {}, title),
      tree("link", { rel: "stylesheet", type: "text/css", href: "style.css" }),
    ),
    tree("body", {}, body),
  );
  return `${XML}<!DOCTYPE html>\n${markupOf(whole)}`;
}

/** @param {KeptSet} set @param {string} title @param {string} language @param {Date} now */
function packageOf({ id, words }, title, language, now) {
  const { maker = "", licence = "", date = "" } = words;
  const property = (/** @type {string} */ name, /** @type {string} */ text) =>
    tree("meta", { property: name }, text);
  const told = [
    ...(maker.trim() ? [tree("dc:creator", {}, maker.trim())] : []),
    ...(licence.trim() ? [tree("dc:rights", {}, licence.trim())] : []),
    ...(isDay(date.trim()) ? [tree("dc:date", {}, date.trim())] : []),
  ];
  const metadata = tree(
    "metadata",
    { "xmlns:dc": "http://purl.org/dc/elements/1.1/" },
    tree("dc:identifier", { id: "identifier" }, `urn:uuid:${uuid(id)}`),
    tree("dc:title", {}, title),
    tree("dc:language", {}, language),
    ...told,
    property("dcterms:modified", `${now.toISOString().slice(0, 19)}Z`),
    property("schema:accessMode", "textual"),
    property("schema:accessMode", "visual"),
    property("schema:accessModeSufficient", "textual"),
    property("schema:accessibilityFeature", "alternativeText"),
    property("schema:accessibilityFeature", "structuralNavigation"),
    property("schema:accessibilityFeature", "tableOfContents"),
    property("schema:accessibilityHazard", "none"),
    property("schema:accessibilitySummary", say.accessibilitySummary),
  );
  const manifest = tree(
    "manifest",
    {},
    tree("item", {
      id: "contents",
      href: "contents.xhtml",
      "media-type": "application/xhtml+xml",
      properties: "nav",
    }),
    tree("item", {
      id: "reading",
      href: READING,
      "media-type": "application/xhtml+xml",
      properties: "svg",
    }),
    tree("item", { id: "style", href: "style.css", "media-type": "text/css" }),
  );
  return tree(
    "package",
    {
      xmlns: "http://www.idpf.org/2007/opf",
      version: "3.0",
      "unique-identifier": "identifier",
      "xml:lang": language,
    },
    metadata,
    manifest,
    tree("spine", {}, tree("itemref", { idref: "reading" })),
  );
}

/** Whether a text is a day of the calendar, as ISO 8601 writes it. @param {string} text */
function isDay(text) {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(text) : Number.NaN;
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(text);
}

/** @param {string} id of the set, a letter before 32 hexadecimal digits */
function uuid(id) {
  return id.slice(1).replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}

/** What the fields of the page are called, to show what differs between two sheets. */
import * as say from "words/copies";
import { idOf } from "../page/place_of.js";
import { inAnyRow } from "../page/within.js";

/** A field of a set of instructions: after the set's id. */
const OF_SET = /^s[0-9a-f]{32}\.(.+)/;

/** @param {string} name of a field @returns {string} as the page names it */
export function titleOf(name) {
  const [, field = ""] = OF_SET.exec(name) ?? [];
  if (field.startsWith("plan.")) return titleOf(field.slice("plan.".length));
  if (field === "made") return say.somethingElse;
  if (field) return say.ofSet({ field: /** @type {"sizes"} */ (field) });
  const number = /\.(\d+)\./.exec(name)?.[1];
  const title =
    labelOf(document, name) ?? labelOf(rowsOf(document), inAnyRow(name)) ?? say.somethingElse;
  return number === undefined ? title : say.inRow({ field: title, number: Number(number) + 1 });
}

/** @param {ParentNode} within @param {string} name */
function labelOf(within, name) {
  const field = within.querySelector(`[name="${CSS.escape(name)}"]`);
  const label =
    within.querySelector(`label[for="${CSS.escape(idOf(name))}"]`) ??
    field?.closest("fieldset")?.querySelector("legend");
  return label?.textContent?.trim();
}

/** The rows of lists that grow, which stand in templates. @param {Document} page */
function rowsOf(page) {
  const all = new DocumentFragment();
  for (const template of page.querySelectorAll("template")) {
    all.append(template.content.cloneNode(true));
  }
  return all;
}

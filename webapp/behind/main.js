/**
 * What opens from the steps: how the sock is made, the shelf, the table of sizes, the settings. Their fields,
 * code and looks come once the first screen stands; until then `Form` keeps what their fields hold.
 * @import {Draft} from "../page/draft.js"
 * @import {Form} from "../page/form.js"
 * @import {StepsNav} from "../page/steps_nav.js"
 * @import {Asks} from "../page/types"
 */
import markup from "words/markup";
import { placesBeside } from "../page/places_beside.js";
import { wireRows } from "../page/rows.js";
import { wireTheme } from "../page/theme.js";
import { fragment } from "../page/trusted.js";
import { showChanges } from "./changes.js";
import { ChartScreen } from "./chart.js";
import { wireLanguages } from "./languages.js";
import { wireGist } from "./made.js";
import { wireSettings } from "./settings.js";
import { ShelfScreen } from "./shelf.js";

/**
 * @typedef {object} Host
 * @property {Form} form @property {Draft} draft @property {StepsNav} nav @property {Asks} engine
 * @property {(sentence: string) => void} onTrouble
 * @property {(name: "shelf" | "chart", list: Form) => void} beside a list of her own beside the plan
 */

/** Puts the pages into the document and wires them. @param {Host} host @returns {{ shelf: ShelfScreen, chart: ChartScreen }} */
export function open({ form, draft, nav, engine, onTrouble, beside }) {
  const version = document.documentElement.dataset.version ?? "";
  const pages = fragment(markup.replace("{version}", version));
  placesBeside(pages);
  const [made, ...others] = /** @type {HTMLElement[]} */ (Array.from(pages.children));
  document.getElementById("yarn")?.after(made);
  form.element.after(...others);
  wireRows(form, made);
  wireTheme(draft);
  wireLanguages(draft);
  showChanges(/** @type {HTMLElement} */ (document.getElementById("changes")));
  const shelf = new ShelfScreen({ engine, nav, draft, plan: form, onTrouble });
  const chart = new ChartScreen({ engine, nav, draft, onTrouble });
  shelf.form.showIn(form.units);
  chart.showIn(form.units);
  beside("shelf", shelf.form);
  beside("chart", chart.form);
  form.whole(made);
  wireGist(form);
  wireSettings({ form, shelf: shelf.form, nav });
  return { shelf, chart };
}

/**
 * A visit's measures in words, named as the form of step one names them.
 * @import {Values} from "../page/types"
 */
import * as say from "words/book";
import { idOf } from "../page/place_of.js";
import { spelled } from "../page/spelled.js";
import { within } from "../page/within.js";

/** @param {string} name */
const isMeasure = (name) =>
  within(name, "foot", "other_foot", "person") && name !== "person.shoe_size.system";

/** @param {Values} values @returns {{ title: string, text: string }[]} */
export function measuresOf(values) {
  return Object.entries(values)
    .filter(([name, value]) => isMeasure(name) && value.trim())
    .map(([name, value]) => {
      const title = document.querySelector(`label[for="${idOf(name)}"]`)?.textContent ?? name;
      const system = values["person.shoe_size.system"] ?? "";
      if (name === "person.shoe_size.size")
        return { title: say.shoeSize, text: `${value} ${system}` };
      const unit = document.querySelector(
        `#${CSS.escape(idOf(name))}-unit [data-units="${values.units === "in" ? "in" : "cm"}"]`,
      );
      return { title, text: unit ? spelled(value, unit.textContent ?? "") : value };
    });
}

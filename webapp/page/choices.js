/**
 * What a choice on the form shows or hides: the chips of usual cylinders, the three ways to know the
 * fabric, a child's age, the needles of a mock rib; and the folds that open when they hold something.
 * @import {Values} from "./types"
 * @import {Form} from "./form.js"
 */

import { goesByNth, OF_CHANGE } from "./request.js";

/** @param {Form} form */
export function wireChoices(form) {
  /** @type {NodeListOf<HTMLButtonElement>} */
  const chips = document.querySelectorAll("#chips button");
  for (const chip of chips) {
    chip.addEventListener("click", () => form.set("cylinder.slots", chip.dataset.slots ?? ""));
  }
  const show = () => {
    const values = form.values();
    for (const chip of chips) {
      const chosen = chip.dataset.slots === values["cylinder.slots"]?.trim();
      chip.setAttribute("aria-pressed", String(chosen));
    }
    for (const way of document.querySelectorAll(".way")) {
      /** @type {HTMLElement} */ (way).hidden =
        /** @type {HTMLElement} */ (way).dataset.way !== values.way;
    }
    offerSizes(values);
    hide("#age-place", values.who !== "child" && !values["person.age"]?.trim());
    hide('[data-field="sock.cuff.every"]', !goesByNth(values));
    for (const name of OF_CHANGE) {
      hide(`[data-field="${name}"]`, values["sock.cuff.kind"] !== "set-up rib");
    }
    for (const group of ["foot.again", "other_foot", "other_foot.again"]) {
      const filled = holds(values, `${group}.`);
      open(group.replace(".", "-"), filled);
      open("feet", filled);
    }
    open("shoe", Boolean(values["person.shoe_size.size"]?.trim()));
    open("person-more", Boolean(values["person.height"] || values["person.weight"]));
    open("sock-more", holds(values, "sock."));
    open("toes-more", holds(values, "foot.toe_breadth"));
    open(
      "long-leg",
      [
        "sock.leg.height",
        "sock.leg.girths.",
        "sock.leg.bands.",
        "sock.cuff.flat_",
        "sock.cuff.pulled_",
      ].some((group) => holds(values, group)),
    );
    open(
      "swatch-more",
      ["mark", "grams", "unwashed_"].some((name) => holds(values, `fabric.swatch.${name}`)),
    );
    open("swatches", holds(values, "fabric.swatches.") || holds(values, "fabric.mark"));
    open("strands", holds(values, "fabric.strands") || holds(values, "fabric.along"));
    open("first-sock", holds(values, "first_sock."));
    open("stock", holds(values, "stock."));
    for (const name of ["apart", "ball", "margin"]) {
      open("stock-colours", holds(values, `stock.${name}`));
    }
    open("stock-stripes", holds(values, "stock.repeat"));
  };
  form.addEventListener("change", show);
  show();
}

/** @param {string} selector @param {boolean} hidden */
function hide(selector, hidden) {
  const element = document.querySelector(selector);
  if (element instanceof HTMLElement) element.hidden = hidden;
}

/**
 * Children's sizes for a child, grown people's for others; a size that is typed keeps its system.
 * @param {Values} values
 */
function offerSizes(values) {
  const system = /** @type {HTMLSelectElement} */ (
    document.querySelector('[name="person.shoe_size.system"]')
  );
  const typed = Boolean(values["person.shoe_size.size"]?.trim());
  const of = values.who === "child" ? "child" : "grown";
  for (const option of system.options) {
    const fits = (option.dataset.for ?? of) === of || (typed && option.selected);
    option.hidden = option.disabled = !fits;
  }
  if (system.selectedOptions[0]?.disabled) {
    const country = system.value.slice(0, 2); // EU, UK, US
    const offered = [...system.options].filter((option) => !option.disabled);
    const like = offered.find((option) => option.value.startsWith(country)) ?? offered[0];
    system.value = like?.value ?? "";
  }
}

/** Whether any field of a group is filled. @param {Values} values @param {string} group */
function holds(values, group) {
  return Object.entries(values).some(([name, value]) => name.startsWith(group) && value.trim());
}

/** Open a fold that is filled; never close what she opened. @param {string} id @param {boolean} filled */
function open(id, filled) {
  const fold = document.getElementById(id);
  if (filled && fold instanceof HTMLDetailsElement) fold.open = true;
}

/**
 * What a choice on the form shows or hides: the chips of usual cylinders, the three ways to know the
 * fabric, a child's age, the needles of a mock rib; and the folds that open when they hold something.
 * @import {Values} from "./types"
 * @import {Form} from "./form.js"
 */

import { goesByNth, goesWith, OF_CHANGE } from "./request.js";

const OF_A_CHILD = ["person.age", "sock.growing_room"];

/** @param {Form} form */
export function wireChoices(form) {
  form.element.addEventListener("click", ({ target }) => {
    const chip = target instanceof Element && target.closest("button[data-writes]");
    if (chip instanceof HTMLButtonElement) form.set(written(chip), chip.value);
  });
  const show = () => {
    const values = form.values();
    /** @type {NodeListOf<HTMLButtonElement>} */
    const chips = form.element.querySelectorAll("button[data-writes]");
    for (const chip of chips) {
      const chosen = chip.value === values[written(chip)]?.trim();
      chip.setAttribute("aria-pressed", String(chosen));
    }
    for (const way of document.querySelectorAll(".way")) {
      /** @type {HTMLElement} */ (way).hidden =
        /** @type {HTMLElement} */ (way).dataset.way !== values.way;
    }
    offerSizes(values);
    const needles = form.input("fabric.swatch.needles");
    if (needles) needles.placeholder = values["cylinder.slots"]?.trim() ?? "";
    hide("#age-place", values.who !== "child" && !holds(values, ...OF_A_CHILD));
    hide('[data-field="sock.cuff.every"]', !goesByNth(values));
    hide('[data-field="sock.leg.plain"]', !goesWith("sock.leg.plain", values));
    hide(
      '[data-field="sock.heel.flap"]',
      values["sock.heel.kind"] !== "flap" && !holds(values, "sock.heel.flap"),
    );
    for (const name of OF_CHANGE) {
      hide(`[data-field="${name}"]`, values["sock.cuff.kind"] !== "set-up rib");
    }
    for (const group of ["foot.again", "other_foot", "other_foot.again"]) {
      open(group.replace(".", "-"), holds(values, `${group}.`));
    }
    open("shoe", Boolean(values["person.shoe_size.size"]?.trim()));
    open("person-more", Boolean(values["person.height"] || values["person.weight"]));
    open("toes-more", holds(values, "foot.toe_breadth"));
    open(
      "long-leg",
      holds(
        values,
        "sock.leg.height",
        "sock.leg.girths.",
        "sock.leg.bands.",
        "sock.cuff.flat_",
        "sock.cuff.pulled_",
      ),
    );
    open(
      "swatch-more",
      holds(
        values,
        ...["mark", "hung", "grams", "unwashed_"].map((name) => `fabric.swatch.${name}`),
      ),
    );
    open("swatches", holds(values, "fabric.swatches.", "fabric.mark", "fabric.hung"));
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

/** The field that a button writes into. @param {HTMLButtonElement} chip */
function written(chip) {
  return chip.dataset.writes ?? "";
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

/** Whether any field of some groups is filled. @param {Values} values @param {...string} groups */
function holds(values, ...groups) {
  return Object.entries(values).some(
    ([name, value]) => groups.some((group) => name.startsWith(group)) && value.trim(),
  );
}

/** Open a fold that is filled; never close what she opened. @param {string} id @param {boolean} filled */
function open(id, filled) {
  if (!filled) return;
  for (
    let fold = document.getElementById(id);
    fold;
    fold = fold.parentElement?.closest("details") ?? null
  )
    if (fold instanceof HTMLDetailsElement) fold.open = true;
}

/**
 * Between the flat names of the form ("foot.length") and the nested request the engine takes.
 * Nothing here reads a number: what was typed goes to the engine as it was typed.
 * @import {Guessed, Request, Values} from "./types"
 * @import {Place} from "./within.js"
 */
import { asKept, spelled } from "./spelled.js";
import { within } from "./within.js";

/** @type {Place[]} */
const YARN = ["fabric.yarn", "fabric.strands", "fabric.along"];
/** @type {Record<string, Place[]>} */
const WAY_FIELDS = {
  swatch: ["fabric.swatch", "fabric.swatches", "fabric.mark", "fabric.hung", ...YARN],
  gauge: ["fabric.stitches", "fabric.rounds", ...YARN],
  yarn: YARN,
};

/** What a yarn is of which nothing is said: a name that the engine knows. */
const USUAL_YARN = "sock";

/**
 * Build the request for what is typed: blank fields and the fields of the other ways are left out.
 * @param {Values} values
 * @returns {Request}
 */
export function toRequest(values) {
  /** @type {Record<string, any>} */
  const request = { units: values.units === "in" ? "in" : "cm" };
  const ofWay = WAY_FIELDS[values.way] ?? [];
  for (const [name, value] of Object.entries(values)) {
    if (!name.includes(".") || value.trim() === "") continue;
    if (within(name, "fabric") && !within(name, ...ofWay)) continue;
    if (within(name, "person.shoe_size") && !values["person.shoe_size.size"]?.trim()) continue;
    if (!goesWith(name, values)) continue;
    const text = name === "fabric.yarn" ? asOnBand(value, values) : value;
    put(request, name.split("."), asKept(name, text, values.units));
  }
  if (values.way === "yarn" && !values["fabric.yarn"]?.trim()) {
    put(request, ["fabric", "yarn"], USUAL_YARN);
  }
  const swatch = request.fabric?.swatch;
  if (swatch && request.cylinder?.slots) swatch.needles ??= request.cylinder.slots;
  if (values.who === "woman" || values.who === "man") {
    put(request, ["person", "sex"], values.who);
  }
  if (values.who === "child") put(request, ["person", "child"], true);
  return /** @type {Request} */ (request);
}

/** What is not told, and is taken as usual. @param {Request} request @returns {Guessed} */
export function untold({ cylinder, fabric }) {
  const { slots } = /** @type {{ slots?: string }} */ (cylinder ?? {});
  return [
    slots ? [] : /** @type {const} */ (["cylinder"]),
    fabric ? [] : /** @type {const} */ (["fabric"]),
  ].flat();
}

/** A request with what is usual in place of what is not told. @param {Request} request @returns {Request} */
export function withUsual({ cylinder, fabric, ...request }) {
  const { usualSlots } = document.documentElement.dataset;
  return {
    ...request,
    cylinder: { slots: usualSlots, .../** @type {object} */ (cylinder) },
    fabric: fabric ?? { yarn: USUAL_YARN },
  };
}

/** A length alone; another number of a yarn says its weight too, or needs none. */
const LENGTH = /^[\d.,\s]+((m|y)[^\d/]*)?$/i;
const ON_BAND = /^\s*([\d.,]+\s*(?:m|yd))\s*\/\s*([\d.,]+\s*(?:g|oz))\s*$/i;

/** The length and the weight that a yarn's band says, as one. @param {string} yarn @param {Values} values */
function asOnBand(yarn, { band = "", units }) {
  if (!band.trim() || !LENGTH.test(yarn)) return yarn;
  return `${spelled(yarn, units === "in" ? "yd" : "m")} / ${spelled(band, "g")}`;
}

/** Where a rib changes. @type {Place[]} */
export const OF_CHANGE = ["sock.cuff.change_after", "sock.cuff.change_every"];

/** Whether a field goes with what else is chosen. @param {string} name @param {Values} values */
export function goesWith(name, values) {
  if (name === "sock.cuff.every") return goesByNth(values);
  if (name === "sock.leg.plain") return values["sock.leg.kind"] === "ribbed";
  return !within(name, ...OF_CHANGE) || values["sock.cuff.kind"] === "set-up rib";
}

/** Whether the cuff goes by every nth needle. @param {Values} values */
export function goesByNth(values) {
  return ["mock rib", "mock rib hem", "set-up rib"].includes(values["sock.cuff.kind"] ?? "");
}

/**
 * A key that is a number makes a list: "fabric.swatches.0.needles".
 * @param {Record<string, any>} into
 * @param {string[]} path
 * @param {string | boolean} value
 */
function put(into, path, value) {
  const last = path[path.length - 1];
  path.slice(0, -1).forEach((key, at) => {
    if (!Object.hasOwn(into, key)) into[key] = /^\d+$/.test(path[at + 1]) ? [] : {};
    into = into[key];
  });
  into[last] = value;
}

/**
 * Lay a request out as form values, as a plan's link or the example holds it.
 * @param {Record<string, any>} request
 * @returns {Values}
 */
export function toValues(request) {
  /** @type {Values} */
  const values = {};
  /** @param {Record<string, any>} part @param {string} path */
  const walk = (part, path) => {
    for (const [key, value] of Object.entries(part)) {
      if (value === null || value === undefined) continue;
      const name = path + key;
      if (Array.isArray(value) && value.every((one) => typeof one === "string")) {
        values[name] = value.join(", "); // a list of words is one field's text
      } else if (typeof value === "object") walk(value, `${name}.`);
      else values[name] = String(value);
    }
  };
  walk(request, "");
  const { fabric = {}, person = {} } = request;
  const [, length, weight] = ON_BAND.exec(fabric.yarn ?? "") ?? [];
  if (length && weight) Object.assign(values, { "fabric.yarn": length, band: weight });
  values.units = request.units === "in" ? "in" : "cm";
  values.way =
    fabric.swatch || fabric.swatches
      ? "swatch"
      : fabric.stitches || fabric.rounds
        ? "gauge"
        : "yarn";
  if (!request.fabric) values.way = "swatch";
  values.who = person.child ? "child" : (person.sex ?? "");
  delete values["person.sex"];
  delete values["person.child"];
  return values;
}

/**
 * Tell whether anything was typed at all (the choices that always have a value do not count).
 * @param {Values} values
 */
export function isEmpty(values) {
  return !Object.entries(values).some(
    ([name, value]) =>
      name.includes(".") &&
      !within(name, "person.shoe_size.system", "fabric.swatches.ROW.kind") &&
      value.trim() !== "",
  );
}

/**
 * The settings that have no field of their own: the units are those of the sheet, the cylinders those of the
 * plan and of the shelf, and the browser says whether it keeps what is kept.
 * @import {Form} from "../page/form.js"
 * @import {StepsNav} from "../page/steps_nav.js"
 */
import { browserKeeps, browserMayDelete, browserSilent } from "words/copies";
import * as say from "words/page";
import { persist, persisted } from "../storage/persist.js";

const KEEPS = {
  keeps: browserKeeps,
  "may delete": browserMayDelete,
  "does not say": browserSilent,
};

/** @param {string} id */
const place = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** @param {{ form: Form, shelf: Form, nav: StepsNav }} parts `shelf`: the list of cylinders and yarns */
export function wireSettings({ form, shelf, nav }) {
  wireUnits(form);
  wireText("settings-slots", form, "cylinder.slots");
  wireText("settings-cylinders", shelf, "shelf.cylinders");
  wireKept(nav);
}

/** The same choice as at the top of the first step. @param {Form} form */
function wireUnits(form) {
  const choice = place("settings-units");
  /** @param {ParentNode} within @param {string} units @returns {HTMLInputElement | null} */
  const radio = (within, units) => within.querySelector(`input[value="${units}"]`);
  const show = () => {
    const shown = radio(choice, form.units);
    if (shown) shown.checked = true;
  };
  form.addEventListener("change", show);
  show();
  choice.addEventListener("change", ({ target }) => {
    const { value } = /** @type {HTMLInputElement} */ (target);
    radio(/** @type {HTMLElement} */ (document.querySelector("#measure .switch")), value)?.click();
  });
}

/** What is typed elsewhere. @param {string} id of its place @param {Form} form @param {string} name of the field */
function wireText(id, form, name) {
  const shown = place(id);
  const none = shown.textContent ?? "";
  const show = () => {
    shown.textContent = form.value(name).trim() || none;
  };
  form.addEventListener("change", show);
  show();
}

/** @param {StepsNav} nav */
function wireKept(nav) {
  const told = place("settings-kept");
  const button = place("ask-to-keep");
  const show = async (asked = false) => {
    const [keeps, size] = await Promise.all([persisted(), megabytes()]);
    const words = asked && keeps === "may delete" ? say.askedInVain : KEEPS[keeps];
    told.textContent = size ? `${words} ${say.roomTaken({ size })}` : words;
    button.hidden = keeps !== "may delete";
    if (asked && button.hidden) place("settings-title").focus({ preventScroll: true });
  };
  const shown = () => nav.step === "settings" && show();
  nav.addEventListener("step", shown);
  shown();
  button.addEventListener("click", async () => {
    await persist();
    await show(true);
  });
}

/** What all of it takes, the page itself too; 0 where the browser does not say. */
async function megabytes() {
  const { usage = 0 } = (await navigator.storage?.estimate?.().catch(() => null)) ?? {};
  return Math.ceil(usage / 1e6);
}

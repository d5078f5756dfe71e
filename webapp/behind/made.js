/**
 * What is chosen of how the sock is made, in a line at the way there.
 * @import {Form} from "../page/form.js"
 */
import * as say from "words/page";

const PARTS = /** @type {const} */ (["cuff", "leg", "heel", "toe"]);

/** @param {Form} form */
export function wireGist(form) {
  const place = /** @type {HTMLElement} */ (document.getElementById("made-gist"));
  const usual = place.textContent ?? "";
  const show = () => {
    const kinds = PARTS.map((part) => `sock.${part}.kind`);
    const chosen = PARTS.filter((part) => form.value(`sock.${part}.kind`)).map((part) =>
      say.madePart({ part, kind: nameOf(form, `sock.${part}.kind`) }),
    );
    const told = Object.entries(form.values());
    const own = told.some(
      ([name, text]) =>
        name.startsWith("sock.") &&
        name !== "sock.growing_room" && // is asked beside the age
        name !== "sock.string" &&
        !name.startsWith("sock.colors.") &&
        !kinds.includes(name) &&
        text.trim(),
    );
    if (own) chosen.push(say.madeOwn);
    if (told.some(([name, text]) => name.startsWith("sock.colors.") && text.trim()))
      chosen.push(say.madeColors);
    if (form.value("sock.string")) chosen.push(say.madeString);
    place.textContent = chosen.length ? [...chosen, say.madeRest].join(" · ") : usual;
  };
  form.addEventListener("change", show);
  show();
}

/** As its choice is called. @param {Form} form @param {string} field */
function nameOf(form, field) {
  const radios = form.element.elements.namedItem(field);
  const chosen =
    radios instanceof RadioNodeList &&
    [...radios].find((one) => one instanceof HTMLInputElement && one.checked);
  const words = chosen ? chosen.parentElement?.querySelector("span")?.firstChild : null;
  return words?.textContent?.trim() ?? "";
}

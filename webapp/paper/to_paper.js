/**
 * The one place on the page that is for paper, never seen on the screen.
 * @import {TemplateResult} from "lit-html"
 */
import { render } from "lit-html";
import { printOnly } from "../page/paper.js";
import { showPicture } from "../page/picture.js";

/**
 * @param {TemplateResult} template
 * @param {string | null} [code] the svg of a code, for the place that the template leaves for it
 */
export function toPaper(template, code) {
  const place = document.getElementById("paper") ?? made();
  render(template, place);
  const codePlace = /** @type {HTMLElement | null} */ (place.querySelector(".code-place"));
  codePlace?.replaceChildren(); // that of the pair before
  if (code && codePlace) showPicture(code, codePlace);
  printOnly("paper");
}

function made() {
  const place = document.createElement("div");
  place.id = "paper";
  document.body.append(place);
  return place;
}

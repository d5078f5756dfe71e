/**
 * The one place on the page that is for paper, never seen on the screen.
 * @import {TemplateResult} from "lit-html"
 */
import { render } from "lit-html";
import { printOnly } from "../page/paper.js";
import { showPicture } from "../page/picture.js";

/**
 * @param {TemplateResult} template
 * @param {(string | null)[]} [codes] the svg of each code, for the places that the template leaves for them
 */
export function toPaper(template, codes = []) {
  const place = document.getElementById("paper") ?? made();
  render(template, place);
  const codePlaces = /** @type {NodeListOf<HTMLElement>} */ (place.querySelectorAll(".code-place"));
  codePlaces.forEach((codePlace, at) => {
    codePlace.replaceChildren(); // that of the pair before
    const code = codes[at];
    if (code) showPicture(code, codePlace);
  });
  printOnly("paper");
}

function made() {
  const place = document.createElement("div");
  place.id = "paper";
  document.body.append(place);
  return place;
}

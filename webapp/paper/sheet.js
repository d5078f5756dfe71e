/** A sheet over the whole phone in which something is written on before it is printed. */
import { enterGoesOn } from "../page/enter_key.js";

/** Gone once it is closed. @param {string} id its title has the id with "-title" */
export function paperSheet(id) {
  const sheet = document.createElement("dialog");
  sheet.id = id;
  sheet.className = "paper-sheet";
  sheet.setAttribute("aria-labelledby", `${id}-title`);
  sheet.addEventListener("close", () => sheet.remove());
  const other = document.getElementById(id); // of a second tap
  if (other instanceof HTMLDialogElement) other.close();
  other?.remove();
  document.body.append(sheet);
  enterGoesOn(sheet);
  return sheet;
}

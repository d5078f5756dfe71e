/**
 * The one time that somebody is told what a plain tab of Safari does. WebKit deletes what a site has stored
 * after seven days of use of the browser in which nobody touched that site; a page on the home screen counts
 * its own days (WebKit's announcement of 24 March 2020, as others cite it). What a page on the home screen
 * keeps is apart from what the tab keeps (from memory): a copy has to go along.
 */
import { html, nothing } from "lit-html";
import * as say from "words/book";
import { oneLine } from "../page/one_line.js";

const TOLD = "heelwise.home_told";

/** Whether it is time to tell: something is held, in a tab of Safari, and it was not told before. @param {boolean} holds */
export function atRisk(holds) {
  return holds && navigator.vendor?.startsWith("Apple") && !onHomeScreen() && !told();
}

function onHomeScreen() {
  const alone = matchMedia("(display-mode: standalone)").matches;
  return alone || /** @type {any} */ (navigator).standalone === true;
}

/** @param {{ holds: boolean, save: () => void, redraw: () => void }} parts `holds`: the book, anything */
export function homeScreen({ holds, save, redraw }) {
  if (!atRisk(holds)) return nothing;
  const close = () => {
    remember();
    redraw();
  };
  return html`<section id="home-screen" aria-label=${say.keepTheBook}>${oneLine(
    say.safariMayDelete,
    html`<p>${say.safariWhen}</p>
      <ol>
        <li>${say.homeSave}</li>
        <li>${say.homeAdd}</li>
        <li>${say.homeTake}</li>
      </ol>
      <div class="row"><button type="button" id="home-copy" @click=${save}>${say.saveAll}</button>
        <button type="button" id="home-close" @click=${close}>${say.homeClose}</button></div>`,
  )}</section>`;
}

function told() {
  try {
    return localStorage.getItem(TOLD) !== null;
  } catch {
    return false;
  }
}

function remember() {
  try {
    localStorage.setItem(TOLD, "1");
  } catch {
    // It is told again next time.
  }
}

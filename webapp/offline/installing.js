/**
 * The way onto the phone's home screen: a button where the browser offers to install, words where only its
 * own menu can (Safari on a phone), nothing where it is there already.
 */
import * as say from "words/installing";

/** @typedef {Event & { prompt: () => Promise<unknown> }} Offer what Chromium fires (WICG, beforeinstallprompt) */

/** Show it at the foot of the page. */
export function offerInstall() {
  const foot = document.getElementById("stored-line")?.parentElement;
  if (!foot || matchMedia("(display-mode: standalone)").matches) return;
  const place = document.createElement("p");
  place.id = "install";
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault(); // no banner over her work
    const offer = /** @type {Offer} */ (event);
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = say.install;
    button.addEventListener("click", () => {
      place.remove(); // an offer can be taken up once
      offer.prompt().catch(() => {});
    });
    place.replaceChildren(button);
    foot.append(place);
  });
  addEventListener("appinstalled", () => place.remove());
  // Only Safari on a phone or tablet has this; false, as long as it is not on the home screen.
  if (/** @type {{ standalone?: boolean }} */ (navigator).standalone === false) {
    place.textContent = say.toHomeScreen;
    foot.append(place);
  }
}

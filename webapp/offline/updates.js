/**
 * The page's side of the service worker: says when the site is stored on the phone, offers a new
 * version when one waits, and never lets a page of one version run on the files of another.
 */

import { messageSW, Workbox } from "workbox-window";
import { script } from "../page/trusted.js";

/** What each version brought: longer with each, so it comes with this and not in the page itself. */
export { default as changes } from "../data/changes.json";

const HOUR = 3_600_000;

/**
 * @param {object} options
 * @param {string} options.serviceWorker its address
 * @param {(accept: () => void) => void} options.onOffer a new version waits; `accept` takes it
 * @param {() => void} options.onOfflineReady all that the site needs is on the phone
 */
export function watchForUpdates({ serviceWorker, onOffer, onOfflineReady }) {
  if (!("serviceWorker" in navigator)) return;
  const container = navigator.serviceWorker;
  const workbox = new Workbox(script(serviceWorker));
  workbox.addEventListener("waiting", () => onOffer(() => workbox.messageSkipWaiting()));
  const settle = () => reloadIfOther(onOfflineReady);
  container.addEventListener("controllerchange", settle);
  settle(); // it may have changed before this was listened for

  let asked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - asked < HOUR) return;
    asked = Date.now();
    workbox.update().catch(() => {}); // no network: next time
  });
  // Waits for the page's load event. Storage may be closed to us (private windows): then the page
  // works as long as there is a network, and says nothing of being stored.
  workbox.register().catch(() => {});
}

/**
 * Reload when a version other than this page's has taken over, here or in another tab.
 * @param {() => void} onSame all that the site needs is on the phone
 */
async function reloadIfOther(onSame) {
  const { controller } = navigator.serviceWorker;
  if (!controller) return;
  const version = await messageSW(controller, { type: "VERSION" }); // never, while it lacks a file
  if (version === document.documentElement.dataset.version) onSame();
  else location.reload();
}

/**
 * The page's side of the service worker: says when the site is stored on the phone, offers a new
 * version when one waits, and never lets a page of one version run on the files of another.
 */

import * as say from "words/progress";
/** @import {Engine} from "../worker/client.js" */
import { messageSW, Workbox } from "workbox-window";
import { script } from "../page/trusted.js";
import { stored } from "../worker/snapshot.js";
import { tellDue } from "./due.js";
import { takeHanded, takeOpened } from "./handed.js";
import { offerInstall } from "./installing.js";
import { atFoot, megabytes, showComing } from "./progress.js";

export { slidingTape } from "../page/sliding_tape.js";

const HOUR = 3_600_000;

/**
 * @param {object} options
 * @param {string} options.serviceWorker its address
 * @param {Engine} options.engine the line is the calculator's until that has started or cannot
 * @param {(accept: () => void) => void} options.onOffer a new version waits; `accept` takes it
 * @param {() => void} options.onOfflineReady all that the site needs is on the phone
 * @param {import("./handed.js").Take} options.onCopy a copy came from outside the page
 */
export function watchForUpdates({ serviceWorker, engine, onOffer, onOfflineReady, onCopy }) {
  showComing(engine);
  offerInstall();
  tellDue();
  takeOpened(onCopy);
  if (!("serviceWorker" in navigator)) return;
  const container = navigator.serviceWorker;
  const workbox = new Workbox(script(serviceWorker));
  workbox.addEventListener("waiting", () => onOffer(() => workbox.messageSkipWaiting()));
  const settle = () =>
    reloadIfOther(() => {
      atFoot("");
      onOfflineReady();
      offerSnapshot();
      takeHanded(onCopy);
    });
  container.addEventListener("message", ({ data }) => {
    if (data?.type !== "STORING" || container.controller) return;
    const { come, of } = data;
    atFoot(say.storing({ come: megabytes(come), of: megabytes(of) }));
  });
  const register = () =>
    workbox.register().then(
      (registration) => {
        const installing = registration?.installing;
        installing?.addEventListener("statechange", () => {
          if (installing.state === "redundant" && !container.controller) atFoot(say.notAllStored);
        });
      },
      () => {},
    );
  // What was stored before the line broke off is not asked for again.
  addEventListener("online", () => container.controller || register());
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
  over(engine).then(register);
}

/** On a phone that saves data the snapshot waits for a tap: without it, a start only takes longer. */
async function offerSnapshot() {
  const { connection } = /** @type {{ connection?: { saveData?: boolean } }} */ (navigator);
  const { snapshot = "" } = document.documentElement.dataset;
  if (!connection?.saveData || (await stored(snapshot))) return;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = say.getFasterStart;
  button.addEventListener("click", async () => {
    button.disabled = true;
    const { controller } = navigator.serviceWorker;
    if (controller) await messageSW(controller, { type: "ALL" });
    atFoot("");
  });
  atFoot(say.fasterStart({ size: megabytes(SIZES[snapshot] ?? 0) })).append(" ", button);
}

/** Once its start is over, whatever came of it. @param {Engine} engine @returns {Promise<void>} */
function over(engine) {
  if (engine.state !== "starting") return Promise.resolve();
  return new Promise((go) => engine.addEventListener("state", () => go(), { once: true }));
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

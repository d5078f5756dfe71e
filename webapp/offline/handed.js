/**
 * A copy that comes from outside the page: a file opened with the installed page (WICG, File Handling), or one
 * that the phone's share sheet handed to it (W3C, Web Share Target), which the service worker holds meanwhile.
 */
import { messageSW } from "workbox-window";

/** @typedef {(file: File | null) => void} Take null where the file could not be read */
/** @typedef {{ setConsumer: (take: (launch: { files?: { getFile: () => Promise<File> }[] }) => void) => void }} Launches */

/** @param {Take} take */
export function takeOpened(take) {
  const { launchQueue } = /** @type {{ launchQueue?: Launches }} */ (globalThis);
  launchQueue?.setConsumer(async ({ files: [file] = [] }) => {
    if (file) take(await file.getFile().catch(() => null));
  });
}

/** @param {Take} take */
export async function takeHanded(take) {
  const { controller } = navigator.serviceWorker;
  const file = controller && (await messageSW(controller, { type: "HANDED" }));
  if (controller && file !== undefined) take(file);
}

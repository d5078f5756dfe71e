/**
 * Keeps the whole site on the phone, one version at a time.
 *
 * All files of a version are stored before it counts as installed, each checked against its hash:
 * a half download, or the sign-in page of a hotel's network, stops the install and leaves the old
 * version as it was. A new version then waits until the person takes it.
 */

/// <reference path="./globals.d.ts" />

import { addPlugins, precacheAndRoute } from "workbox-precaching";

// Ask the host again for what the browser may hold already: no second download of what is right,
// and nothing wrong that was kept can stand in the way.
addPlugins([
  {
    requestWillFetch: async ({ request }) => new Request(request, { cache: "no-cache" }),
  },
]);
// The folder's own address gives index.html, whatever a messenger appended to it as a query.
precacheAndRoute(PRECACHE, { cleanURLs: false, ignoreURLParametersMatching: [/./] });

const scope = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

scope.addEventListener("activate", (event) => event.waitUntil(scope.clients.claim()));

scope.addEventListener("message", (event) => {
  if (event.data?.type === "SKIP_WAITING") scope.skipWaiting();
  if (event.data?.type === "VERSION") event.ports[0]?.postMessage(VERSION);
});

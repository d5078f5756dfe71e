/**
 * Keeps the whole site on the phone, one version at a time.
 *
 * All files of a version are stored before it counts as installed, each checked against its hash:
 * a half download, or the sign-in page of a hotel's network, stops the install and leaves the old
 * version as it was. A new version then waits until the person takes it. On a phone that saves data
 * the snapshot, which only makes a start quicker, waits until it is asked for.
 *
 * A file that the phone's share sheet hands to the page never leaves the phone: it is held here until the
 * page, which opens then, asks for it.
 */

/// <reference path="./globals.d.ts" />

import { cacheNames } from "workbox-core";
import { addPlugins, getCacheKeyForURL, matchPrecache, precacheAndRoute } from "workbox-precaching";

const scope = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const { connection } = /** @type {{ connection?: { saveData?: boolean } }} */ (navigator);
const wanted = PRECACHE.filter(({ url }) => !connection?.saveData || !url.startsWith("snapshot-"));
/** @type {File | null | undefined} a file that was handed to the page; null where it could not be read */
let handed;
/** @type {Promise<Set<string>> | undefined} addresses of what is stored of this version */
let storing;

addPlugins([
  {
    // Ask the host again for what the browser may hold already: no second download of what is right,
    // and nothing wrong that was kept can stand in the way.
    requestWillFetch: async ({ request }) => new Request(request, { cache: "no-cache" }),
    // What has the right hash is right, whatever type the host gives it.
    fetchDidSucceed: async ({ request, response }) => typed(request, response),
    cacheDidUpdate: ({ request }) => tellStored(request.url),
    // Thrown away by the phone, and the host has another version by now: better that than none.
    handlerDidError: async ({ event }) =>
      event instanceof FetchEvent && event.request.mode === "navigate"
        ? fetch(event.request)
        : undefined,
  },
]);
// The folder's own address gives index.html, whatever a messenger appended to it as a query.
precacheAndRoute(wanted, { cleanURLs: false, ignoreURLParametersMatching: [/./] });

scope.addEventListener("activate", (event) => event.waitUntil(scope.clients.claim()));

scope.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  // As the manifest has it.
  if (method !== "POST" || url !== new URL("handed", scope.registration.scope).href) return;
  event.respondWith(hold(event.request));
});

scope.addEventListener("message", (event) => {
  if (event.data?.type === "HANDED") {
    event.ports[0]?.postMessage(handed);
    handed = undefined;
  }
  if (event.data?.type === "SKIP_WAITING") scope.skipWaiting();
  if (event.data?.type === "VERSION") {
    event.waitUntil(whole(wanted).then(() => event.ports[0]?.postMessage(VERSION)));
  }
  if (event.data?.type === "ALL") {
    event.waitUntil(whole(PRECACHE).then(() => event.ports[0]?.postMessage(VERSION)));
  }
});

/** Hold the file in a form, and open the page. @param {Request} request */
async function hold(request) {
  const form = await request.formData().catch(() => null);
  const file = form?.get("copy");
  handed = file instanceof File ? file : null;
  return Response.redirect(`${scope.registration.scope}#book`, 303);
}

/**
 * Resolves once these files are here: the phone may have thrown them away and left this behind.
 * @param {typeof PRECACHE} entries
 */
async function whole(entries) {
  const missing = [];
  for (const entry of entries) if (!(await matchPrecache(entry.url))) missing.push(entry);
  const cache = await caches.open(cacheNames.precache);
  for (const { url, integrity } of missing) {
    const request = new Request(url, { integrity, cache: "no-cache" });
    const response = await fetch(request);
    if (!response.ok) throw new Error(`${url}: ${response.status}`);
    await cache.put(getCacheKeyForURL(url) ?? url, typed(request, response));
  }
}

/** Tell every page how much of it all is stored by now. @param {string} address the newest */
async function tellStored(address) {
  storing ??= caches
    .open(cacheNames.precache)
    .then((cache) => cache.keys())
    .then((keys) => new Set(keys.map(({ url }) => bare(url))));
  const here = (await storing).add(bare(address));
  const there = wanted.filter(({ url }) => here.has(bare(new URL(url, scope.location.href).href)));
  const message = { type: "STORING", come: total(there), of: total(wanted) };
  for (const client of await scope.clients.matchAll({ includeUncontrolled: true })) {
    client.postMessage(message);
  }
}

/** @param {typeof PRECACHE} entries */
function total(entries) {
  return entries.reduce((sum, { size }) => sum + size, 0);
}

/** Without the mark that a cache's key has. @param {string} address */
function bare(address) {
  return address.replace(/\?.*/, "");
}

/**
 * Under a wrong type a browser refuses scripts and WebAssembly, here as on the line.
 * @param {Request} request @param {Response} response
 */
function typed({ url }, response) {
  const type = TYPES[new URL(url).pathname.replace(/.*\./, ".")];
  const headers = new Headers(response.headers);
  const given = headers.get("Content-Type")?.split(";")[0];
  if (!response.ok || !type || given === type.split(";")[0]) return response;
  headers.set("Content-Type", type);
  return new Response(response.body, { headers });
}

// Keeps one whole version of the page in the browser, so that it opens without a network. A page gets
// every file from the version that it was loaded with; a newer one waits until it is asked for, or until
// no page is open. The builder writes in what the version consists of.
"use strict";
const VERSION = "{version}";
// Addresses below that of the page, each with the check sum of what must come from there.
const FILES = "{files}";

const { registration, clients, caches } = self;
const { href: scope, pathname: below } = new URL(registration.scope);
// Pages below other paths of this host have stores of their own.
const OURS = `recalesce ${scope} `;
const OWN = OURS + VERSION;
const PAGE = "./";
// Names below this change with the content, so a name never stands for two files.
const ASSETS = "assets/";

const inStore = (path, cacheName) => caches.match(new URL(path, scope), { cacheName, ignoreVary: true });

// All of the version or nothing: a file that is missing or another fails it, and the version before stays.
const keep = async () => {
  try {
    const store = await caches.open(OWN);
    const requests = Object.entries(FILES).map(([path, integrity]) => {
      const cache = path.startsWith(ASSETS) ? "default" : "no-cache";
      return new Request(new URL(path, scope), { integrity, cache, redirect: "error" });
    });
    await store.addAll(requests);
  } catch (error) {
    // A store that is full is in use: the host has gone back to this version.
    if ((await (await caches.open(OWN)).keys()).length === 0) await caches.delete(OWN);
    throw error;
  }
};

// Versions before this one go once no page is open that may still need them.
const tidy = async () => {
  const others = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== OWN);
  // One of them may be that of a newer version.
  if (others.length === 0 || registration.installing || registration.waiting) return;
  const windows = await clients.matchAll({ type: "window", includeUncontrolled: true });
  if (windows.some(({ url }) => url.startsWith(scope))) return;
  await Promise.all(others.map((name) => caches.delete(name)));
};

// An open page may still be of the version before: what only that had comes from its store.
const answer = async (path, request) =>
  (await inStore(path, OWN)) ?? (path.startsWith(ASSETS) ? await inStore(path) : undefined) ?? fetch(request);

addEventListener("install", (event) => event.waitUntil(keep()));
addEventListener("activate", (event) => event.waitUntil(tidy().then(() => clients.claim())));
addEventListener("message", ({ data }) => data === "take over" && self.skipWaiting());
addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== location.origin || !pathname.startsWith(below)) return;
  const path = pathname.slice(below.length);
  if (request.mode === "navigate") {
    if (path !== "" && path !== "index.html") return;
    event.waitUntil(tidy());
    event.respondWith(answer(PAGE, request));
  } else if (path.startsWith(ASSETS) || Object.hasOwn(FILES, path)) {
    event.respondWith(answer(path, request));
  }
});

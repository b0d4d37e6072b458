// What the development server has in place of the page's service worker: one that a published page has left
// on this port would go on serving that page. It removes that one and itself.
const removed = async () => {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(`recalesce ${registration.scope} `)).map((name) => caches.delete(name)));
  // Only those that were served by the one before.
  const windows = await clients.matchAll({ type: "window" });
  await registration.unregister();
  await Promise.all(windows.map((page) => page.navigate(page.url)));
};
addEventListener("install", () => skipWaiting());
addEventListener("activate", (event) => event.waitUntil(removed()));

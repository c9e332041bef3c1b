// Keeps the hosted page for when there is no network: one cache for each build, named by its bytes.
// A new build is fetched beside the old one and takes over with the next visit.

const BUILD = "<!-- build -->";
const PARTS = ["./", "./quirefit.webmanifest", "./icon.svg"];

addEventListener("install", (event) => {
  skipWaiting();
  event.waitUntil(caches.open(BUILD).then((cache) => cache.addAll(PARTS)));
});

addEventListener("activate", (event) => {
  const old = async () => {
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name !== BUILD).map((name) => caches.delete(name)));
    await clients.claim();
  };
  event.waitUntil(old());
});

addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  const kept = caches.match(event.request, { ignoreSearch: true });
  event.respondWith(kept.then((answer) => answer ?? fetch(event.request)));
});

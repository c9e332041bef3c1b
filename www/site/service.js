// Keeps the hosted page for when there is no network: one cache for each build, named by its bytes.
// A new build is fetched beside the old one and takes over with the next visit.

const BUILD = "<!-- build -->";
const PARTS = ["./", "./quirefit.webmanifest", "./icon.svg", "./icon-192.png", "./icon-512.png"];

addEventListener("install", (event) => {
  skipWaiting();
  // From the server itself: what the browser keeps beside may still be the build before.
  const parts = PARTS.map((part) => new Request(part, { cache: "reload" }));
  event.waitUntil(caches.open(BUILD).then((cache) => cache.addAll(parts)));
});

addEventListener("activate", (event) => {
  const old = async () => {
    // Other pages of the same server keep theirs.
    const names = (await caches.keys()).filter((name) => name.startsWith("quirefit-"));
    await Promise.all(names.filter((name) => name !== BUILD).map((name) => caches.delete(name)));
    await clients.claim();
  };
  event.waitUntil(old());
});

addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  const wanted = event.request.url.replace(/\/index\.html(?=[?#]|$)/, "/");
  const kept = caches.open(BUILD).then((cache) => cache.match(wanted, { ignoreSearch: true }));
  event.respondWith(kept.then((answer) => answer ?? fetch(event.request)));
});

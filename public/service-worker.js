// Keeps a copy of the page on the device. The bundler writes two constants above this line:
//   VERSION  a hash of everything the page is made of
//   ASSETS   the files to keep
/* global VERSION, ASSETS */

const PREFIX = "emberloam-";
const CACHE = PREFIX + VERSION;
// Where a shared file waits for the page; `files.js` takes it from there.
const SHARED = "shared-with-emberloam";

self.addEventListener("install", (event) => {
  event.waitUntil(keep([...ASSETS]));
});

// Keeps files, and the languages and the trial that an older copy kept.
async function keep(paths) {
  for (const name of await caches.keys()) {
    if (!name.startsWith(PREFIX)) continue;
    const kept = await (await caches.open(name)).keys();
    paths.push(...kept.map(({ url }) => url).filter((url) => /\/words\/|split_trial/.test(url)));
  }
  // Past the browser's own cache, or an old file could be kept under the new version.
  const files = [...new Set(paths)].map((path) => new Request(path, { cache: "reload" }));
  await (await caches.open(CACHE)).addAll(files);
}

self.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) {
        if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
      }
      await self.clients.claim();
    })(),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "POST" && request.url === new URL("share", registration.scope).href) {
    event.respondWith(keepShared(request));
    return;
  }
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  event.respondWith(
    (async () => {
      const cache = await caches.open(CACHE);
      const wanted = request.mode === "navigate" ? "index.html" : request;
      return (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request);
    })(),
  );
});

// What the system shares to the page comes as a form that never leaves the device.
async function keepShared(request) {
  const form = await request.formData();
  // What was shared before and never taken.
  await caches.delete(SHARED);
  const cache = await caches.open(SHARED);
  const text = ["title", "text", "url"].map((part) => form.get(part)).filter(Boolean).join("\n");
  const files = form.getAll("file").filter((file) => file.size);
  if (!files.length && text) files.push(new File([text], "shared text.txt"));
  for (const [at, file] of files.entries()) {
    const headers = { "x-name": encodeURIComponent(file.name) };
    await cache.put(`shared/${at}`, new Response(file, { headers }));
  }
  return Response.redirect("./?shared", 303);
}

// A new version waits until the person asks for it; a language or the trial is kept once it was chosen.
self.addEventListener("message", (event) => {
  if (event.data === "skip-waiting") self.skipWaiting();
  const path = event.data?.keep;
  if (!path) return;
  const add = async (cache) => (await cache.match(path)) ?? cache.add(path);
  event.waitUntil(caches.open(CACHE).then(add));
});

// Keeps a copy of the page on the device. The bundler writes three constants above this line:
//   VERSION  a hash of everything the page is made of
//   ASSETS   the files to keep
//   SUMS     the hash of hashes.txt, which holds the hash of every file
/* global VERSION, ASSETS, SUMS */

const HERE = registration.scope;
// Another copy of the program on this site, at another path, keeps its own.
const HOME = new URL(HERE).pathname.replace(/^\/$/, "");
const PREFIX = `emberloam${HOME}-`;
const CACHE = PREFIX + VERSION;
// Where a shared file waits for the page; `files.js` takes it from there.
const SHARED = `shared-with-emberloam${HOME}`;
const HASHES = "hashes.txt";
// How long after the page was asked for its copy is looked through, ms.
const PAUSE = 4000;

const isOurs = (name) => name.startsWith(PREFIX) && /^[0-9a-f]{16}$/.test(name.slice(PREFIX.length));
const open = () => caches.open(CACHE);

self.addEventListener("install", (event) => event.waitUntil(keep([...ASSETS])));

// Keeps files, and the languages and the trial that an older copy kept.
async function keep(paths) {
  for (const name of (await caches.keys()).filter(isOurs)) {
    const kept = await (await caches.open(name)).keys();
    paths.push(...kept.map(({ url }) => url.slice(HERE.length)).filter((path) => /^words\/|^split_trial/.test(path)));
  }
  const cache = await open();
  const hashes = await hashesOf(cache);
  await Promise.all([...new Set(paths)].map((path) => bring(cache, path, hashes)));
}

const hex = (bytes) => [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
const hashOf = async (answer) => hex(await crypto.subtle.digest("SHA-256", await answer.arrayBuffer()));

// The hash of each file by its path.
async function hashesOf(cache) {
  const hashes = new Map([[HASHES, SUMS]]);
  let kept = await cache.match(HASHES);
  if (!kept || (await hashOf(kept.clone())) !== SUMS) kept = await bring(cache, HASHES, hashes);
  for (const line of (await kept.text()).split("\n")) hashes.set(line.slice(66), line.slice(0, 64));
  return hashes;
}

// Fetches a file and keeps it, if it is the one that belongs to this version.
async function bring(cache, path, hashes) {
  const bytes = hashes.get(path).match(/../g).map((two) => parseInt(two, 16));
  const integrity = `sha256-${btoa(String.fromCharCode(...bytes))}`;
  // Past the browser's own cache, or an old file could be kept under the new version.
  let answer = await fetch(path, { cache: "reload", integrity });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  // A page that came by way of another address can't be handed out.
  if (answer.redirected) answer = new Response(answer.body, answer);
  await cache.put(path, answer.clone());
  return answer;
}

// Fetches anew what is missing from the copy or is not as it was; says how much that was.
async function heal() {
  const cache = await open();
  const hashes = await hashesOf(cache);
  const kept = (await cache.keys()).map(({ url }) => url.slice(HERE.length));
  let healed = 0;
  for (const path of new Set([...ASSETS, ...kept])) {
    const answer = await cache.match(path);
    if (!hashes.has(path) || (answer && (await hashOf(answer)) === hashes.get(path))) continue;
    try {
      await bring(cache, path, hashes);
      healed++;
    } catch {
      // Without a network, or with another version on it, it stays as it is.
    }
  }
  return healed;
}

self.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of (await caches.keys()).filter(isOurs)) {
        if (name !== CACHE) await caches.delete(name);
      }
      await self.clients.claim();
    })(),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const [url] = request.url.split(/[?#]/);
  if (request.method === "POST" && url === `${HERE}share`) {
    event.respondWith(keepShared(request));
    return;
  }
  if (request.method !== "GET" || !url.startsWith(HERE)) return;
  const isPage = request.mode === "navigate";
  // What lies below may be another copy.
  if (isPage && url !== HERE && url !== `${HERE}index.html`) return;
  const find = async () => (await (await open()).match(isPage ? "index.html" : url)) ?? fetch(request);
  event.respondWith(find());
  const pause = new Promise((done) => setTimeout(done, PAUSE));
  if (isPage) event.waitUntil(pause.then(heal).catch(() => {}));
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

async function keepOne(path) {
  const cache = await open();
  if (!(await cache.match(path))) await bring(cache, path, await hashesOf(cache));
}

// A new version waits until the person asks for it; a language or the trial is kept once it was
// chosen; a page that did not start asks for its copy to be healed.
self.addEventListener("message", (event) => {
  const { data, ports } = event;
  if (data === "skip-waiting") self.skipWaiting();
  if (data === "heal") event.waitUntil(heal().catch(() => 0).then((healed) => ports[0].postMessage(healed)));
  if (data?.keep) event.waitUntil(keepOne(data.keep));
});

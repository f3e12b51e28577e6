// Keeps the whole program in the browser, so that it opens without a network. The build writes `worker.js`
// from this: what the program consists of, and a version that changes with any byte of it.

const version = '__VERSION__';
/** Addresses from the program's own folder; the page itself is the empty one. */
const files = ['__FILES__'];

const prefix = 'gentlebend-';
const name = prefix + version;
const folder = new URL('./', self.location.href);
const anyHeaders = { ignoreVary: true };

self.addEventListener('install', (event) => event.waitUntil(fetchAll()));
self.addEventListener('activate', (event) => event.waitUntil(takeOver()));

// A new version waits until a person asks for it, or until no page of the old one is open.
self.addEventListener('message', (event) => {
  if (event.data === 'take over') self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== folder.origin) return;
  if (request.mode !== 'navigate') event.respondWith(answer(request));
  else if (pathname === folder.pathname || pathname === `${folder.pathname}index.html`)
    event.respondWith(answer(folder.href));
});

/** What is kept of this version, else of the one before, which an open page may still be of; else the network. */
async function answer(request) {
  const own = await (await caches.open(name)).match(request, anyHeaders);
  return own ?? (await caches.match(request, anyHeaders)) ?? (await fetch(request));
}

/** All files, or no new version. A name that carries a fingerprint of its file is not fetched again. */
async function fetchAll() {
  const cache = await caches.open(name);
  await Promise.all(
    files.map(async (file) => {
      const url = new URL(file, folder).href;
      const held = file.startsWith('assets/') ? await caches.match(url, anyHeaders) : undefined;
      const response = held ?? (await fetch(url, { cache: 'reload' }));
      if (!response.ok) throw new Error(`${file} could not be fetched: ${response.status}`);
      await cache.put(url, response);
    }),
  );
}

/** Forgets all versions but this one and the last before it; pages that are open are served from now on. */
async function takeOver() {
  const others = (await caches.keys()).filter((other) => other.startsWith(prefix) && other !== name);
  await Promise.all(others.slice(0, -1).map((other) => caches.delete(other)));
  await self.clients.claim();
}

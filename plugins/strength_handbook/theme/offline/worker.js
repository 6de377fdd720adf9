/* Keeps the handbook on the phone: the newest page while there is a signal, the kept one without.
   The build fills in the two lines below. */
"use strict";
const VERSION = "__VERSION__";
const FILES = __FILES__; /* address and hash of everything a reader may need */

const PREFIX = "strength-handbook " + self.registration.scope + " ";
const CACHE = PREFIX + VERSION;
const LIST = new URL("__kept__", self.registration.scope).href;
const PATIENCE_MS = 3000;
const AT_ONCE = 4;

const address = (path) => new URL(path, self.registration.scope).href;

/* Files that have not changed are taken over from the last version, the others are fetched. */
async function fill() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  const old = await Promise.all(names.map((name) => caches.open(name)));
  const known = await Promise.all(
    old.map(async (cache) => {
      const list = await cache.match(LIST);
      return list ? list.json() : {};
    })
  );
  const cache = await caches.open(CACHE);
  const left = Object.keys(FILES);
  const one = async (path) => {
    for (let index = 0; index < old.length; index += 1) {
      const kept = known[index][path] === FILES[path] && (await old[index].match(address(path)));
      if (kept) return cache.put(address(path), kept);
    }
    const answer = await fetch(address(path), { cache: "no-cache" });
    if (!answer.ok) throw new Error(path + ": " + answer.status);
    return cache.put(address(path), answer);
  };
  const worker = async () => {
    for (let path = left.shift(); path !== undefined; path = left.shift()) await one(path);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  await cache.put(LIST, new Response(JSON.stringify(FILES)));
}

self.addEventListener("install", (event) => {
  self.skipWaiting();
  event.waitUntil(fill());
});

self.addEventListener("activate", (event) => {
  const clean = async () => {
    for (const name of await caches.keys()) {
      if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
    }
    await self.clients.claim();
  };
  event.waitUntil(clean());
});

async function kept(request) {
  const found = await caches.match(request, { ignoreSearch: true });
  if (found || request.mode !== "navigate") return found;
  return new Response(
    "<!doctype html><meta charset=utf-8><meta name=viewport content='width=device-width'>" +
      "<title>No signal</title><p>No signal, and this page is not kept on this phone. " +
      "<a href='" + self.registration.scope + "'>Home</a>",
    { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } }
  );
}

/* With a weak signal the kept page comes after a moment; the answer still renews what is kept. */
async function newest(event) {
  const { request } = event;
  /* Ask the server itself: a browser that trusts its own copy would show yesterday's page. */
  const asked = fetch(request, { cache: "no-cache" }).then(async (answer) => {
    if (answer.ok && answer.type === "basic" && !answer.redirected) {
      const cache = await caches.open(CACHE);
      await cache.put(request.url.split(/[?#]/)[0], answer.clone());
    }
    return answer;
  });
  event.waitUntil(asked.catch(() => undefined));
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS)).then(() => kept(request));
  try {
    const first = await Promise.race([asked, late.then((found) => found || asked)]);
    return first;
  } catch (error) {
    return (await kept(request)) || Response.error();
  }
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const ours = request.url.startsWith(self.registration.scope);
  if (request.method === "GET" && ours) event.respondWith(newest(event));
});

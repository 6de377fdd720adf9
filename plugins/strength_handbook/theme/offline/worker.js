/* Keeps the handbook on the phone: the newest page while there is a signal, the kept one without.
   Only what has the listed hash is kept, so that no other page can ever take a page's place.
   The build fills in the two lines below. */
"use strict";
const VERSION = "__VERSION__";
const FILES = __FILES__; /* address and hash of everything a reader may need */

const SCOPE = self.registration.scope;
const PREFIX = "strength-handbook " + SCOPE + " ";
const CACHE = PREFIX + VERSION;
const LIST = new URL("__kept__", SCOPE).href;
const SEEN = new URL("__seen__", SCOPE).href; /* when the server last had what is kept */
const OURS = "assets/strength-handbook/"; /* every page of a handbook links something there */
const ASK_SERVER = "server"; /* a link with this query goes past this worker */
const PATIENCE_MS = 3000;
const SILENT_MS = 30000;
const AT_ONCE = 4;
const LATE = Symbol("late");

const address = (path) => new URL(path, SCOPE).href;
const plain = (url) => url.split(/[?#]/)[0];
const sleep = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
const hashes = new Map(Object.entries(FILES).map(([path, hash]) => [address(path), hash]));

/* Pages that were shown from what is kept take their scripts and data from there too. */
const shownFromKept = new Set();
let silentUntil = 0;

async function hashOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("").slice(0, 12);
}

/* An answer that may be kept and shown: its bytes and kind, and nothing else of the server. */
function copyOf(bytes, answer) {
  const kind = answer.headers.get("Content-Type");
  return new Response(bytes, { headers: kind ? { "Content-Type": kind } : {} });
}

/* Files that have not changed are taken over from the last version, the others are fetched. */
async function fill() {
  const names = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  const old = await Promise.all(names.map((name) => caches.open(name)));
  const cache = await caches.open(CACHE);
  const left = Object.keys(FILES);

  async function fitting(path, answer) {
    if (!answer || !answer.ok) return null;
    const bytes = await answer.arrayBuffer();
    return (await hashOf(bytes)) === FILES[path] ? copyOf(bytes, answer) : null;
  }
  async function one(path) {
    const at = address(path);
    for (const before of old) {
      const kept = await fitting(path, await before.match(at));
      if (kept) return cache.put(at, kept);
    }
    const found = await fitting(path, await fetch(at, { cache: "no-cache" }));
    if (!found) throw new Error(path + " is not what the build has made");
    return cache.put(at, found);
  }
  const worker = async () => {
    for (let path = left.shift(); path !== undefined; path = left.shift()) await one(path);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  await cache.put(SEEN, new Response(String(Date.now())));
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

/* Only ever from our own store: a handbook at another address has one too. */
async function kept(at) {
  try {
    return await (await caches.open(CACHE)).match(at);
  } catch {
    return undefined;
  }
}

async function daySeen() {
  const seen = await kept(SEEN);
  const then = new Date(seen ? Number(await seen.text()) : NaN);
  if (isNaN(then)) return "an unknown day";
  const midnight = (time) => new Date(time).setHours(0, 0, 0, 0);
  const days = Math.round((midnight(Date.now()) - midnight(then)) / 86400000);
  return days < 1 ? "today" : days === 1 ? "yesterday" : days + " days ago";
}

/* A kept page says how old it may be. */
async function dated(page, silent) {
  const why = silent ? "The server gives no answer." : "The server does not give this page now.";
  const line = "<p class='sh-note sh-kept-copy'>Kept copy, the newest as of " + (await daySeen()) +
    ". " + why + " <a href='?" + ASK_SERVER + "'>Ask the server</a></p>";
  const html = await page.text();
  return copyOf(html.replace(/<article[^>]*>/, (tag) => tag + line), page);
}

function notKept() {
  return new Response(
    "<!doctype html><meta charset=utf-8><meta name=viewport content='width=device-width'>" +
      "<title>No signal</title><p>No signal, and this page is not kept on this phone. " +
      "<a href='" + SCOPE + "'>Home</a>",
    { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } }
  );
}

/* Keeping comes after showing, and never hinders it: a phone's store may be full. */
async function keep(at, answer) {
  try {
    const cache = await caches.open(CACHE);
    await cache.put(SEEN, new Response(String(Date.now())));
    if (!(await cache.match(at))) await cache.put(at, answer);
  } catch {
    /* what was kept stays */
  }
}

/* The server's answer, and whether it is the handbook's: a sign-in page, a page about repairs and
   an error are not. */
async function ask(event, at) {
  /* Ask the server itself: a browser that trusts its own copy would show yesterday's page. */
  const answer = await fetch(event.request, { cache: "no-cache" });
  if (!answer.ok || answer.type !== "basic") return { answer, good: false };
  const bytes = await answer.arrayBuffer();
  const copy = copyOf(bytes, answer);
  if ((await hashOf(bytes)) === hashes.get(at)) {
    event.waitUntil(keep(at, copy.clone()));
    return { answer: copy, good: true };
  }
  const isPage = /^text\/html\b/i.test(answer.headers.get("Content-Type") || "");
  const newer = isPage
    ? at.endsWith("/") && new TextDecoder().decode(bytes).includes(OURS)
    : !at.endsWith("/");
  return { answer: copy, good: newer && !answer.redirected };
}

/* With a weak signal the kept page comes after a moment; when that has happened, the files that
   belong to it and the next pages don't wait again. */
async function newest(event, at) {
  const isPage = event.request.mode === "navigate";
  const asked = ask(event, at).catch(() => null);
  event.waitUntil(asked.then((found) => found && found.good && (silentUntil = 0)));
  const patient = (isPage || !shownFromKept.has(event.clientId)) && Date.now() > silentUntil;
  let first = await Promise.race([asked, sleep(patient ? PATIENCE_MS : 0).then(() => LATE)]);
  if (first === LATE && patient) silentUntil = Date.now() + SILENT_MS;
  if (first && first.good) return first.answer;
  const found = await kept(at);
  if (found) {
    if (!isPage) return found;
    shownFromKept.add(event.resultingClientId);
    return dated(found, first === LATE || !first);
  }
  if (first === LATE) first = await asked;
  if (first) return first.answer;
  return isPage ? notKept() : Response.error();
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const at = plain(request.url);
  const past = new URL(request.url).searchParams.has(ASK_SERVER);
  if (request.method !== "GET" || past || !request.url.startsWith(SCOPE)) return;
  if (hashes.has(at)) event.respondWith(newest(event, at));
  else if (request.mode === "navigate") event.respondWith(fetch(request).catch(notKept));
});

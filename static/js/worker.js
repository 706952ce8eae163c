// The service worker: keeps the walk page and its assets on this device, and nothing else. The route that serves it puts two
// lines before this text: EDITION (a digest of all that is shipped) and ASSETS ([[address, sha256], ...]).
// A new edition waits until every page of the old one is closed or a person asks for it; it never changes a page that is open.

/* global EDITION, ASSETS */
const PREFIX = "inspection-walk-", CACHE = PREFIX + EDITION, PATIENCE = 3_000;
const WALK = /^\/inspection\/([a-z0-9][a-z0-9-]{0,59})\/walk$/;
const digests = new Map(ASSETS);

const hex = (buffer) => Array.from(new Uint8Array(buffer), (byte) => byte.toString(16).padStart(2, "0")).join("");

// An asset is what its digest says, so that no sign-in page of a network can ever take its place.
async function keepAsset(cache, path) {
  if (await cache.match(path)) return;
  const response = await fetch(path, { cache: "no-store" });
  const body = await response.arrayBuffer();
  if (!response.ok || hex(await crypto.subtle.digest("SHA-256", body)) !== digests.get(path)) throw new Error(`${path} is not what was shipped`);
  await cache.put(path, new Response(body, { headers: response.headers }));
}

// Our own walk page, of this edition: not redirected, with our header, and naming the inspection asked for.
function isOurs(response, path) {
  const { headers } = response;
  return response.ok && !response.redirected && headers.has("X-Inspector") && headers.get("X-Walk") === WALK.exec(path)[1];
}

async function keepPage(cache, path, response = null) {
  const page = response ?? (await fetch(path, { cache: "no-store", credentials: "same-origin" }));
  if (!isOurs(page, path) || page.headers.get("X-Edition") !== EDITION) return false;
  await cache.put(path, page);
  return true;
}

async function older() {
  return (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
}

const pathsOf = async (name) => (await (await caches.open(name)).keys()).map((request) => new URL(request.url).pathname);

// The walks that only older editions keep.
async function keptOnlyBefore(cache) {
  const found = [];
  for (const name of await older()) {
    for (const path of (await pathsOf(name)).filter((one) => WALK.test(one))) if (!(await cache.match(path))) found.push(path);
  }
  return [...new Set(found)];
}

async function install() {
  const cache = await caches.open(CACHE);
  await Promise.all([...digests.keys()].map((path) => keepAsset(cache, path)));
  for (const path of await keptOnlyBefore(cache)) await keepPage(cache, path).catch(() => {});
}

// A walk must not vanish by an update: as long as one is kept by an older edition only, that edition's cache stays.
async function activate() {
  const cache = await caches.open(CACHE);
  for (const path of await keptOnlyBefore(cache)) await keepPage(cache, path).catch(() => {});
  const needed = await keptOnlyBefore(cache);
  for (const name of await older()) if (!(await pathsOf(name)).some((path) => needed.includes(path))) await caches.delete(name);
}

// From this edition's cache, else from one that an older edition left.
async function match(path) {
  return (await (await caches.open(CACHE)).match(path)) ?? caches.match(path);
}

async function complete(path) {
  const cache = await caches.open(CACHE);
  await Promise.all([...digests.keys()].map((asset) => keepAsset(cache, asset).catch(() => {})));
  if (WALK.test(path)) await keepPage(cache, path).catch(() => {});
  const there = await Promise.all([...digests.keys()].map((one) => cache.match(one)));
  return there.every(Boolean) && Boolean(await match(path));
}

// The computer's page where it answers whole, in time, and as itself; else the one kept here.
async function walkPage(event, path) {
  const cache = await caches.open(CACHE);
  const kept = await match(path);
  try {
    const response = await whole(path, kept ? PATIENCE : 60_000);
    // Not even the computer's own "no" takes the place of a page on which something may wait to be handed over.
    if (kept && !isOurs(response, path)) return kept;
    event.waitUntil(keepPage(cache, path, response.clone()).catch(() => {}));
    return response;
  } catch {
    return kept ?? notKept();
  }
}

// The answer once its whole body is here: a link that breaks half way must not leave half a page.
async function whole(path, patience) {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), patience);
  try {
    const response = await fetch(path, { cache: "no-store", credentials: "same-origin", redirect: "manual", signal: stop.signal });
    if (response.type === "opaqueredirect") return response;
    return new Response(await response.arrayBuffer(), { status: response.status, statusText: response.statusText, headers: response.headers });
  } finally {
    clearTimeout(timer);
  }
}

// Every other page lives on the computer only; while that is away, the walks kept here are named.
async function notKept() {
  const all = await Promise.all([CACHE, ...(await older())].map(pathsOf));
  const paths = [...new Set(all.flat())].filter((path) => WALK.test(path));
  const links = paths.map((path) => `<li><a class="button" href="${path}">walk of ${WALK.exec(path)[1]}</a></li>`).join("");
  const html = `<!doctype html><html lang="en" data-light="day"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>The computer does not answer</title><link rel="stylesheet" href="/static/css/base.css"><link rel="stylesheet" href="/static/css/pages.css">
<main><h1>The computer does not answer</h1><p>This page lives on the computer. Kept on this device:</p><ul>${links || "<li>no walk yet</li>"}</ul></main></html>`;
  return new Response(html, { status: 503, headers: { "Content-Type": "text/html; charset=utf-8" } });
}

self.addEventListener("install", (event) => event.waitUntil(install()));
// The page of a first visit is taken in charge at once: a newer edition waits only while some page is in the charge of the older one.
self.addEventListener("activate", (event) => event.waitUntil(activate().then(() => self.clients.claim())));
self.addEventListener("message", (event) => {
  if (event.data?.takeOver) self.skipWaiting();
  if (event.data?.keep) event.waitUntil(complete(event.data.keep).catch(() => false).then((all) => event.ports[0]?.postMessage({ complete: all })));
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== self.location.origin) return;
  if (digests.has(pathname) || pathname.startsWith("/shipped/")) event.respondWith(match(pathname).then((kept) => kept ?? fetch(request)));
  else if (request.mode === "navigate" && WALK.test(pathname)) event.respondWith(walkPage(event, pathname));
  else if (request.mode === "navigate") event.respondWith(fetch(request).catch(notKept));
});

// The service worker: keeps the walk page and its assets on this device, and nothing else. The
// route that serves it puts three lines before this text: EDITION (a digest of all that is
// shipped), ASSETS and PYTHON (both [[address, sha256], ...]). PYTHON is large: the page is kept
// without waiting for it, and it is taken over from an older edition that has it. A new edition
// waits until every page of the old edition is closed or a person asks for it; it never changes a
// page that is open.

/* global EDITION, ASSETS, PYTHON */

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

const PREFIX = "inspection-walk-";
const CACHE = PREFIX + EDITION;
/** How long the computer may take where a page is kept here, and where none is. */
const PATIENCE_MS = 3_000;
const LONG_PATIENCE_MS = 60_000;
const WALK = /^\/inspection\/([a-z0-9][a-z0-9-]{0,59})\/walk$/;
/** What the walk asks of the computer, and what this worker never answers. */
const EXCHANGE = ["/session", "/exchange/*", "/inspection/*/photo/*"];
const digests = new Map(ASSETS);
const assetPaths = [...digests.keys()];
const pythonDigests = new Map(PYTHON);
/** The checklists of an inspection, by their SHA-256. */
const CHECKLISTS = /^\/shipped\/checklists\/[a-z0-9-]+\/([0-9a-f]{64})\.json$/;

/** @param {ArrayBuffer} buffer */
function hexadecimal(buffer) {
  const bytes = new Uint8Array(buffer);
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * Keep an asset. It is what its digest says, so that no sign-in page of a network can ever take its
 * place.
 *
 * @param {Cache} cache
 * @param {string} path
 */
async function keepAsset(cache, path) {
  if (await cache.match(path)) return;
  const response = await fetch(path, { cache: "no-store" });
  const body = await response.arrayBuffer();
  const digest = hexadecimal(await crypto.subtle.digest("SHA-256", body));
  if (!response.ok || digest !== digests.get(path)) {
    throw new Error(`${path} is not what was shipped`);
  }
  await cache.put(path, new Response(body, { headers: response.headers }));
}

/**
 * Keep a part of Python, whose address names its content: a copy that an older edition kept, or
 * that the page itself has fetched just now, is as good, as long as it is what its digest says.
 *
 * @param {Cache} cache
 * @param {string} path
 */
async function keepPart(cache, path) {
  if (await cache.match(path)) return;
  if (await keepWhole(cache, path, await caches.match(path))) return;
  if (await keepWhole(cache, path, await fetch(path))) return;
  throw new Error(`${path} is not what was shipped`);
}

/**
 * @param {Cache} cache
 * @param {string} path
 * @param {Response | undefined} response
 * @returns {Promise<boolean>} whether it was what was shipped, and is kept now
 */
async function keepWhole(cache, path, response) {
  if (!response) return false;
  const body = await response.arrayBuffer();
  const digest = hexadecimal(await crypto.subtle.digest("SHA-256", body));
  if (!response.ok || digest !== digestOfPart(path)) return false;
  await cache.put(path, new Response(body, { headers: response.headers }));
  return true;
}

/** @param {string} path */
function digestOfPart(path) {
  return pythonDigests.get(path) ?? CHECKLISTS.exec(path)?.[1];
}

/**
 * @param {string} checklists their address
 * @returns {Promise<boolean>} whether all of Python is here now
 */
async function keepPython(checklists) {
  const cache = await caches.open(CACHE);
  const paths = [...pythonDigests.keys(), checklists];
  await Promise.all(paths.map((path) => keepPart(cache, path)));
  return true;
}

/**
 * Take over from older editions what is the same in this one, before their caches are deleted.
 *
 * @param {Cache} cache
 */
async function takeOverPython(cache) {
  const older = (await Promise.all((await olderCaches()).map(pathsIn))).flat();
  const parts = older.filter((path) => digestOfPart(path));
  for (const path of new Set(parts)) await keepPart(cache, path).catch(() => {});
}

/**
 * Whether a response is our own walk page: not redirected, with our header, and naming the
 * inspection asked for.
 *
 * @param {Response} response
 * @param {string} path
 * @returns {boolean}
 */
function isOurs(response, path) {
  const { headers } = response;
  if (!response.ok || response.redirected || !headers.has("X-Inspector")) return false;
  return headers.get("X-Walk") === inspectionOf(path);
}

/**
 * @param {string} path of a walk
 * @returns {string | undefined}
 */
function inspectionOf(path) {
  return WALK.exec(path)?.[1];
}

/**
 * Keep a walk page where it is ours and of this edition.
 *
 * @param {Cache} cache
 * @param {string} path
 * @param {Response} [response] fetched where it is left out
 */
async function keepPage(cache, path, response) {
  const page = response ?? (await fetch(path, { cache: "no-store", credentials: "same-origin" }));
  const isThisEdition = page.headers.get("X-Edition") === EDITION;
  if (isOurs(page, path) && isThisEdition) await cache.put(path, page);
  // A body that nobody reads holds its connection, and a browser has only six of them.
  else await page.body?.cancel();
}

/** @returns {Promise<string[]>} the caches of older editions */
async function olderCaches() {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
}

/**
 * @param {string} name of a cache
 * @returns {Promise<string[]>}
 */
async function pathsIn(name) {
  const cache = await caches.open(name);
  const requests = await cache.keys();
  return requests.map((request) => new URL(request.url).pathname);
}

/**
 * @param {string} name of a cache
 * @returns {Promise<string[]>}
 */
async function walksIn(name) {
  const paths = await pathsIn(name);
  return paths.filter((path) => WALK.test(path));
}

/**
 * The walks that only older editions keep.
 *
 * @param {Cache} cache
 * @returns {Promise<string[]>}
 */
async function keptOnlyBefore(cache) {
  const kept = await Promise.all((await olderCaches()).map(walksIn));
  const found = [];
  for (const path of new Set(kept.flat())) {
    if (!(await cache.match(path))) found.push(path);
  }
  return found;
}

/** @param {Cache} cache */
async function keepPagesOfBefore(cache) {
  for (const path of await keptOnlyBefore(cache)) await keepPage(cache, path).catch(() => {});
}

async function install() {
  const cache = await caches.open(CACHE);
  await Promise.all(assetPaths.map((path) => keepAsset(cache, path)));
  await takeOverPython(cache);
  await keepPagesOfBefore(cache);
}

/**
 * Remove what older editions left. A walk must not vanish by an update: as long as it is kept by an
 * older edition only, that edition's cache stays.
 */
async function activate() {
  const cache = await caches.open(CACHE);
  await keepPagesOfBefore(cache);
  const needed = await keptOnlyBefore(cache);
  for (const name of await olderCaches()) {
    const paths = await pathsIn(name);
    const isNeeded = paths.some((path) => needed.includes(path));
    if (!isNeeded) await caches.delete(name);
  }
}

/**
 * From this edition's cache, else from what an older edition left.
 *
 * @param {string} path
 */
async function match(path) {
  const cache = await caches.open(CACHE);
  return (await cache.match(path)) ?? caches.match(path);
}

/**
 * Keep what is missing for a page.
 *
 * @param {string} path
 * @param {string} [checklists] address of the texts of its checks; older pages carry them
 * @returns {Promise<boolean>} whether everything is here now
 */
async function complete(path, checklists) {
  const cache = await caches.open(CACHE);
  await Promise.all(assetPaths.map((asset) => keepAsset(cache, asset).catch(() => {})));
  if (checklists) await keepPart(cache, checklists).catch(() => {});
  if (WALK.test(path)) await keepPage(cache, path).catch(() => {});
  const assets = await Promise.all(assetPaths.map((asset) => cache.match(asset)));
  const hasTexts = !checklists || Boolean(await match(checklists));
  return assets.every(Boolean) && hasTexts && Boolean(await match(path));
}

/**
 * The computer's page where it answers whole, in time, and as itself; else the page kept here.
 *
 * @param {FetchEvent} event
 * @param {string} path
 * @returns {Promise<Response>}
 */
async function walkPage(event, path) {
  const cache = await caches.open(CACHE);
  const kept = await match(path);
  try {
    const response = await fetchWhole(path, kept ? PATIENCE_MS : LONG_PATIENCE_MS);
    // Not even the computer's own "no" takes the place of a page on which something may wait to be
    // handed over.
    if (kept && !isOurs(response, path)) return kept;
    event.waitUntil(keepPage(cache, path, response.clone()).catch(() => {}));
    return response;
  } catch {
    return kept ?? pageOfWhatIsKept();
  }
}

/**
 * The answer once its whole body is here: a link that breaks half way must not leave half a page.
 *
 * @param {string} path
 * @param {number} patience milliseconds
 * @returns {Promise<Response>}
 */
async function fetchWhole(path, patience) {
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), patience);
  try {
    const response = await fetch(path, {
      cache: "no-store",
      credentials: "same-origin",
      redirect: "manual",
      signal: stop.signal,
    });
    if (response.type === "opaqueredirect") return response;
    const { status, statusText, headers } = response;
    return new Response(await response.arrayBuffer(), { status, statusText, headers });
  } finally {
    clearTimeout(timer);
  }
}

/**
 * What a walk that is kept here is called: the page's own title, with the vessel's name.
 *
 * @param {string} path
 * @returns {Promise<string>} with every sign of HTML escaped, as it stands in the page
 */
async function titleOf(path) {
  const page = await (await match(path))?.text();
  return /<title>\s*([^<]+?)\s*<\/title>/.exec(page ?? "")?.[1] ?? "Walk";
}

/**
 * Every other page is on the computer only; while that is away, the walks kept here are named.
 *
 * @returns {Promise<Response>}
 */
async function pageOfWhatIsKept() {
  const names = [CACHE, ...(await olderCaches())];
  const walks = new Set((await Promise.all(names.map(walksIn))).flat());
  const links = await Promise.all(
    [...walks].map(async (path) => {
      return `<li><a class="button first" href="${path}">${await titleOf(path)}</a></li>`;
    }),
  );
  const html = `<!doctype html>
<html lang="en" data-light="day">
<meta charset="utf-8">
<script src="/static/js/light.js"></script>
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>The computer does not answer</title>
<link rel="stylesheet" href="/static/css/base.css">
<link rel="stylesheet" href="/static/css/pages.css">
<main>
<h1>The computer does not answer</h1>
<p>This page lives on the computer. Kept on this device:</p>
<ul>${links.join("") || "<li>no walk yet</li>"}</ul>
</main>
</html>`;
  const headers = { "Content-Type": "text/html; charset=utf-8" };
  return new Response(html, { status: 503, headers });
}

/** @param {ExtendableMessageEvent} event */
async function answerWhetherComplete(event) {
  const isComplete = await complete(event.data.keep, event.data.checklists).catch(() => false);
  event.ports[0]?.postMessage({ answer: isComplete, complete: isComplete });
}

/** @param {ExtendableMessageEvent} event */
async function answerWhetherPythonIsKept(event) {
  const answer = await keepPython(event.data.keepPython).catch(() => false);
  event.ports[0]?.postMessage({ answer });
}

/**
 * @param {Request} request
 * @param {string} path
 * @returns {Promise<Response>}
 */
async function assetFor(request, path) {
  return (await match(path)) ?? fetch(request);
}

/**
 * What is asked of the computer while a page is open goes there without waking this worker, where
 * the browser knows how. A worker that is asked anything while it hands over to a newer edition is
 * started anew, and Chromium then leaves the newer one waiting until the older has been idle for
 * thirty seconds, which it never is under a page that asks for something every few seconds.
 *
 * @param {ExtendableEvent & { addRoutes?: (rules: object[]) => Promise<void> }} event
 */
function leaveExchangeAlone(event) {
  const rules = EXCHANGE.map((pathname) => ({
    condition: { urlPattern: { pathname } },
    source: "network",
  }));
  event.waitUntil(event.addRoutes?.(rules) ?? Promise.resolve());
}

worker.addEventListener("install", (event) => {
  leaveExchangeAlone(event);
  event.waitUntil(install());
});

worker.addEventListener("activate", (event) => {
  // The page of a first visit is taken in charge at once: a newer edition waits only while some
  // page is in the charge of the older edition.
  event.waitUntil(activate().then(() => worker.clients.claim()));
});

/**
 * Only where no second page is open that may be of the older edition; answers whether it does.
 *
 * @param {ExtendableMessageEvent} event
 */
async function takeOverIfAlone(event) {
  const pages = await worker.clients.matchAll({ type: "window", includeUncontrolled: true });
  const isAlone = pages.length <= 1;
  event.ports[0]?.postMessage({ answer: isAlone });
  // It is not waited for: that lasts until the older worker has gone.
  if (isAlone) worker.skipWaiting();
}

worker.addEventListener("message", (event) => {
  if (event.data?.edition) event.ports[0]?.postMessage({ answer: EDITION });
  if (event.data?.takeOverIfAlone) event.waitUntil(takeOverIfAlone(event));
  if (event.data?.takeOver) worker.skipWaiting();
  if (event.data?.keep) event.waitUntil(answerWhetherComplete(event));
  if (event.data?.keepPython) event.waitUntil(answerWhetherPythonIsKept(event));
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== worker.location.origin) return;
  const isNavigation = request.mode === "navigate";
  if (digests.has(pathname) || pathname.startsWith("/shipped/")) {
    event.respondWith(assetFor(request, pathname));
  } else if (isNavigation && WALK.test(pathname)) {
    event.respondWith(walkPage(event, pathname));
  } else if (isNavigation) {
    event.respondWith(fetch(request).catch(pageOfWhatIsKept));
  }
});

// Keeps the screens of one version. The service writes two lines before this file: VERSION, a digest over all files of the screens, and FILES,
// their paths; hence every upgrade is another worker, with a cache of its own that is filled whole before it may serve anything.
/* global VERSION, FILES */

const OURS = "evenpair-screens-"
const CACHE = OURS + VERSION
/** Of the API nothing else is kept: without words and products no bench can go on measuring. */
const isKeptAnswer = (path) => path.startsWith("/api/texts/") || path === "/api/products"

addEventListener("install", (event) => event.waitUntil(fill()))
addEventListener("activate", (event) => event.waitUntil(clearOthers()))
addEventListener("message", (event) => { if (event.data === "take-over") skipWaiting() })
addEventListener("fetch", (event) => {
  const request = event.request, url = new URL(request.url)
  if (request.method !== "GET" || url.origin !== location.origin) return
  if (isKeptAnswer(url.pathname)) return event.respondWith(freshOrKept(request, url.pathname))
  const path = url.pathname === "/" ? "/index.html" : url.pathname
  if (FILES.includes(path)) event.respondWith(kept(path, request))
})

/** All or nothing, past the browser's own cache. */
async function fill() {
  const cache = await caches.open(CACHE)
  await cache.addAll(FILES.map((path) => new Request(path, { cache: "reload" })))
}

async function clearOthers() {
  const names = await caches.keys()
  await Promise.all(names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)))
  await clients.claim()
}

async function kept(path, request) {
  const cache = await caches.open(CACHE)
  return await cache.match(path) ?? fetch(request)
}

/** The service's word as long as it answers. */
async function freshOrKept(request, path) {
  const cache = await caches.open(CACHE)
  try {
    const answer = await fetch(request)
    if (answer.ok) await cache.put(path, answer.clone())
    return answer.status >= 500 ? await cache.match(path) ?? answer : answer
  } catch (failure) {
    const before = await cache.match(path)
    if (before) return before
    throw failure
  }
}

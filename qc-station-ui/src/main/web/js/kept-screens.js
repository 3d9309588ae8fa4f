// Keeps the screens in the browser, so that a reload works while the service is down; takes a new version whole, between two units.
import { language } from "./language.js"

const LOOK_MS = 60_000

/**
 * A new version waits beside the old one until a reload disturbs nobody; then it takes over, and the page loads anew from it alone.
 * @param {() => boolean} isIdle
 */
export async function keepScreens(isIdle) {
  if (!isSecureContext || !("serviceWorker" in navigator)) return
  const container = navigator.serviceWorker, hadOne = container.controller !== null
  let leaving = false
  container.addEventListener("controllerchange", () => {
    if (!hadOne) return askOnceMore()   // the very first one keeps what this page already is
    if (leaving) return
    leaving = true
    whenIdle(isIdle, () => location.reload())
  })
  // Refused where the certificate is not trusted, or the browser is told to keep nothing: the screens work as before, but not without the service.
  const registration = await container.register("/service-worker.js", { updateViaCache: "none" }).catch(() => null)
  if (!registration) return
  const takeOver = () => { if (registration.waiting) whenIdle(isIdle, () => registration.waiting?.postMessage("take-over")) }
  registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", takeOver))
  takeOver()
  setInterval(() => registration.update().catch(() => {}), LOOK_MS)
}

/** What this page was told before anybody kept it: words and products, so that they are kept too. */
function askOnceMore() {
  for (const path of [`/api/texts/${language()}`, "/api/products"]) fetch(path, { headers: { Accept: "application/json" } }).catch(() => {})
}

/** @param {() => boolean} isIdle @param {() => void} act */
function whenIdle(isIdle, act) {
  if (isIdle()) return act()
  const timer = setInterval(() => {
    if (!isIdle()) return
    clearInterval(timer)
    act()
  }, 1000)
}

// The service's clock, as its answers tell it: a bench whose own clock is wrong still dates its captures rightly.
import { recall, remember } from "./memory.js"

const KEPT = "clockAhead"

/** An answer came. @param {Response} response */
export function noteClock(response) {
  const date = Date.parse(response.headers.get("Date") ?? "")
  if (!Number.isFinite(date)) return
  const off = date - Date.now()
  // The header has whole seconds: what is less than that is no difference.
  remember(KEPT, Math.abs(off) < 2000 ? 0 : off)
}

/** @returns {Date} now, by the service's clock as far as it is known */
export function serviceNow() {
  return new Date(Date.now() + (recall(KEPT) ?? 0))
}

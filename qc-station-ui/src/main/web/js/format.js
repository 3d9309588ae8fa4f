// Numbers as the screens write them. Pure.

const MINUS = "\u2212"
export const DASH = "\u2013"
const NARROW = "\u202f"

/** @param {number} value @param {number} digits */
function fixed(value, digits) {
  const text = Math.abs(value).toFixed(digits)
  return { text, zero: Number(text) === 0 }
}

/** One decimal, real minus sign, no unit; a dash where there is no number. @param {number | null | undefined} value */
export function db(value) {
  if (!isNumber(value)) return DASH
  const { text, zero } = fixed(value, 1)
  return value < 0 && !zero ? MINUS + text : text
}

/** As {@link db} with its sign always written, but for zero. @param {number | null | undefined} value */
export function signedDb(value) {
  if (!isNumber(value)) return DASH
  const { text, zero } = fixed(value, 1)
  if (zero) return text
  return (value < 0 ? MINUS : "+") + text
}

/** 85 Hz, 8.41 kHz: whole hertz below 1 kHz, three digits above, closing zeros left out; as the reasons write it. @param {number | null | undefined} hz */
export function frequency(hz) {
  if (!isNumber(hz)) return DASH
  return hz >= 999.5 ? `${Number((hz / 1000).toPrecision(3))}${NARROW}kHz` : `${hz.toFixed(0)}${NARROW}Hz`
}

/** A share as percent with one decimal. @param {number | null | undefined} share 0 to 1 */
export function percent(share) {
  return isNumber(share) ? `${(share * 100).toFixed(1)}${NARROW}%` : DASH
}

/** @param {number} bytes */
export function size(bytes) {
  if (bytes < 1000) return `${bytes}${NARROW}B`
  if (bytes < 1e6) return `${(bytes / 1e3).toFixed(0)}${NARROW}kB`
  return `${(bytes / 1e6).toFixed(1)}${NARROW}MB`
}

/** Local date and time of an instant, to the minute. @param {string | null | undefined} instant ISO 8601 */
export function localTime(instant) {
  if (!instant) return DASH
  return new Intl.DateTimeFormat("en-GB", { dateStyle: "medium", timeStyle: "short" }).format(new Date(instant))
}

/** Local time of day. @param {string | null | undefined} instant ISO 8601 */
export function clock(instant) {
  return instant ? new Intl.DateTimeFormat("en-GB", { timeStyle: "short" }).format(new Date(instant)) : DASH
}

/** @param {unknown} value @returns {value is number} */
export function isNumber(value) {
  return typeof value === "number" && Number.isFinite(value)
}

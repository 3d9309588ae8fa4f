// Numbers and times as the screens write them.
import { dateLanguage } from "./language.js"

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

/** ISO 3 R80: the rounded numbers of one decade, by which the grid's frequencies 10^(n/80) are called. */
const R80 = [
  1.00, 1.03, 1.06, 1.09, 1.12, 1.15, 1.18, 1.22, 1.25, 1.28, 1.32, 1.36, 1.40, 1.45, 1.50, 1.55, 1.60, 1.65, 1.70, 1.75,
  1.80, 1.85, 1.90, 1.95, 2.00, 2.06, 2.12, 2.18, 2.24, 2.30, 2.36, 2.43, 2.50, 2.58, 2.65, 2.72, 2.80, 2.90, 3.00, 3.07,
  3.15, 3.25, 3.35, 3.45, 3.55, 3.65, 3.75, 3.87, 4.00, 4.12, 4.25, 4.37, 4.50, 4.62, 4.75, 4.87, 5.00, 5.15, 5.30, 5.45,
  5.60, 5.80, 6.00, 6.15, 6.30, 6.50, 6.70, 6.90, 7.10, 7.30, 7.50, 7.75, 8.00, 8.25, 8.50, 8.75, 9.00, 9.25, 9.50, 9.75,
]

/** The preferred number of a grid point (8413.95 gives 8500); any other frequency stays what it is. @param {number} hz above 0 */
function preferred(hz) {
  const exponent = Math.round(Math.log10(hz) * R80.length)
  if (Math.abs(hz / 10 ** (exponent / R80.length) - 1) > 1e-4) return hz
  return R80[exponent % R80.length] * 10 ** Math.floor(exponent / R80.length)
}

/** 85 Hz, 8.5 kHz: whole hertz below 1 kHz, three digits above, closing zeros left out; as the reasons write it. @param {number | null | undefined} hz above 0 */
export function frequency(hz) {
  if (!isNumber(hz)) return DASH
  const named = hz >= 10 ? preferred(hz) : hz
  return named >= 999.5 ? `${Number((named / 1000).toPrecision(3))}${NARROW}kHz` : `${named.toFixed(0)}${NARROW}Hz`
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
  return new Intl.DateTimeFormat(dateLanguage(), { dateStyle: "medium", timeStyle: "short" }).format(new Date(instant))
}

/** Local time of day if it is of the same day as now, day and time in the same year, else the day. @param {string} instant ISO 8601 @param {Date} [now] */
export function shortTime(instant, now = new Date()) {
  const at = new Date(instant)
  if (at.toDateString() === now.toDateString()) return clock(instant)
  return new Intl.DateTimeFormat(dateLanguage(), at.getFullYear() === now.getFullYear()
    ? { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" } : { day: "numeric", month: "short", year: "numeric" }).format(at)
}

/** Local time of day. @param {string | null | undefined} instant ISO 8601 */
export function clock(instant) {
  return instant ? new Intl.DateTimeFormat(dateLanguage(), { timeStyle: "short" }).format(new Date(instant)) : DASH
}

/** @param {unknown} value @returns {value is number} */
export function isNumber(value) {
  return typeof value === "number" && Number.isFinite(value)
}

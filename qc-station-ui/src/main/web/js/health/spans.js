// Spans of time and sizes of disks in words. Pure.
import { t } from "../texts.js"

const MINUTE = 60, HOUR = 3600, DAY = 86400

/** @param {number} seconds not below 0 */
export function span(seconds) {
  if (seconds < 90) return t("screen.health.span.seconds", { n: Math.round(seconds) })
  if (seconds < 90 * MINUTE) return t("screen.health.span.minutes", { n: Math.round(seconds / MINUTE) })
  if (seconds < 48 * HOUR) return t("screen.health.span.hours", { n: Math.round(seconds / HOUR) })
  return t("screen.health.span.days", { n: Math.floor(seconds / DAY) })
}

/** @param {string} then @param {string} now ISO 8601, both by the service's clock */
export function ago(then, now) {
  return t("screen.health.ago", { span: span(Math.max(0, (Date.parse(now) - Date.parse(then)) / 1000)) })
}

/** @param {number} bytes */
export function gigabytes(bytes) {
  return `${(bytes / 1e9).toFixed(bytes < 1e11 ? 1 : 0)}\u202fGB`
}

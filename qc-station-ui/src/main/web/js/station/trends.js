// How a station drifts: control charts of its calibrations and of its verifications.
import { get } from "../api.js"
import { el } from "../dom.js"
import { t } from "../texts.js"
import { controlChart, plainLevel } from "./control-chart.js"

/** @param {string} station @param {"left" | "right" | "output"} part @param {AbortSignal} signal @returns {Promise<HTMLElement | null>} */
export async function driftCharts(station, part, signal) {
  const all = /** @type {Api.Drifts} */ (await get(`/api/stations/${encodeURIComponent(station)}/drift`, signal))
  const drift = all.items.find((one) => part === "output" ? one.what === "output" : one.what === "microphone" && one.channel === part)
  if (!drift?.points.length) return null
  const outside = (/** @type {number} */ level) => drift.chart ? level < drift.chart.lowerDb || level > drift.chart.upperDb : false
  return el("section", {}, el("h2", {}, t("screen.drift.title")),
    controlChart(t(part === "output" ? "screen.drift.output" : "screen.drift.microphone", { unit: drift.unit }),
      drift.points.map((point) => ({ value: point.levelDb, when: point.measuredAt, out: point.changed || outside(point.levelDb) })), levelsOf(drift.chart, null), plainLevel),
    el("p", { class: "plot-note" }, drift.note ?? all.method))
}

/** @param {Api.Trend} trend @returns {HTMLElement} */
export function trendChart(trend) {
  return el("section", {}, controlChart(t("screen.drift.region", { region: trend.region, channel: trend.channel }),
    trend.points.map((point) => ({ value: point.deviationDb, when: point.measuredAt, out: point.signals === true || Math.abs(point.deviationDb) > trend.limitDb })),
    levelsOf(trend.chart, trend.limitDb)), trend.note ? el("p", { class: "plot-note" }, trend.note) : null)
}

/** @param {Api.ControlLimits | null | undefined} chart @param {number | null} allowed dB either way @returns {import("./control-chart.js").Level[]} */
function levelsOf(chart, allowed) {
  const limits = /** @type {import("./control-chart.js").Level[]} */ (chart ? [
    { label: t("screen.control.upper"), at: chart.upperDb, kind: "limit" }, { label: t("screen.control.centre"), at: chart.centreDb, kind: "centre" },
    { label: t("screen.control.lower"), at: chart.lowerDb, kind: "limit" }] : [])
  if (allowed === null) return limits
  return [{ label: t("screen.control.allowed"), at: allowed, kind: "allowed" }, ...limits, { label: t("screen.control.allowed"), at: -allowed, kind: "allowed" }]
}

// How a station drifts: control charts of its calibrations and of its verifications.
import { get } from "../api.js"
import { el } from "../dom.js"
import { t } from "../texts.js"
import { controlChart } from "./control-chart.js"

/** @param {string} station @param {"left" | "right" | "output"} part @param {AbortSignal} signal @returns {Promise<HTMLElement | null>} */
export async function driftCharts(station, part, signal) {
  const query = part === "output" ? "what=output" : `what=microphone&channel=${part}`
  const drift = /** @type {Api.Drift} */ (await get(`/api/stations/${encodeURIComponent(station)}/drift?${query}`, signal))
  if (!drift.points.length) return null
  return el("section", {}, el("h2", {}, t("screen.drift.title")),
    controlChart(part === "output" ? t("screen.drift.output") : t("screen.drift.microphone"),
      drift.points.map((point) => ({ value: point.deviationDb, when: point.measuredAt, out: point.signals === true })), levelsOf(drift.chart, drift.limitDb, false)),
    el("p", { class: "plot-note" }, drift.note ?? drift.method))
}

/** @param {Api.Trend} trend @returns {HTMLElement} */
export function trendChart(trend) {
  return el("section", {}, controlChart(t("screen.drift.region", { region: trend.region, channel: trend.channel }),
    trend.points.map((point) => ({ value: point.deviationDb, when: point.measuredAt, out: point.signals === true || Math.abs(point.deviationDb) > trend.limitDb })),
    levelsOf(trend.chart, trend.limitDb, true)), trend.note ? el("p", { class: "plot-note" }, trend.note) : null)
}

/** @param {Api.ControlLimits | null | undefined} chart @param {number | null | undefined} allowed dB either way @param {boolean} showAllowed @returns {import("./control-chart.js").Level[]} */
function levelsOf(chart, allowed, showAllowed) {
  const limits = /** @type {import("./control-chart.js").Level[]} */ (chart ? [
    { label: t("screen.control.upper"), at: chart.upperDb, kind: "limit" }, { label: t("screen.control.centre"), at: chart.centreDb, kind: "centre" },
    { label: t("screen.control.lower"), at: chart.lowerDb, kind: "limit" }] : [])
  if (!showAllowed || allowed === null || allowed === undefined) return limits
  return [{ label: t("screen.control.allowed"), at: allowed, kind: "allowed" }, ...limits, { label: t("screen.control.allowed"), at: -allowed, kind: "allowed" }]
}

// The station's own left − right difference with its uncertainty around it.
import { el } from "../dom.js"
import { buildChart } from "../plot/chart.js"
import { PlotRoom } from "../plot/room.js"
import { halfSpan } from "../plot/scales.js"
import { t } from "../texts.js"

/** @param {Api.Correction | null | undefined} correction @returns {HTMLElement | null} null without one */
export function correctionPlot(correction) {
  const curve = correction?.leftMinusRightDb, hz = correction?.frequencyHz
  if (!curve || !hz) return null
  const u = correction.uncertaintyDb ?? []
  const around = (/** @type {number} */ sign) => curve.map((value, i) => {
    const spread = u[i]
    return value === null || spread === null || spread === undefined ? null : value + sign * 2 * spread
  })
  const lower = around(-1), upper = around(1)
  const room = new PlotRoom("correction-room", (host, width, height) => {
    const half = halfSpan(1, 40, curve, lower, upper)
    const chart = buildChart(host, {
      hz, width, height, low: -half, high: half, caption: t("screen.plot.difference"),
      lines: [{ name: t("screen.plot.leftMinusRight"), values: curve, colour: "difference", width: 2, label: true }],
      bands: [{ lower, upper, colour: "difference", alpha: 0.18 }], regions: [], specified: null, marks: [],
    }, () => {})
    return chart
  })
  return el("figure", {}, el("figcaption", { class: "plot-note" }, t("screen.correction.caption")), room.element)
}

// The cloud a golden response is made from: every earpiece's distance from the median, odd ones strong, with the band of one robust deviation.
import { el } from "../dom.js"
import { frequency, isNumber, signedDb } from "../format.js"
import { nearestCurve } from "../batch/clouds.js"
import { buildChart, EDGES, groundOf } from "../plot/chart.js"
import { paintCurve } from "../plot/paint.js"
import { Readout } from "../plot/readout.js"
import { PlotRoom } from "../plot/room.js"
import { halfSpan, heightFor, nearestIndex, negated } from "../plot/scales.js"
import { walked } from "../plot/walk.js"
import { t } from "../texts.js"

const REACH_DB = 0.7
/** Deviations are small: a decade is as long as 10 dB here. */
const DB_PER_DECADE = 10
/** Median absolute deviation of a normal spread times this is its standard deviation. */
const MAD_TO_SD = 1.4826

export class Cloud {
  /** @type {Api.GoldenBuild | null} */
  #build = null
  #onMark
  #index = 0
  /** @type {Api.GoldenUnit | null} */
  #marked = null
  #readout = new Readout()
  #room = new PlotRoom("cloud-room", (host, width, height) => this.#draw(host, width, height))

  /** @param {(unit: Api.GoldenUnit) => void} onMark */
  constructor(onMark) {
    this.#onMark = onMark
    this.#room.element.addEventListener("click", (event) => this.#clicked(event))
    this.element = el("figure", { class: "clouds", tabindex: 0, role: "group", "aria-label": t("screen.golden.cloudLabel") }, this.#readout.element, this.#room.element,
      el("figcaption", { class: "plot-note" }, t("screen.golden.cloudLegend")))
  }

  /** @param {Api.GoldenBuild} build */
  show(build) {
    const first = this.#build === null
    this.#build = build
    this.#marked = build.members.find((unit) => unit.inspection === this.#marked?.inspection) ?? null
    if (first) this.#index = nearestIndex(build.frequencyHz, 1000)
    this.#room.refresh()
    this.#stand(this.#index)
  }

  /** @param {Api.GoldenUnit | null} unit */
  mark(unit) {
    this.#marked = unit
    this.#room.chart?.repaint()
    this.#readout.show(this.#cells())
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (!this.#build) return false
    const next = walked(event.key, event.shiftKey, this.#index, this.#build.frequencyHz.length)
    if (next === null) return false
    this.#stand(next)
    return true
  }

  /** @param {number} index */
  #stand(index) {
    this.#index = index
    this.#room.chart?.stand(index)
    this.#readout.show(this.#cells())
  }

  /** @returns {import("../plot/readout.js").Cell[]} */
  #cells() {
    const build = this.#build, i = this.#index, unit = this.#marked
    if (!build) return []
    const mad = build.madDb[i]
    return [
      { label: t("screen.readout.frequency"), value: frequency(build.frequencyHz[i]), kind: "wide" },
      { label: t("screen.golden.median"), value: isNumber(build.levelDb[i]) ? `${Number(build.levelDb[i]).toFixed(1)} dB` : "\u2013" },
      { label: t("screen.golden.spread"), value: isNumber(mad) ? `${(mad * MAD_TO_SD).toFixed(2)} dB` : "\u2013" },
      { label: unit ? t("screen.golden.leftOf", { serial: unit.serial }) : t("screen.readout.left"), value: signedDb(unit?.left?.deviationDb[i]), kind: "wide left" },
      { label: t("screen.readout.right"), value: signedDb(unit?.right?.deviationDb[i]), kind: "wide right" },
    ]
  }

  /** @param {HTMLElement} host @param {number} width @param {number} height */
  #draw(host, width, height) {
    const build = this.#build
    if (!build) return null
    const spread = build.madDb.map((mad) => (isNumber(mad) ? mad * MAD_TO_SD : null))
    const curves = build.members.flatMap((unit) => [unit.left?.deviationDb, unit.right?.deviationDb])
    const half = halfSpan(3, 12, ...curves)
    const wanted = heightFor(groundOf(width, 100).width, 2 * half, DB_PER_DECADE) + EDGES.top + EDGES.bottom
    if (wanted !== height) {
      this.#room.setHeight(wanted)   // the size observer calls again with the right height
      return null
    }
    const chart = buildChart(host, {
      hz: build.frequencyHz, width, height, low: -half, high: half, caption: t("screen.golden.axis"),
      lines: [{ name: t("screen.cloud.median"), values: build.frequencyHz.map(() => 0), colour: "golden", width: 1.4, label: true }],
      bands: [{ lower: negated(spread), upper: spread, colour: "window", edge: "window-edge" }],
      regions: build.againstActive?.regions.map((region) => ({ ...region, failed: false })) ?? [], specified: null, marks: [],
      labels: () => this.#marked ? [{ text: this.#marked.serial, values: this.#marked.left?.deviationDb ?? [], colour: getComputedStyle(document.documentElement).getPropertyValue("--ink") }] : [],
      under: (surface) => this.#paintUnits(surface), over: (surface) => this.#paintMarked(surface),
    }, (index) => this.#stand(index))
    chart.stand(this.#index)
    return chart
  }

  /** @param {import("../plot/paint.js").Surface} surface */
  #paintUnits(surface) {
    for (const unit of this.#build?.members ?? []) {
      if (unit.leftOut) continue
      for (const side of /** @type {("left" | "right")[]} */ (["left", "right"])) {
        const earpiece = unit[side]
        const style = earpiece?.odd ? { colour: surface.colours.fail, width: 1.4, alpha: 0.9, dash: [4, 3] } : { colour: surface.colours[side], width: 0.8, alpha: 0.35 }
        paintCurve(surface, earpiece?.deviationDb ?? [], style)
      }
    }
  }

  /** @param {import("../plot/paint.js").Surface} surface */
  #paintMarked(surface) {
    const unit = this.#marked
    if (!unit) return
    paintCurve(surface, unit.left?.deviationDb ?? [], { colour: surface.colours.left, width: 2.6 })
    paintCurve(surface, unit.right?.deviationDb ?? [], { colour: surface.colours.right, width: 2.6, dash: [7, 4] })
  }

  /** @param {MouseEvent} event */
  #clicked(event) {
    const at = this.#room.chart?.at(event.clientX, event.clientY)
    if (!at || !this.#build) return
    const curves = this.#build.members.flatMap((unit) => [unit.left, unit.right].map((earpiece) => ({ unit, values: earpiece?.deviationDb ?? [] })))
    const near = nearestCurve(curves, (curve) => curve.values, at.index, at.db, REACH_DB)
    if (near) this.#onMark(near.unit)
  }
}

// The plot of one inspection: both channels against golden response and window, left − right below, the numbers at the cursor above.
import { el, put } from "../dom.js"
import { db, frequency, isNumber, signedDb } from "../format.js"
import { t } from "../texts.js"
import { buildChart, groundOf } from "./chart.js"
import { PlotRoom } from "./room.js"
import { Readout } from "./readout.js"
import { extent, fitLevel, halfSpan, less, lessOffset, nearestIndex, negated } from "./scales.js"
import { walked } from "./walk.js"

/**
 * @typedef {import("./scales.js").Values} Values
 * @typedef {{ curves: Api.Curves, left: Values, right: Values, leftDeviation: Values, rightDeviation: Values, reasons: Api.Reason[] }} Shown
 */

/** Kinds of reason that belong to the difference plot, and to the response plot. Distortion and noise have plots of their own. */
const OF_THE_PAIR = ["match", "balance"]
const NOT_OF_THE_CURVES = ["thd", "high-order-distortion", "idle-noise"]

/** Whether an inspection has curves: a valid seating makes them. @param {Api.Inspection} inspection */
export function hasCurves(inspection) {
  return (inspection.seatings?.valid ?? 1) > 0
}

export class ResponsePanel {
  /** @type {Shown | null} */
  #shown = null
  #index = 0
  #readout = new Readout()
  #note = el("p", { class: "plot-note" })
  #empty = el("p", { class: "plot-empty" })
  #response = new PlotRoom("response", (host, width, height) => this.#buildResponse(host, width, height))
  #difference = new PlotRoom("difference", (host, width, height) => this.#buildDifference(host, width, height))

  constructor() {
    this.element = el("figure", { class: "plots empty", tabindex: 0, role: "group", "aria-label": t("screen.plot.label"),
      on: { keydown: (/** @type {KeyboardEvent} */ event) => this.key(event) } },
      this.#readout.element, this.#response.element, this.#difference.element, this.#empty, this.#note)
    this.clear(t("screen.plot.empty"))
  }

  /** @param {string} sentence why there is no plot */
  clear(sentence) {
    this.#shown = null
    this.element.classList.add("empty")
    put(this.#empty, sentence)
    put(this.#note, "")
    this.#readout.show(this.#cells())
    this.#refresh()
  }

  /** @param {Api.Curves} curves @param {Api.Reason[]} reasons */
  show(curves, reasons) {
    const left = lessOffset(curves.left?.levelDb, curves.left?.alignmentDb)
    const right = lessOffset(curves.right?.levelDb, curves.right?.alignmentDb)
    const golden = curves.golden.levelDb
    this.#shown = { curves, left, right, leftDeviation: less(left, golden), rightDeviation: less(right, golden), reasons }
    this.element.classList.remove("empty")
    put(this.#empty, "")
    put(this.#note, this.#noteOf(curves).map((sentence) => el("span", {}, sentence)))
    const worst = reasons.find((reason) => isNumber(reason.frequencyHz))
    this.#index = nearestIndex(curves.frequencyHz, worst?.frequencyHz ?? 1000)
    this.#refresh()
    this.#stand(this.#index)
  }

  /** Moves the cursor if the key is one of its own. @param {KeyboardEvent} event @returns {boolean} whether it was */
  key(event) {
    if (!this.#shown || event.altKey || event.ctrlKey || event.metaKey) return false
    const next = walked(event.key, event.shiftKey, this.#index, this.#shown.curves.frequencyHz.length)
    if (next === null) return false
    event.preventDefault()
    event.stopPropagation()
    this.#stand(next)
    return true
  }

  #refresh() {
    this.#response.refresh()
    this.#difference.refresh()
  }

  /** @param {number} index */
  #stand(index) {
    this.#index = index
    this.#response.chart?.stand(index)
    this.#difference.chart?.stand(index)
    this.#readout.show(this.#cells())
  }

  /** @param {Api.Curves} curves @returns {string[]} */
  #noteOf(curves) {
    const notes = []
    if (isNumber(curves.left?.alignmentDb) && isNumber(curves.right?.alignmentDb)) {
      notes.push(t("screen.plot.aligned", { left: curves.left.alignmentDb, right: curves.right.alignmentDb }))
    }
    const simulator = curves.earSimulator
    if (simulator) {
      notes.push(t("screen.plot.hatched", { type: simulator.type.replaceAll("-", "\u2011"), from: simulator.specifiedFromHz, to: simulator.specifiedToHz }))
    }
    return notes
  }

  /** @returns {import("./readout.js").Cell[]} */
  #cells() {
    const s = this.#shown, i = this.#index
    const at = (/** @type {Values | null | undefined} */ values) => s && values ? values[i] : null
    const c = s?.curves
    const golden = at(c?.golden.levelDb)
    const lower = less([at(c?.windows.lowerDb) ?? null], [golden ?? null])[0]
    const upper = less([at(c?.windows.upperDb) ?? null], [golden ?? null])[0]
    const limit = at(c?.difference?.limitDb)
    return [
      { label: t("screen.readout.frequency"), value: frequency(c ? c.frequencyHz[i] : null), kind: "wide" },
      { label: t("screen.readout.left"), value: db(at(s?.left)), more: signedDb(at(s?.leftDeviation)), kind: "left" },
      { label: t("screen.readout.right"), value: db(at(s?.right)), more: signedDb(at(s?.rightDeviation)), kind: "right" },
      { label: t("screen.readout.golden"), value: db(golden) },
      { label: t("screen.readout.window"), value: isNumber(lower) ? `${signedDb(lower)} \u2026 ${signedDb(upper)}` : db(null), kind: "wide" },
      { label: t("screen.readout.difference"), value: signedDb(at(c?.difference?.levelDb)),
        more: isNumber(limit) ? `\u00b1${db(limit)}` : "", kind: "difference" },
    ]
  }

  /** @param {HTMLElement} host @param {number} width @param {number} height */
  #buildResponse(host, width, height) {
    const s = this.#shown
    if (!s) return null
    const { curves } = s
    const ground = groundOf(width, height)
    const reasons = s.reasons.filter((reason) => isOfTheCurves(reason.kind))
    const worst = reasons.map((reason) => this.#mark(reason, 0)?.db ?? null)
    const seen = extent(curves.golden.levelDb, curves.windows.lowerDb, curves.windows.upperDb, worst) ?? [60, 110]
    const scale = fitLevel(ground.width, ground.height, seen[0], seen[1])
    const chart = buildChart(host, {
      hz: curves.frequencyHz, width, height, low: scale.low, high: scale.high, caption: t("screen.plot.level"),
      lines: [
        { name: t("screen.plot.right"), values: s.right, colour: "right", width: 2.2, dash: [7, 4], label: true },
        { name: t("screen.plot.left"), values: s.left, colour: "left", width: 2.2, label: true },
        { name: t("screen.plot.golden"), values: curves.golden.levelDb, colour: "golden", width: 1, label: true },
      ],
      bands: [{ lower: curves.windows.lowerDb, upper: curves.windows.upperDb, colour: "window", edge: "window-edge" }],
      regions: regionsOf(curves, reasons), specified: rangeOf(curves),
      marks: reasons.filter((reason) => isNumber(reason.frequencyHz)).map((reason, place) => this.#mark(reason, place)).filter((mark) => mark !== null),
    }, (index) => this.#stand(index))
    chart.stand(this.#index)
    return chart
  }

  /** @param {Api.Reason} reason @param {number} place */
  #mark(reason, place) {
    const s = /** @type {Shown} */ (this.#shown)
    const hz = /** @type {number} */ (reason.frequencyHz)
    const value = (reason.channel === "right" ? s.right : s.left)[nearestIndex(s.curves.frequencyHz, hz)]
    if (!isNumber(value)) return null
    const text = place === 0 && isNumber(reason.measuredDb) ? t("screen.plot.mark", { measured: reason.measuredDb, frequency: hz }) : ""
    return { hz, db: value, text }
  }

  /** @param {HTMLElement} host @param {number} width @param {number} height */
  #buildDifference(host, width, height) {
    const s = this.#shown
    if (!s || !s.curves.difference) return null
    const { curves } = s, { levelDb, limitDb } = s.curves.difference
    const reasons = s.reasons.filter((reason) => OF_THE_PAIR.includes(reason.kind))
    const judged = levelDb.map((value, i) => (inRegions(curves, i) ? value : null))
    const half = halfSpan(3, 40, limitDb, judged, reasons.map((reason) => isNumber(reason.frequencyHz)
      ? levelDb[nearestIndex(curves.frequencyHz, reason.frequencyHz)] : null))
    const marks = reasons.filter((reason) => isNumber(reason.frequencyHz)).map((reason, place) => {
      const hz = /** @type {number} */ (reason.frequencyHz)
      const value = levelDb[nearestIndex(curves.frequencyHz, hz)] ?? 0
      return { hz, db: value, text: place === 0 ? t("screen.plot.mark", { measured: value, frequency: hz }) : "" }
    })
    const chart = buildChart(host, {
      hz: curves.frequencyHz, width, height, low: -half, high: half, caption: t("screen.plot.difference"),
      lines: [{ name: t("screen.plot.leftMinusRight"), values: levelDb, colour: "difference", width: 2, label: true }],
      bands: limitDb ? [{ lower: negated(limitDb), upper: limitDb, colour: "window", edge: "window-edge" }] : [],
      regions: regionsOf(curves, reasons), specified: rangeOf(curves), marks,
    }, (index) => this.#stand(index))
    chart.stand(this.#index)
    return chart
  }
}

/** @param {Api.Curves} curves @param {Api.Reason[]} reasons */
function regionsOf(curves, reasons) {
  const failing = new Set(reasons.flatMap((reason) => [reason.region, ...(reason.alsoRegions ?? [])]))
  return curves.regions.map((region) => ({ ...region, failed: failing.has(region.name) }))
}

/** @param {Api.Curves} curves */
function rangeOf(curves) {
  const simulator = curves.earSimulator
  return simulator ? { fromHz: simulator.specifiedFromHz, toHz: simulator.specifiedToHz } : null
}

/** Whether a grid point lies in a region. @param {Api.Curves} curves @param {number} index */
function inRegions(curves, index) {
  const hz = curves.frequencyHz[index]
  return curves.regions.some((region) => hz >= region.fromHz * 0.987 && hz <= region.toHz * 1.013)   // exact grid points lie up to 1.28 % beside their preferred number
}

/** @param {string} kind of a reason */
function isOfTheCurves(kind) {
  return !OF_THE_PAIR.includes(kind) && !NOT_OF_THE_CURVES.includes(kind)
}

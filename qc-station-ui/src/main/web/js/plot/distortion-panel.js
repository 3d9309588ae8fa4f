// Distortion of one pair against the frequency of excitation: THD in percent or high-order distortion in dB, with floors and limits.
import { el, put } from "../dom.js"
import { db, frequency, isNumber } from "../format.js"
import { t } from "../texts.js"
import { buildChart } from "./chart.js"
import { Readout } from "./readout.js"
import { PlotRoom } from "./room.js"
import { extent, nearestIndex, thdLevels } from "./scales.js"
import { walked } from "./walk.js"

/**
 * @typedef {import("./scales.js").Values} Values
 * @typedef {"thd" | "high-order"} Kind
 * @typedef {{ curves: Api.Curves, inspection: Api.Inspection }} Shown
 */

/** Orders whose powers make up THD. */
const ORDERS = ["2", "3", "4", "5"]

/** Whether a curve set has that kind of distortion. @param {Api.Curves} curves @param {Kind} kind */
export function hasDistortion(curves, kind) {
  return [curves.left, curves.right].some((channel) => (seriesOf(channel, kind).values).some(isNumber))
}

export class DistortionPanel {
  /** @type {Shown | null} */
  #shown = null
  /** @type {Kind} */
  #kind = "thd"
  #index = 0
  #readout = new Readout()
  #note = el("p", { class: "plot-note" })
  #room = new PlotRoom("distortion", (host, width, height) => this.#build(host, width, height))

  constructor() {
    this.element = el("figure", { class: "plots", tabindex: 0, role: "group", "aria-label": t("screen.distortion.label"),
      on: { keydown: (/** @type {KeyboardEvent} */ event) => this.key(event) } }, this.#readout.element, this.#room.element, this.#note)
  }

  /** @param {Api.Curves} curves @param {Api.Inspection} inspection @param {Kind} kind */
  show(curves, inspection, kind) {
    this.#shown = { curves, inspection }
    this.#kind = kind
    const worst = inspection.reasons.find((reason) => reason.kind === checkOf(kind) && isNumber(reason.frequencyHz))
    this.#index = nearestIndex(curves.frequencyHz, worst?.frequencyHz ?? 200)
    put(this.#note, kind === "thd" ? t("screen.distortion.thdNote") : t("screen.distortion.highOrderNote"))
    this.#room.refresh()
    this.#stand(this.#index)
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (!this.#shown || event.altKey || event.ctrlKey || event.metaKey) return false
    const next = walked(event.key, event.shiftKey, this.#index, this.#shown.curves.frequencyHz.length)
    if (next === null) return false
    event.preventDefault()
    event.stopPropagation()
    this.#stand(next)
    return true
  }

  /** @param {number} index */
  #stand(index) {
    this.#index = index
    this.#room.chart?.stand(index)
    this.#readout.show(this.#cells())
  }

  /** @returns {import("./readout.js").Cell[]} */
  #cells() {
    const s = this.#shown, i = this.#index
    if (!s) return []
    const say = (/** @type {number | null | undefined} */ value) => (this.#kind === "thd" ? percentOf(value) : isNumber(value) ? `${db(value)} dB` : db(null))
    const cell = (/** @type {"left" | "right"} */ side) => {
      const { values, floor } = seriesOf(s.curves[side], this.#kind)
      return { label: side === "left" ? t("screen.readout.left") : t("screen.readout.right"), value: say(values[i]), kind: `wide ${side}`,
        more: isNumber(floor[i]) ? t("screen.distortion.floor", { value: say(floor[i]) }) : "" }
    }
    return [{ label: t("screen.distortion.excitation"), value: frequency(s.curves.frequencyHz[i]), kind: "wide" }, cell("left"), cell("right"),
      { label: t("screen.distortion.limit"), value: say(limitOf(s, this.#kind)[i]), kind: "wide" }]
  }

  /** @param {HTMLElement} host @param {number} width @param {number} height */
  #build(host, width, height) {
    const s = this.#shown
    if (!s) return null
    const { curves, inspection } = s
    const left = seriesOf(curves.left, this.#kind), right = seriesOf(curves.right, this.#kind)
    const limit = limitOf(s, this.#kind)
    const seen = extent(left.values, right.values, left.floor, right.floor, limit) ?? [-70, -20]
    const low = Math.floor(seen[0] / 10) * 10 - 5, high = Math.ceil(seen[1] / 10) * 10 + 5
    const failing = inspection.reasons.filter((reason) => reason.kind === checkOf(this.#kind))
    const chart = buildChart(host, {
      hz: curves.frequencyHz, width, height, low, high,
      caption: this.#kind === "thd" ? t("screen.distortion.thdAxis") : t("screen.distortion.highOrderAxis"),
      levelLabel: this.#kind === "thd" ? thdLevels : undefined,
      lines: [
        { name: t("screen.distortion.floorLine"), values: left.floor, colour: "left", width: 1, dash: [2, 3], label: true },
        { name: t("screen.distortion.floorLine"), values: right.floor, colour: "right", width: 1, dash: [2, 3] },
        { name: t("screen.plot.right"), values: right.values, colour: "right", width: 2.2, dash: [7, 4], label: true },
        { name: t("screen.plot.left"), values: left.values, colour: "left", width: 2.2, label: true },
        { name: t("screen.distortion.limitLine"), values: limit, colour: "golden", width: 1.4, label: true },
      ],
      bands: [], specified: null,
      regions: curves.regions.map((region) => ({ ...region, failed: failing.some((reason) => reason.region === region.name) })),
      marks: failing.filter((reason) => isNumber(reason.frequencyHz)).map((reason) => {
        const series = reason.channel === "right" ? right : left
        return { hz: /** @type {number} */ (reason.frequencyHz), db: series.values[nearestIndex(curves.frequencyHz, reason.frequencyHz ?? 0)] ?? low, text: "" }
      }),
    }, (index) => this.#stand(index))
    chart.stand(this.#index)
    return chart
  }
}

/** The check's word in results and reasons. @param {Kind} kind */
function checkOf(kind) {
  return kind === "thd" ? "thd" : "high-order-distortion"
}

/** Values and floor in dB re the fundamental. @param {Api.ChannelCurve | null | undefined} channel @param {Kind} kind @returns {{ values: Values, floor: Values }} */
export function seriesOf(channel, kind) {
  if (kind === "high-order") return { values: channel?.highOrderDb ?? [], floor: channel?.highOrderFloorDb ?? [] }
  const values = (channel?.thdPercent ?? []).map((percent) => (isNumber(percent) && percent > 0 ? 20 * Math.log10(percent / 100) : null))
  return { values, floor: powerSum(channel?.harmonicFloorsDb ?? {}) }
}

/** Floors of the orders together, as THD adds the orders; a gap where one is missing. @param {Record<string, Values | null | undefined>} floors @returns {Values} */
export function powerSum(floors) {
  const orders = ORDERS.map((order) => floors[order] ?? [])
  return (orders[0] ?? []).map((_, i) => {
    const powers = orders.map((order) => order[i])
    return powers.every(isNumber) ? 10 * Math.log10(powers.reduce((sum, level) => sum + 10 ** (/** @type {number} */ (level) / 10), 0)) : null
  })
}

/** The limits of the regions, dB re the fundamental. @param {Shown} shown @param {Kind} kind @returns {Values} */
function limitOf({ curves, inspection }, kind) {
  const rows = (inspection.regions ?? []).filter((row) => row.check === checkOf(kind) && isNumber(row.limitDb))
  return curves.frequencyHz.map((hz) => {
    const row = rows.find((candidate) => {
      const span = spanOf(candidate.name ?? "", curves.regions)
      return span !== null && hz >= span.fromHz * 0.987 && hz <= span.toHz * 1.013   // exact grid points lie up to 1.28 % beside their preferred number
    })
    if (!row || !isNumber(row.limitDb)) return null
    return row.unit === "%" ? 20 * Math.log10(row.limitDb / 100) : row.limitDb
  })
}

/** A check's span: the region it names, or the frequencies that its name is made of. @param {string} name @param {Api.Region[]} regions @returns {{ fromHz: number, toHz: number } | null} */
export function spanOf(name, regions) {
  const written = /^(\d+(?:\.\d+)?)\u2013(\d+(?:\.\d+)?)\sHz$/.exec(name)
  return regions.find((region) => region.name === name) ?? (written ? { fromHz: Number(written[1]), toHz: Number(written[2]) } : null)
}

/** @param {number | null | undefined} level dB re the fundamental */
function percentOf(level) {
  return isNumber(level) ? `${Number((100 * 10 ** (level / 20)).toPrecision(2))}\u202f%` : db(null)
}

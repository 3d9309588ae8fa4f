// Three plots over one axis: left and right deviation from golden, and left − right, every unit a thin line under the bands.
import { el, put } from "../dom.js"
import { frequency, isNumber, signedDb } from "../format.js"
import { buildChart, EDGES, groundOf } from "../plot/chart.js"
import { paintCurve } from "../plot/paint.js"
import { Readout } from "../plot/readout.js"
import { PlotRoom } from "../plot/room.js"
import { halfSpan, heightFor, nearestIndex, negated } from "../plot/scales.js"
import { walked } from "../plot/walk.js"
import { t } from "../texts.js"

/**
 * @typedef {import("../plot/scales.js").Values} Values
 * @typedef {import("../plot/colours.js").ColourName} ColourName
 * @typedef {{ onMark: (unit: Api.UnitCurves | null) => void, onOpen: (unit: Api.UnitCurves) => void }} Handlers
 * @typedef {{ kind: ColourName & ("left" | "right" | "difference"), title: string, caption: string, spread: Api.Spread | null | undefined, lower: Values | null, upper: Values | null, half: number, of: (unit: Api.UnitCurves) => Values }} Cloud
 */

/** A click this far from a curve, in decibels, still means it. */
const REACH_DB = 0.7
const MANY = 120

export class Clouds {
  #statistics
  #curves
  #handlers
  #clouds
  #rooms
  #numbers
  #caption = el("figcaption")
  #readout = new Readout()
  #index
  /** @type {Api.UnitCurves | null} */
  #marked = null

  /** @param {Api.Statistics} statistics @param {Api.BatchCurves} curves @param {Handlers} handlers */
  constructor(statistics, curves, handlers) {
    this.#statistics = statistics
    this.#curves = curves
    this.#handlers = handlers
    this.#index = nearestIndex(statistics.frequencyHz, 1000)
    this.#clouds = cloudsOf(statistics)
    this.#numbers = this.#clouds.map(() => el("span", { class: "more" }))
    this.#rooms = this.#clouds.map((_, place) => this.#room(place))
    this.element = el("figure", { class: "clouds", tabindex: 0, role: "group", "aria-label": t("screen.cloud.label") },
      this.#readout.element,
      this.#clouds.map((cloud, place) => el("section", { class: `cloud ${cloud.kind}` },
        el("h3", {}, el("span", { class: `key ${cloud.kind}` }), cloud.title,
          this.#numbers[place]), this.#rooms[place].element)),
      this.#caption)
    this.#drawWords()
  }

  /** Takes in what came since; the cursor and the marked unit stay. @param {Api.Statistics} statistics @param {Api.BatchCurves} curves */
  renew(statistics, curves) {
    this.#statistics = statistics
    this.#curves = curves
    this.#clouds = cloudsOf(statistics)
    const marked = this.#marked?.inspection
    this.#marked = curves.units.find((unit) => unit.inspection === marked) ?? null
    this.#drawWords()
    this.refresh()
  }

  #drawWords() {
    this.#clouds.forEach((cloud, place) => put(this.#numbers[place], cloud.spread ? t("screen.cloud.n", { n: cloud.spread.n }) : ""))
    put(this.#caption, [t("screen.cloud.legend"), ...(this.#statistics.notes ?? [])].map((line) => el("p", { class: "plot-note" }, line)))
    this.#readout.show(this.#cells())
  }

  refresh() {
    for (const room of this.#rooms) room.refresh()
    this.#stand(this.#index)
  }

  /** @param {Api.UnitCurves | null} unit */
  mark(unit) {
    if (unit === this.#marked) return
    this.#marked = unit
    for (const room of this.#rooms) room.chart?.repaint()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    const next = walked(event.key, event.shiftKey, this.#index, this.#statistics.frequencyHz.length)
    if (next === null) return false
    this.#stand(next)
    return true
  }

  /** @param {number} place */
  #room(place) {
    const room = new PlotRoom("cloud-room", (host, width, height) => {
      const cloud = this.#clouds[place]
      const ground = groundOf(width, 100)
      const wanted = heightFor(ground.width, 2 * cloud.half) + EDGES.top + EDGES.bottom
      if (wanted !== height) {
        room.setHeight(wanted)   // the size observer calls again with the right height
        return null
      }
      return this.#build(cloud, host, width, height)
    })
    room.element.addEventListener("click", (event) => this.#clicked(event, place))
    return room
  }

  /** @param {Cloud} cloud @param {HTMLElement} host @param {number} width @param {number} height */
  #build(cloud, host, width, height) {
    const s = this.#statistics
    const p = cloud.spread?.percentiles ?? {}
    const none = s.frequencyHz.map(() => null)
    const chart = buildChart(host, {
      hz: s.frequencyHz, width, height, low: -cloud.half, high: cloud.half, caption: cloud.caption,
      lines: [{ name: t("screen.cloud.median"), values: p["50"] ?? none, colour: cloud.kind, width: 2.4, dash: cloud.kind === "right" ? [7, 4] : undefined, label: true }],
      bands: [
        ...(cloud.lower && cloud.upper ? [{ lower: cloud.lower, upper: cloud.upper, colour: /** @type {ColourName} */ ("window"), edge: /** @type {ColourName} */ ("window-edge") }] : []),
        ...(p["2.5"] && p["97.5"] ? [{ lower: p["2.5"], upper: p["97.5"], colour: cloud.kind, alpha: 0.2 }] : []),
      ],
      regions: s.regions.map((region) => ({ ...region, failed: false })), specified: null, marks: [],
      labels: () => this.#marked ? [{ text: this.#marked.serial, values: cloud.of(this.#marked), colour: inkOf() }] : [],
      under: (surface) => this.#paintUnits(surface, cloud),
      over: (surface) => {
        if (this.#marked) paintCurve(surface, cloud.of(this.#marked), { colour: surface.colours.ink, width: 2.6 })
      },
    }, (index) => this.#stand(index))
    chart.stand(this.#index)
    return chart
  }

  /** Good units faint, failed ones strong. @param {import("../plot/paint.js").Surface} surface @param {Cloud} cloud */
  #paintUnits(surface, cloud) {
    const faint = this.#curves.units.length > MANY ? 0.16 : 0.32
    for (const unit of this.#curves.units) {
      if (unit.verdict === "PASS") paintCurve(surface, cloud.of(unit), { colour: surface.colours[cloud.kind], width: 0.8, alpha: faint })
    }
    for (const unit of this.#curves.units) {
      if (unit.verdict !== "PASS") paintCurve(surface, cloud.of(unit), { colour: surface.colours.fail, width: 1.3, alpha: 0.85, dash: [3, 2] })
    }
  }

  /** @param {MouseEvent} event @param {number} place */
  #clicked(event, place) {
    const at = this.#rooms[place].chart?.at(event.clientX, event.clientY)
    if (!at) return
    const near = nearestCurve(this.#curves.units, this.#clouds[place].of, at.index, at.db, REACH_DB)
    if (!near) return
    if (near === this.#marked) return this.#handlers.onOpen(near)
    this.mark(near)
    this.#handlers.onMark(near)
  }

  /** @param {number} index */
  #stand(index) {
    this.#index = index
    for (const room of this.#rooms) room.chart?.stand(index)
    this.#readout.show(this.#cells())
  }

  /** @returns {import("../plot/readout.js").Cell[]} */
  #cells() {
    const i = this.#index, s = this.#statistics
    const cells = this.#clouds.map((cloud) => {
      const p = cloud.spread?.percentiles ?? {}
      const at = (/** @type {string} */ name) => p[name]?.[i]
      return { label: cloud.title, value: signedDb(at("50")), kind: `wide ${cloud.kind}`,
        more: isNumber(at("2.5")) ? `${signedDb(at("2.5"))} \u2026 ${signedDb(at("97.5"))}` : "" }
    })
    const lower = s.window?.lowerDb?.[i], upper = s.window?.upperDb?.[i]
    return [{ label: t("screen.readout.frequency"), value: frequency(s.frequencyHz[i]), kind: "wide" }, ...cells,
      { label: t("screen.readout.window"), value: isNumber(lower) ? `${signedDb(lower)} \u2026 ${signedDb(upper)}` : signedDb(null), kind: "wide" }]
  }
}

/**
 * The unit whose curve passes nearest to a place.
 * @template T
 * @param {T[]} units @param {(unit: T) => Values} of @param {number} index grid point @param {number} db @param {number} reach dB
 * @returns {T | null} null if none passes within reach
 */
export function nearestCurve(units, of, index, db, reach) {
  let near = null, least = reach
  for (const unit of units) {
    const value = of(unit)[index]
    if (!isNumber(value)) continue
    const distance = Math.abs(value - db)
    if (distance <= least) {
      least = distance
      near = unit
    }
  }
  return near
}

function inkOf() {
  return getComputedStyle(document.documentElement).getPropertyValue("--ink")
}

/** @param {Api.Statistics} s @returns {Cloud[]} */
function cloudsOf(s) {
  const limits = s.window ?? { lowerDb: null, upperDb: null }
  const half = halfSpan(4, 9, limits.lowerDb, limits.upperDb, s.left?.deviation?.percentiles?.["2.5"], s.right?.deviation?.percentiles?.["97.5"])
  const match = s.matchLimitDb ?? null
  return [
    { kind: "left", title: t("screen.cloud.left"), caption: t("screen.cloud.deviation"), spread: spreadOf(s.left), lower: limits.lowerDb, upper: limits.upperDb, half, of: (unit) => unit.leftDeviationDb ?? [] },
    { kind: "right", title: t("screen.cloud.right"), caption: t("screen.cloud.deviation"), spread: spreadOf(s.right), lower: limits.lowerDb, upper: limits.upperDb, half, of: (unit) => unit.rightDeviationDb ?? [] },
    { kind: "difference", title: t("screen.cloud.difference"), caption: t("screen.cloud.differenceAxis"), spread: s.difference, lower: match && negated(match), upper: match, half: halfSpan(3, 9, match), of: (unit) => unit.differenceDb ?? [] },
  ]
}

/** @param {Api.ChannelStatistics | null | undefined} channel @returns {Api.Spread | null} */
function spreadOf(channel) {
  return channel?.deviation ? { ...channel.deviation, n: channel.n } : null
}

// The limits over the cloud of units: both channels' deviations with the windows, and left − right with the match limits. An edge
// follows the mouse; the chosen one is drawn strongly.
import { el } from "../dom.js"
import { buildChart, EDGES, groundOf } from "../plot/chart.js"
import { paintBand, paintCurve } from "../plot/paint.js"
import { PlotRoom } from "../plot/room.js"
import { heightFor, negated } from "../plot/scales.js"
import { t } from "../texts.js"
import { edgesOf, linesOf, matchEnds, sameEdge, spanAt, windowEnds } from "./limit-set.js"

/**
 * @typedef {import("./limit-set.js").LimitSet} LimitSet @typedef {import("./limit-set.js").Edge} Edge
 * @typedef {import("./replay.js").Recorded} Recorded
 * @typedef {import("../plot/paint.js").Surface} Surface
 * @typedef {{ onChoose: (edge: Edge) => void, onMove: (edge: Edge, db: number) => void }} Handlers
 */

/** As many units are drawn; the numbers count them all. */
const DRAWN = 240
/** Half of what plots have elsewhere, so that a tenth of a decibel can be seen and dragged; the legend says so. */
const DB_PER_DECADE = 12.5
/** A press this near to an edge takes hold of it, CSS pixels. */
const REACH_PX = 14

export class LimitPlots {
  #recorded
  #handlers
  /** @type {LimitSet} */
  #set
  /** @type {LimitSet | null} */
  #other = null
  /** @type {Edge | null} */
  #edge = null
  #half
  #rooms
  #drawn
  /** @type {Map<string, HTMLCanvasElement>} */
  #clouds = new Map()

  /** @param {Recorded} recorded @param {LimitSet} set @param {Handlers} handlers */
  constructor(recorded, set, handlers) {
    this.#recorded = recorded
    this.#set = set
    this.#handlers = handlers
    this.#half = halfOf(set)
    this.#drawn = drawnOf(recorded)
    this.#rooms = /** @type {("window" | "match")[]} */ (["window", "match"]).map((kind) => this.#room(kind))
    this.element = el("div", { class: "limit-plots" },
      this.#section(t("screen.limits.plot.window"), 0, t("screen.limits.plot.windowLegend")),
      this.#section(t("screen.limits.plot.match"), 1, t("screen.limits.plot.matchLegend")))
  }

  /** @param {string} title @param {number} place @param {string} legend */
  #section(title, place, legend) {
    return el("section", { class: "limit-plot" }, el("h3", {}, title), this.#rooms[place].element, el("p", { class: "plot-note" }, legend))
  }

  refresh() {
    for (const room of this.#rooms) room.refresh()
  }

  /** @param {LimitSet} set @param {LimitSet | null} other @param {Edge | null} edge */
  show(set, other, edge) {
    const named = (/** @type {LimitSet} */ one) => JSON.stringify(one.regions.map((region) => [region.name, region.hz]))
    const otherRegions = named(set) !== named(this.#set)
    this.#set = set
    this.#other = other
    this.#edge = edge
    const half = halfOf(set)
    if (otherRegions || half.window > this.#half.window || half.match > this.#half.match) {
      this.#half = { window: Math.max(half.window, this.#half.window), match: Math.max(half.match, this.#half.match) }
      this.refresh()
    } else for (const room of this.#rooms) room.chart?.repaint()
  }

  /** @param {"window" | "match"} kind */
  #room(kind) {
    const room = new PlotRoom(`limit-room ${kind}`, (host, width, height) => {
      const wanted = heightFor(groundOf(width, 100).width, 2 * this.#half[kind], DB_PER_DECADE) + EDGES.top + EDGES.bottom
      if (wanted !== height) {
        room.setHeight(wanted)
        return null
      }
      return this.#build(kind, host, width, height)
    })
    this.#listen(room, kind)
    return room
  }

  /** @param {"window" | "match"} kind @param {HTMLElement} host @param {number} width @param {number} height */
  #build(kind, host, width, height) {
    const { frequencyHz } = this.#recorded.head
    this.#clouds.delete(kind)
    const half = this.#half[kind]
    return buildChart(host, {
      hz: frequencyHz, width, height, low: -half, high: half, caption: t(kind === "window" ? "screen.cloud.deviation" : "screen.cloud.differenceAxis"),
      lines: [], bands: [], regions: this.#set.regions.map((region) => ({ name: region.name, fromHz: region.hz[0], toHz: region.hz[1], failed: false })),
      specified: null, marks: [],
      under: (surface) => this.#paint(surface, kind),
    }, () => {})
  }

  /** @param {Surface} s @param {"window" | "match"} kind */
  #paint(s, kind) {
    const { frequencyHz, label } = this.#recorded.head
    const limits = linesOf(this.#set, frequencyHz, label)
    const [lower, upper] = kind === "window" ? [limits.lower, limits.upper] : [negated(limits.match), limits.match]
    paintBand(s, lower, upper, { fill: s.colours.window, edge: s.colours["window-edge"] })
    s.ctx.drawImage(this.#cloud(s, kind), 0, 0)
    for (const values of [lower, upper]) paintCurve(s, values, { colour: s.colours.ink, width: 1.6 })
    if (this.#other) {
      const others = linesOf(this.#other, frequencyHz, label)
      for (const values of kind === "window" ? [others.lower, others.upper] : [negated(others.match), others.match]) {
        paintCurve(s, values, { colour: s.colours.ink, width: 1.4, dash: [2, 4] })
      }
    }
    this.#paintChosen(s, kind)
  }

  /** The units do not change while limits do: they are painted once a size. @param {Surface} s @param {"window" | "match"} kind */
  #cloud(s, kind) {
    const known = this.#clouds.get(kind)
    if (known) return known
    const canvas = document.createElement("canvas")
    canvas.width = s.ctx.canvas.width
    canvas.height = s.ctx.canvas.height
    const ctx = canvas.getContext("2d")
    if (ctx) {
      const own = { ...s, ctx }
      for (const { unit, bad } of this.#drawn) {
        const style = { width: bad ? 1.1 : 0.8, alpha: bad ? 0.8 : this.#drawn.length > 120 ? 0.16 : 0.3 }
        if (kind === "match") paintCurve(own, this.#row(this.#recorded.difference, unit.row), { ...style, colour: bad ? s.colours.fail : s.colours.difference })
        else {
          paintCurve(own, this.#row(this.#recorded.left, unit.row), { ...style, colour: bad ? s.colours.fail : s.colours.left })
          paintCurve(own, this.#row(this.#recorded.right, unit.row), { ...style, colour: bad ? s.colours.fail : s.colours.right, dash: [5, 3] })
        }
      }
    }
    this.#clouds.set(kind, canvas)
    return canvas
  }

  /** @param {Float32Array} values @param {number} row @returns {(number | null)[]} */
  #row(values, row) {
    const { points } = this.#recorded.head
    return Array.from(values.subarray(row * points, (row + 1) * points), (value) => (Number.isNaN(value) ? null : value))
  }

  /** @param {Surface} s @param {"window" | "match"} kind */
  #paintChosen(s, kind) {
    const edge = this.#edge
    const region = edge && this.#set.regions.find((one) => one.name === edge.region)
    if (!edge || !region || (edge.kind === "match") !== (kind === "match")) return
    const line = this.#line(region, edge.kind)
    const values = s.hz.map((f) => (f >= region.hz[0] * 0.987 && f <= region.hz[1] * 1.013 ? line(f) : null))
    paintCurve(s, values, { colour: s.colours.ink, width: 3.4 })
    if (kind === "match") paintCurve(s, negated(values), { colour: s.colours.ink, width: 3.4 })
    const f = edge.end === 1 ? region.hz[1] : edge.end === 0 ? region.hz[0] : Math.sqrt(region.hz[0] * region.hz[1])
    s.ctx.fillStyle = s.colours.ink
    s.ctx.beginPath()
    s.ctx.arc(s.x(f), s.y(line(f)), 6 * s.ratio, 0, 2 * Math.PI)
    s.ctx.fill()
  }

  /** @param {import("./limit-set.js").Region} region @param {import("./limit-set.js").EdgeKind} kind @returns {(f: number) => number} */
  #line(region, kind) {
    const [start, end] = windowEnds(region)
    const ends = /** @type {[number, number]} */ (kind === "match" ? matchEnds(region) : kind === "lower" ? [start[0], end[0]] : [start[1], end[1]])
    return (f) => spanAt(ends, region.hz, f)
  }

  /** @param {PlotRoom} room @param {"window" | "match"} kind */
  #listen(room, kind) {
    /** @type {Edge | null} */
    let held = null
    const place = (/** @type {PointerEvent} */ event) => room.chart?.at(event.clientX, event.clientY) ?? null
    room.element.addEventListener("pointerdown", (event) => {
      const at = place(event)
      held = at && this.#near(at, kind, room.element.clientHeight)
      if (!held) return
      event.preventDefault()
      room.element.setPointerCapture(event.pointerId)
      this.#handlers.onChoose(held)
    })
    room.element.addEventListener("pointermove", (event) => {
      const at = place(event)
      if (!held) {
        room.element.classList.toggle("over-edge", at !== null && this.#near(at, kind, room.element.clientHeight) !== null)
        return
      }
      if (at) this.#handlers.onMove(held, kind === "match" ? Math.abs(at.db) : at.db)
    })
    for (const end of ["pointerup", "pointercancel"]) room.element.addEventListener(end, () => { held = null })
  }

  /** The edge under a place. @param {{ index: number, db: number }} at @param {"window" | "match"} kind @param {number} height @returns {Edge | null} */
  #near(at, kind, height) {
    const f = this.#recorded.head.frequencyHz[at.index]
    const pxPerDb = (height - EDGES.top - EDGES.bottom) / (2 * this.#half[kind])
    /** @type {Edge | null} */
    let best = null
    let least = REACH_PX / pxPerDb
    for (const edge of edgesOf(this.#set)) {
      const region = this.#set.regions.find((one) => one.name === edge.region)
      if (!region || (edge.kind === "match") !== (kind === "match") || f < region.hz[0] * 0.987 || f > region.hz[1] * 1.013) continue
      const middle = Math.sqrt(region.hz[0] * region.hz[1])
      if (edge.end !== null && (f > middle) !== (edge.end === 1)) continue
      const distance = Math.abs(this.#line(region, edge.kind)(f) - (kind === "match" ? Math.abs(at.db) : at.db))
      if (distance < least && !sameEdge(edge, best)) {
        least = distance
        best = edge
      }
    }
    return best
  }
}

/** An even choice of the good units over production order, and of those that failed. @param {Recorded} recorded */
function drawnOf(recorded) {
  const units = recorded.head.units.filter((unit) => unit.row >= 0).map((unit) => ({ unit, bad: unit.verdict !== "PASS" }))
  const some = (/** @type {typeof units} */ all, /** @type {number} */ most) => all.length <= most ? all
    : Array.from({ length: most }, (_, k) => all[Math.floor((k * all.length) / most)])
  return [...some(units.filter((one) => !one.bad), DRAWN), ...some(units.filter((one) => one.bad), DRAWN / 4)]
}

/** Half the span of each plot: the limits with some air. @param {LimitSet} set */
function halfOf(set) {
  let window = 4, match = 3
  for (const region of set.regions) {
    for (const pair of windowEnds(region)) window = Math.max(window, Math.ceil(Math.max(Math.abs(pair[0]), Math.abs(pair[1])) + 1))
    for (const limit of matchEnds(region) ?? []) match = Math.max(match, Math.ceil(limit + 1))
  }
  return { window: Math.min(window, 14), match: Math.min(match, 10) }
}

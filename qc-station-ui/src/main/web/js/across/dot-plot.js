// One number of every unit in production order; this unit stands out by size, shape and label. Arrows walk, Enter opens.
import { el, put } from "../dom.js"
import { isNumber, localTime, signedDb } from "../format.js"
import { readColours } from "../plot/colours.js"
import { PlotRoom } from "../plot/room.js"
import { walked } from "../plot/walk.js"
import { t, tOf } from "../texts.js"

/** @typedef {{ across: Api.UnitAcross, column: number, caption: string }} Shown */

const LEFT = 56, RIGHT = 16, TOP = 28, BOTTOM = 40
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10]

export class DotPlot {
  #room = new PlotRoom("dots", (host, width, height) => this.#build(host, width, height))
  #readout = el("p", { class: "dot-readout", role: "status" })
  #open
  /** @type {Shown | null} */
  #shown = null
  #index = 0

  /** @param {(point: Api.AcrossPoint) => void} open */
  constructor(open) {
    this.#open = open
    this.element = el("figure", { class: "dot-plot", tabindex: 0, role: "group", "aria-label": t("screen.across.plot"),
      on: { keydown: (/** @type {KeyboardEvent} */ event) => this.key(event) } }, this.#readout, this.#room.element)
  }

  /** @param {Api.UnitAcross} across @param {number} column @param {string} caption */
  show(across, column, caption) {
    if (!this.#shown) this.#index = Math.max(0, across.points.findIndex((point) => point.serial === across.serial))
    this.#shown = { across, column, caption }
    this.#stand(this.#index)
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (!this.#shown || event.altKey || event.ctrlKey || event.metaKey) return false
    const points = this.#shown.across.points
    if (event.key === "Enter" && !(event.target instanceof HTMLAnchorElement) && !(event.target instanceof HTMLButtonElement)) {
      this.#open(points[this.#index])
      return true
    }
    const next = walked(event.key, event.shiftKey, this.#index, points.length)
    if (next === null) return false
    event.preventDefault()
    event.stopPropagation()
    this.#stand(next)
    return true
  }

  /** @param {number} index */
  #stand(index) {
    this.#index = index
    const { across, column } = /** @type {Shown} */ (this.#shown)
    const point = across.points[index]
    put(this.#readout, el("b", {}, point.serial), ` ${signedDb(point.values[column])} dB \u00b7 ${point.batch} \u00b7 ${point.station} \u00b7 ${localTime(point.at)} \u00b7 ${tOf("screen.word.", point.verdict)}`,
      point.shipped ? ` \u00b7 ${t("screen.across.shipped")}` : "")
    this.#room.refresh()
  }

  /** @param {HTMLElement} host @param {number} width @param {number} height */
  #build(host, width, height) {
    const shown = this.#shown
    if (!shown) return null
    const canvas = /** @type {HTMLCanvasElement} */ (el("canvas", { role: "img", "aria-label": `${shown.caption}: ${shown.across.answer}` }))
    const ratio = devicePixelRatio || 1
    canvas.width = width * ratio
    canvas.height = height * ratio
    put(host, canvas)
    const paint = /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d"))
    paint.scale(ratio, ratio)
    const scale = scaleOf(shown.across.points.map((point) => point.values[shown.column]), height)
    const x = (/** @type {number} */ i) => LEFT + ((i + 0.5) / shown.across.points.length) * (width - LEFT - RIGHT)
    this.#paint(paint, width, height, scale, x)
    canvas.addEventListener("click", (event) => {
      const i = Math.floor(((event.offsetX - LEFT) / (width - LEFT - RIGHT)) * shown.across.points.length)
      if (i >= 0 && i < shown.across.points.length) this.#stand(i)
    })
    return { stand: () => {}, at: () => null, repaint: () => {}, destroy: () => put(host) }
  }

  /** @param {CanvasRenderingContext2D} paint @param {number} width @param {number} height @param {Scale} scale @param {(i: number) => number} x */
  #paint(paint, width, height, scale, x) {
    const { across, column, caption } = /** @type {Shown} */ (this.#shown)
    const colours = readColours()
    paint.font = "13px system-ui, sans-serif"
    paint.fillStyle = colours.plot
    paint.fillRect(LEFT, TOP, width - LEFT - RIGHT, height - TOP - BOTTOM)
    paint.textAlign = "right"
    for (const tick of scale.ticks) {
      paint.strokeStyle = tick === 0 ? colours.line : colours.fine
      line(paint, LEFT, scale.y(tick), width - RIGHT, scale.y(tick))
      paint.fillStyle = colours.quiet
      paint.fillText(signedDb(tick), LEFT - 6, scale.y(tick) + 4)
    }
    paint.textAlign = "left"
    paint.fillText(caption, LEFT, TOP - 10)
    batchMarks(paint, across, x, height, colours)
    across.points.forEach((point, i) => {
      const value = point.values[column]
      if (!isNumber(value) || point.serial === across.serial) return
      const own = point.batch === across.points.find((one) => one.serial === across.serial)?.batch
      paint.fillStyle = own ? colours.ink : colours.quiet
      disc(paint, x(i), scale.y(value), own ? 3 : 2.5)
      if (point.shipped) ring(paint, x(i), scale.y(value), 5.5, colours.quiet)
    })
    const self = across.points.findIndex((point) => point.serial === across.serial)
    this.#mark(paint, self, x, scale, colours, width)
    const at = across.points[this.#index]?.values[column]
    if (isNumber(at)) ring(paint, x(this.#index), scale.y(at), 11, colours.ink)
  }

  /** @param {CanvasRenderingContext2D} paint @param {number} self @param {(i: number) => number} x @param {Scale} scale @param {import("../plot/colours.js").Colours} colours @param {number} width */
  #mark(paint, self, x, scale, colours, width) {
    const { across, column } = /** @type {Shown} */ (this.#shown)
    const value = across.points[self]?.values[column]
    if (!isNumber(value)) return
    paint.fillStyle = colours.difference
    paint.beginPath()
    paint.moveTo(x(self), scale.y(value) - 8)
    paint.lineTo(x(self) + 8, scale.y(value))
    paint.lineTo(x(self), scale.y(value) + 8)
    paint.lineTo(x(self) - 8, scale.y(value))
    paint.fill()
    const right = x(self) < width * 0.7
    paint.textAlign = right ? "left" : "right"
    paint.font = "600 13px system-ui, sans-serif"
    paint.fillText(`${across.serial} ${signedDb(value)} dB`, x(self) + (right ? 16 : -16), scale.y(value) + (scale.y(value) < TOP + 20 ? 18 : -8))
  }
}

/** @typedef {{ y: (value: number) => number, ticks: number[] }} Scale */

/** @param {(number | null)[]} values @param {number} height @returns {Scale} */
function scaleOf(values, height) {
  const known = /** @type {number[]} */ (values.filter(isNumber))
  let low = 0, high = 0
  for (const value of known) {
    low = Math.min(low, value)
    high = Math.max(high, value)
  }
  const room = Math.max(0.2, (high - low) * 0.08)
  low -= low < 0 ? room : 0.05
  high += high > 0 ? room : 0.05
  const step = STEPS.find((one) => (high - low) / one <= 7) ?? 20
  const ticks = []
  for (let tick = Math.ceil(low / step) * step; tick <= high; tick += step) ticks.push(Math.abs(tick) < step / 1000 ? 0 : tick)
  return { y: (value) => TOP + ((high - value) / (high - low)) * (height - TOP - BOTTOM), ticks }
}

/** Where a batch begins, and its name while there is room. @param {CanvasRenderingContext2D} paint @param {Api.UnitAcross} across @param {(i: number) => number} x @param {number} height @param {import("../plot/colours.js").Colours} colours */
function batchMarks(paint, across, x, height, colours) {
  let free = 0
  across.points.forEach((point, i) => {
    if (i && point.batch === across.points[i - 1].batch) return
    const at = (i ? x(i) + x(i - 1) : 2 * LEFT) / 2
    paint.strokeStyle = colours.line
    if (i) line(paint, at, TOP, at, height - BOTTOM)
    const width = paint.measureText(point.batch).width
    if (at < free) return
    paint.fillStyle = colours.quiet
    paint.fillText(point.batch, at + 3, height - BOTTOM + 18)
    free = at + width + 16
  })
  paint.fillText(t("screen.across.order"), LEFT, height - 6)
}

/** @param {CanvasRenderingContext2D} paint @param {number} x1 @param {number} y1 @param {number} x2 @param {number} y2 */
function line(paint, x1, y1, x2, y2) {
  paint.beginPath()
  paint.moveTo(x1, Math.round(y1) + 0.5)
  paint.lineTo(x2, Math.round(y2) + 0.5)
  paint.stroke()
}

/** @param {CanvasRenderingContext2D} paint @param {number} x @param {number} y @param {number} radius */
function disc(paint, x, y, radius) {
  paint.beginPath()
  paint.arc(x, y, radius, 0, 2 * Math.PI)
  paint.fill()
}

/** @param {CanvasRenderingContext2D} paint @param {number} x @param {number} y @param {number} radius @param {string} colour */
function ring(paint, x, y, radius, colour) {
  paint.strokeStyle = colour
  paint.beginPath()
  paint.arc(x, y, radius, 0, 2 * Math.PI)
  paint.stroke()
}

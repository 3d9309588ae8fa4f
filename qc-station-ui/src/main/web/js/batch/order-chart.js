// A chart over production order: panels below one another, one cursor through all of them, each point a way to its units.
import { el, put, svg } from "../dom.js"
import { DASH, isNumber, localTime } from "../format.js"
import { t } from "../texts.js"

/**
 * @typedef {(number | null)[]} Values
 * @typedef {{ title: string, lines: Values[], centre?: number | null, lower?: Values | null, upper?: Values | null }} Panel
 * @typedef {{ at: string, units: { inspection: string, serial: string, verdict: string | null }[] }} Point
 * @typedef {{ panel: number, text: string, points: number[] }} Signal
 * @typedef {{ label: string, panels: Panel[], points: Point[], signals: Signal[], say: (value: number) => string, onOpen: (unit: Point["units"][0]) => void, more?: (index: number) => string }} Spec
 */

const WIDTH = 900, LEFT = 60, RIGHT = 104, TOP = 22, GAP = 30, BOTTOM = 24
const HEIGHTS = [190, 96]
/** Discs are drawn up to this many points; beyond it the line and the signals alone. */
const DISCS = 300
/** A single value this many times as far out as the limits stands at the edge, with an arrow. */
const REACH = 2.2
/** A shift that so large a share of the points make is shown in full. */
const SHIFTED = 0.05
const NAMED_UNITS = 10

export class OrderChart {
  #spec
  #at = -1
  /** @type {SVGElement} */
  #cursor = svg("path", { class: "order-cursor", d: "" })
  #readout = el("p", { class: "order-readout", "aria-live": "polite" })
  #signalled

  /** @param {Spec} spec */
  constructor(spec) {
    this.#spec = spec
    this.#signalled = new Map(spec.panels.map((_, panel) => [panel, new Set(spec.signals.filter((signal) => signal.panel === panel).flatMap((signal) => signal.points))]))
    const height = topOf(spec.panels.length) - GAP + BOTTOM
    const drawing = svg("svg", { viewBox: `0 0 ${WIDTH} ${height}`, "aria-hidden": "true" }, spec.panels.map((_, i) => ground(i)), this.#days(height), spec.panels.flatMap((panel, i) => this.#panel(panel, i)), this.#cursor)
    drawing.addEventListener("pointermove", (event) => this.#stand(this.#under(/** @type {PointerEvent} */ (event), drawing)))
    drawing.addEventListener("click", () => this.#open())
    this.element = el("figure", { class: "order-chart", tabindex: 0, role: "group", "aria-label": spec.label, on: { keydown: (/** @type {KeyboardEvent} */ event) => this.#key(event) } },
      /** @type {any} */ (drawing), this.#readout)
    this.#tell()
  }

  /** @param {number} index a point to stand on, 0 for the first */
  stand(index) {
    this.#stand(index)
    this.element.focus()
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    if (event.target instanceof HTMLAnchorElement) return
    const last = this.#spec.points.length - 1, step = event.shiftKey ? 10 : 1
    const next = { ArrowLeft: Math.max(0, this.#at < 0 ? last : this.#at - step), ArrowRight: Math.min(last, this.#at + step), Home: 0, End: last }[event.key]
    if (next === undefined && event.key !== "Enter") return
    event.preventDefault()
    event.stopPropagation()
    if (next === undefined) this.#open()
    else this.#stand(next)
  }

  #open() {
    const units = this.#spec.points[this.#at]?.units ?? []
    if (units.length === 1) this.#spec.onOpen(units[0])
    else /** @type {HTMLElement | null} */ (this.#readout.querySelector("a"))?.focus()
  }

  /** @param {PointerEvent} event @param {SVGElement} drawing */
  #under(event, drawing) {
    const box = drawing.getBoundingClientRect()
    const x = ((event.clientX - box.left) / box.width) * WIDTH
    const share = (x - LEFT - 8) / (WIDTH - LEFT - RIGHT - 16)
    return Math.max(0, Math.min(this.#spec.points.length - 1, Math.round(share * (this.#spec.points.length - 1))))
  }

  /** @param {number} index */
  #stand(index) {
    if (index === this.#at) return
    this.#at = index
    this.#cursor.setAttribute("d", this.#spec.panels.map((_, i) => `M${this.#x(index)} ${topOf(i)}v${heightOf(i)}`).join(""))
    this.#tell()
  }

  #tell() {
    const point = this.#spec.points[this.#at]
    if (!point) return put(this.#readout, t("screen.order.keys"))
    const values = this.#spec.panels.flatMap((panel) => panel.lines.map((line) => line[this.#at])).filter(isNumber).map(this.#spec.say)
    const rules = this.#spec.signals.filter((signal) => signal.points.includes(this.#at)).map((signal) => signal.text)
    put(this.#readout,
      point.units.slice(0, NAMED_UNITS).map((unit) => el("a", { class: `serial ${unit.verdict === "FAIL" ? "state-fail" : ""}`, href: `#/unit/${encodeURIComponent(unit.serial)}?inspection=${unit.inspection}` }, unit.serial)),
      el("span", {}, localTime(point.at)), el("strong", {}, values.join(" \u00b7 ") || DASH),
      this.#spec.more ? el("span", {}, this.#spec.more(this.#at)) : null,
      rules.length ? el("span", { class: "state-fail" }, rules.join("; ")) : null)
  }

  /** @param {number} i */
  #x(i) {
    const count = this.#spec.points.length
    return count < 2 ? (LEFT + WIDTH - RIGHT) / 2 : LEFT + 8 + (i / (count - 1)) * (WIDTH - LEFT - RIGHT - 16)
  }

  /** A line where the local day changes, with its name. @param {number} height */
  #days(height) {
    const points = this.#spec.points
    const day = (/** @type {number} */ i) => new Date(points[i].at).toDateString()
    const begins = points.map((_, i) => i).filter((i) => i === 0 || day(i) !== day(i - 1))
    let free = -Infinity
    return begins.flatMap((i) => {
      const x = i === 0 ? this.#x(0) : (this.#x(i - 1) + this.#x(i)) / 2
      const named = x >= free
      if (named) free = x + 84
      return [i === 0 ? null : svg("path", { class: "order-day", d: `M${x} ${TOP}V${height - BOTTOM}` }),
        named ? svg("text", { class: "order-words", x: x + (i === 0 ? -4 : 4), y: height - 7 }, new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short" }).format(new Date(points[i].at))) : null]
    })
  }

  /** @param {Panel} panel @param {number} place */
  #panel(panel, place) {
    const top = topOf(place), bottom = top + heightOf(place)
    const [low, high] = spanOf(panel)
    const y = (/** @type {number} */ value) => bottom - ((Math.max(low, Math.min(high, value)) - low) / (high - low)) * (bottom - top)
    const words = endWords(panel, this.#spec.say).map((word) => ({ ...word, y: y(word.at) })).sort((a, b) => a.y - b.y)
    words.forEach((word, i) => { if (i) word.y = Math.max(word.y, words[i - 1].y + 14) })
    return [
      svg("text", { class: "order-title", x: LEFT, y: top - 7 }, panel.title),
      isNumber(panel.centre) ? svg("path", { class: "order-centre", d: `M${LEFT} ${y(panel.centre)}H${WIDTH - RIGHT}` }) : null,
      ...[panel.lower, panel.upper].map((limit) => limit ? svg("path", { class: "order-limit", d: this.#path(limit, y) }) : null),
      ...panel.lines.map((line) => svg("path", { class: "order-line", d: this.#path(line, y) })),
      ...panel.lines.flatMap((line) => this.#marks(line, place, y, low, high)),
      ...words.map((word) => svg("text", { class: "order-words", x: WIDTH - RIGHT + 6, y: word.y + 4 }, word.text)),
      ...ticks(low, high).map((value) => svg("text", { class: "order-words", x: LEFT - 6, y: y(value) + 4, "text-anchor": "end" }, this.#spec.say(value))),
    ]
  }

  /** @param {Values} line @param {number} place @param {(value: number) => number} y @param {number} low @param {number} high */
  #marks(line, place, y, low, high) {
    const signalled = this.#signalled.get(place)
    return line.map((value, i) => {
      if (!isNumber(value)) return null
      const out = signalled?.has(i), x = this.#x(i), at = y(value)
      const failed = this.#spec.points[i].units.length === 1 && this.#spec.points[i].units[0].verdict === "FAIL"
      if (value > high || value < low) return svg("path", { class: out ? "order-out" : "order-point", d: value > high ? `M${x - 6} ${at + 10}L${x} ${at}L${x + 6} ${at + 10}z` : `M${x - 6} ${at - 10}L${x} ${at}L${x + 6} ${at - 10}z` })
      if (out) return svg("rect", { class: "order-out", x: x - 4.5, y: at - 4.5, width: 9, height: 9 })
      if (line.length > DISCS) return null
      return svg("circle", { class: failed ? "order-point failed" : "order-point", cx: x, cy: at, r: 3.2 })
    })
  }

  /** @param {Values} values @param {(value: number) => number} y */
  #path(values, y) {
    let begun = false
    return values.map((value, i) => {
      if (!isNumber(value)) {
        begun = false
        return ""
      }
      const step = `${begun ? "L" : "M"}${this.#x(i).toFixed(1)} ${y(value).toFixed(1)}`
      begun = true
      return step
    }).join("")
  }
}

/** @param {number} place */
function heightOf(place) {
  return HEIGHTS[Math.min(place, HEIGHTS.length - 1)]
}

/** @param {number} place */
function topOf(place) {
  return TOP + Array.from({ length: place }, (_, i) => heightOf(i) + GAP).reduce((sum, height) => sum + height, 0)
}

/** @param {number} place */
function ground(place) {
  return svg("rect", { class: "order-ground", x: LEFT, y: topOf(place), width: WIDTH - LEFT - RIGHT, height: heightOf(place) })
}

/** What the axis shows: limits and data, but not the few values that are farther out than a few times the limits. @param {Panel} panel @returns {[number, number]} */
export function spanOf(panel) {
  const limits = [...(panel.lower ?? []), ...(panel.upper ?? []), ...(isNumber(panel.centre) ? [panel.centre] : [])].filter(isNumber)
  const values = panel.lines.flat().filter(isNumber)
  let low = Math.min(...values), high = Math.max(...values)
  if (limits.length) {
    const least = Math.min(...limits), most = Math.max(...limits), middle = panel.centre ?? (panel.lower ? (least + most) / 2 : 0)
    const reach = REACH * Math.max(most - middle, middle - least)
    const rising = values.sort((a, b) => a - b), few = Math.floor(SHIFTED * (rising.length - 1))
    low = Math.min(least, Math.max(low, Math.min(middle - reach, rising[few])))
    high = Math.max(most, Math.min(high, Math.max(middle + reach, rising[rising.length - 1 - few])))
  }
  const room = Math.max(1e-3, (high - low) * 0.08)
  return [low - room, high + room]
}

/** Round numbers inside the span, four or so. @param {number} low @param {number} high @returns {number[]} */
export function ticks(low, high) {
  const raw = (high - low) / 4, power = 10 ** Math.floor(Math.log10(raw))
  const step = power * ([1, 2, 5].find((s) => s * power >= raw) ?? 10)
  const found = []
  for (let at = Math.ceil(low / step) * step; at <= high; at += step) found.push(Number(at.toPrecision(6)) + 0)
  return found
}

/** @param {Panel} panel @param {(value: number) => string} say */
function endWords(panel, say) {
  const last = (/** @type {Values | null | undefined} */ values) => values?.filter(isNumber).at(-1)
  const upper = last(panel.upper), lower = last(panel.lower)
  return [[upper, "screen.order.limit"], [isNumber(panel.centre) ? panel.centre : undefined, "screen.order.mean"], [lower, "screen.order.limit"]]
    .flatMap(([at, key]) => (isNumber(at) ? [{ at, text: t(String(key), { at: say(at) }) }] : []))
}

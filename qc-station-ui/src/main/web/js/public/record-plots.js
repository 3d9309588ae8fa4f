// Both plots of a certificate as SVG: level of both channels in their window, and left − right inside the match limit.
import { el, svg } from "../dom.js"
import { t } from "../texts.js"

const WIDTH = 720
const LEFT = 44
const RIGHT = 92
const NUMBERED = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000]

/** @typedef {import("./check-page.js").RecordPlot} RecordPlot */

/** @param {RecordPlot} plot @returns {HTMLElement} */
export function recordPlots(plot) {
  const levels = [plot.left, plot.right, plot.golden, plot.lower, plot.upper]
  const limit = plot.matchLimit
  return el("figure", { class: "plots" },
    panel(plot, 320, range(levels, plot, 10), 10, [
      { curve: plot.lower, name: "edge", label: null }, { curve: plot.upper, name: "edge", label: t("paper.plot.window") },
      { curve: plot.golden, name: "golden", label: t("paper.plot.golden") },
      { curve: plot.left, name: "left", label: t("paper.plot.left") }, { curve: plot.right, name: "right", label: t("paper.plot.right") },
    ], t("paper.plot.level-axis"), true),
    panel(plot, 170, range([plot.difference, limit, limit.map(negative)], plot, 2), 2, [
      { curve: limit.map(negative), name: "edge", label: null }, { curve: limit, name: "edge", label: t("paper.plot.match-limit") },
      { curve: plot.difference, name: "difference", label: t("paper.plot.difference") },
    ], t("paper.plot.difference-axis"), false))
}

/** @param {number | null} db */
function negative(db) {
  return db === null ? null : -db
}

/** From one whole step to another, over what lies in a region. @param {(number | null)[][]} curves @param {RecordPlot} plot @param {number} step @returns {[number, number]} */
function range(curves, plot, step) {
  const inside = plot.frequencyHz.map((hz) => plot.regions.some((region) => hz >= region.fromHz * 0.985 && hz <= region.toHz * 1.015))
  const values = curves.flatMap((curve) => curve.filter((db, i) => db !== null && inside[i])).map(Number)
  return [step * Math.floor(Math.min(...values) / step), step * Math.ceil(Math.max(...values) / step)]
}

/**
 * @param {RecordPlot} plot @param {number} height @param {[number, number]} span dB @param {number} step dB
 * @param {{ curve: (number | null)[], name: string, label: string | null }[]} lines @param {string} axis @param {boolean} named regions along the top
 */
function panel(plot, height, span, step, lines, axis, named) {
  const top = 18, bottom = height - 18
  const x = (/** @type {number} */ hz) => LEFT + Math.log10(hz / 20) / 3 * (WIDTH - LEFT - RIGHT)
  const y = (/** @type {number} */ db) => bottom - (db - span[0]) / (span[1] - span[0]) * (bottom - top)
  const steps = Array.from({ length: Math.round((span[1] - span[0]) / step) + 1 }, (_, i) => span[0] + i * step)
  const ends = labels(lines, y, top, bottom)
  return svg("svg", { viewBox: `0 0 ${WIDTH} ${height}`, role: "img", "aria-label": lines.map((line) => line.label).filter(Boolean).join(", ") },
    outside(plot, x, top, bottom),
    NUMBERED.map((hz) => svg("line", { class: "grid", x1: x(hz), x2: x(hz), y1: top, y2: bottom })),
    steps.map((db) => svg("line", { class: db === 0 ? "zero" : "grid", x1: x(20), x2: x(20000), y1: y(db), y2: y(db) })),
    steps.map((db) => svg("text", { class: "number", x: LEFT - 6, y: y(db) + 4, "text-anchor": "end" }, String(db).replace("-", "\u2212"))),
    NUMBERED.map((hz) => svg("text", { class: "number", x: x(hz), y: height - 4, "text-anchor": "middle" }, hz < 1000 ? hz : `${hz / 1000}k`)),
    svg("text", { class: "number", x: 2, y: 11 }, axis),
    named ? plot.regions.map((region) => svg("text", { class: "number", x: (x(Math.max(20, region.fromHz)) + x(Math.min(20000, region.toHz))) / 2, y: 11, "text-anchor": "middle" }, region.name)) : [],
    lines.map((line) => svg("path", { class: `line ${line.name}`, d: path(plot.frequencyHz, line.curve, x, y, span) })),
    ends.map((end) => svg("g", {}, svg("line", { class: `line ${end.name}`, x1: WIDTH - RIGHT + 4, x2: WIDTH - RIGHT + 22, y1: end.y, y2: end.y }),
      svg("text", { class: "label", x: WIDTH - RIGHT + 26, y: end.y + 4 }, end.label))))
}

/** Outside the ear simulator's range the ground is darker. @param {RecordPlot} plot @param {(hz: number) => number} x @param {number} top @param {number} bottom */
function outside(plot, x, top, bottom) {
  const spans = [[20, Math.max(20, plot.specifiedFromHz)], [Math.min(20000, plot.specifiedToHz), 20000]]
  return spans.filter(([from, to]) => to > from).map(([from, to]) => svg("rect", { class: "outside", x: x(from), y: top, width: x(to) - x(from), height: bottom - top }))
}

/** @param {number[]} hz @param {(number | null)[]} curve @param {(hz: number) => number} x @param {(db: number) => number} y @param {[number, number]} span */
function path(hz, curve, x, y, span) {
  let drawing = false
  return curve.map((db, i) => {
    if (db === null) {
      drawing = false
      return ""
    }
    const held = Math.min(span[1], Math.max(span[0], db))   // a line that leaves the plot runs along its edge
    const step = `${drawing ? "L" : "M"}${x(hz[i]).toFixed(1)} ${y(held).toFixed(1)}`
    drawing = true
    return step
  }).join("")
}

/**
 * Labels at the lines' ends, none over another.
 * @param {{ curve: (number | null)[], name: string, label: string | null }[]} lines @param {(db: number) => number} y @param {number} top @param {number} bottom
 */
function labels(lines, y, top, bottom) {
  const ends = lines.filter((line) => line.label !== null).map((line) => {
    const last = [...line.curve].reverse().find((db) => db !== null) ?? 0
    return { name: line.name, label: line.label ?? "", y: Math.min(bottom - 4, Math.max(top + 4, y(last))) }
  }).sort((a, b) => a.y - b.y)
  for (let i = 1; i < ends.length; i++) ends[i].y = Math.max(ends[i].y, ends[i - 1].y + 15)
  for (let i = ends.length - 1, lowest = bottom - 2; i >= 0; i--, lowest = ends[i + 1].y - 15) ends[i].y = Math.min(ends[i].y, lowest)
  return ends
}

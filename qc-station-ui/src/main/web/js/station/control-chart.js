// A control chart of single values, one after the other: centre, limits, and each point outside them marked by shape and word.
import { el, svg } from "../dom.js"
import { localTime } from "../format.js"
import { t } from "../texts.js"

/** @typedef {{ value: number, when: string, out: boolean, title?: string }} Point */
/** @typedef {{ label: string, at: number, kind: "centre" | "limit" | "allowed" }} Level */

const WIDTH = 560, HEIGHT = 208, LEFT = 48, RIGHT = 118, TOP = 14, BOTTOM = 26

/** @param {string} caption @param {Point[]} points oldest first @param {Level[]} levels @param {(value: number) => string} [say] deviations with their sign if absent @returns {HTMLElement} */
export function controlChart(caption, points, levels, say = signedDb2) {
  const values = [...points.map((point) => point.value), ...levels.map((level) => level.at)]
  const low = Math.min(...values), high = Math.max(...values), room = Math.max(0.05, (high - low) * 0.12)
  const y = (/** @type {number} */ value) => TOP + ((high + room - value) / (high - low + 2 * room)) * (HEIGHT - TOP - BOTTOM)
  const x = (/** @type {number} */ i) => points.length < 2 ? (LEFT + WIDTH - RIGHT) / 2 : LEFT + 8 + (i / (points.length - 1)) * (WIDTH - LEFT - RIGHT - 16)
  const rows = spread(levels.map((level) => ({ ...level, y: y(level.at) })))
  const ends = points.length > 1 ? [[0, "start"], [points.length - 1, "end"]] : [[0, "middle"]]
  return el("figure", { class: "control" }, el("figcaption", {}, caption),
    /** @type {any} */ (svg("svg", { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "img", "aria-label": t("screen.control.label", { n: points.length, out: points.filter((point) => point.out).length }) },
      svg("rect", { class: "control-ground", x: LEFT, y: TOP, width: WIDTH - LEFT - RIGHT, height: HEIGHT - TOP - BOTTOM }),
      levels.map((level) => svg("path", { class: `control-${level.kind}`, d: `M${LEFT} ${y(level.at)}H${WIDTH - RIGHT}` })),
      rows.map((level) => svg("text", { class: "control-words", x: WIDTH - RIGHT + 6, y: level.row + 4 }, `${level.label} ${say(level.at)}`)),
      points.length > 1 ? svg("path", { class: "control-line", d: points.map((point, i) => `${i ? "L" : "M"}${x(i)} ${y(point.value)}`).join("") }) : null,
      points.map((point, i) => mark(point, x(i), y(point.value), say)),
      [high, low].map((value) => svg("text", { class: "control-words", x: LEFT - 6, y: y(value) + 4, "text-anchor": "end" }, say(value))),
      ends.filter(([i]) => points[Number(i)]).map(([i, anchor]) => svg("text", { class: "control-words", x: x(Number(i)), y: HEIGHT - 6, "text-anchor": anchor }, localTime(points[Number(i)].when))))))
}

/** A disc inside the limits, a square with its number outside. @param {Point} point @param {number} x @param {number} y @param {(value: number) => string} say */
function mark(point, x, y, say) {
  const title = svg("title", {}, point.title ?? `${localTime(point.when)}: ${say(point.value)}`)
  return point.out ? svg("g", { class: "control-out" }, title, svg("rect", { x: x - 6, y: y - 6, width: 12, height: 12 }), svg("text", { x, y: y - 11, "text-anchor": "middle" }, say(point.value)))
    : svg("circle", { class: "control-point", cx: x, cy: y, r: 4 }, title)
}

/** A level and not a deviation: without a plus. @param {number} value */
export function plainLevel(value) {
  return (value < 0 ? "\u2212" : "") + Math.abs(value).toFixed(2)
}

/** Drift is smaller than a decibel: two decimals. @param {number} value */
function signedDb2(value) {
  const text = Math.abs(value).toFixed(2)
  return Number(text) === 0 ? text : (value < 0 ? "\u2212" : "+") + text
}

/** Rows of words that do not run into one another. @template {{ y: number }} T @param {T[]} levels @returns {(T & { row: number })[]} */
function spread(levels) {
  let last = -Infinity
  return [...levels].sort((a, b) => a.y - b.y).map((level) => {
    last = Math.max(level.y, last + 15)
    return { ...level, row: last }
  })
}

// One plot over the frequency grid: axes, lines and cursor by the plotting library, everything else painted around them.
import { uPlot } from "../vendor.js"
import { readColours } from "./colours.js"
import { inside, paintBand, paintEndLabels, paintGround, paintHatch, paintLines, paintMark, paintRegions } from "./paint.js"
import { HIGHEST_HZ, LINED_HZ, LOWEST_HZ, levelLines, tickLabel } from "./scales.js"

/**
 * @typedef {import("./scales.js").Values} Values
 * @typedef {import("./colours.js").ColourName} ColourName
 * @typedef {{ name: string, values: Values, colour: ColourName, width: number, dash?: number[], label?: boolean }} Line
 * @typedef {{ lower: Values, upper: Values, colour: ColourName, alpha?: number, edge?: ColourName }} Band
 * @typedef {object} ChartSpec
 * @property {number[]} hz the grid
 * @property {Line[]} lines
 * @property {Band[]} bands
 * @property {{ name: string, fromHz: number, toHz: number, failed: boolean }[]} regions
 * @property {{ fromHz: number, toHz: number } | null} specified outside it the ground is hatched
 * @property {{ hz: number, db: number, text: string }[]} marks
 * @property {number} low @property {number} high dB at the lower and upper edge
 * @property {number} width @property {number} height CSS pixels of the whole plot
 * @property {string} caption of the level axis
 * @property {(db: number) => string} [levelLabel] of a level line; decibels if absent
 * @property {() => { text: string, values: Values, colour: string }[]} [labels] further labels at line ends
 * @property {(surface: import("./paint.js").Surface) => void} [under] painted below the lines
 * @property {(surface: import("./paint.js").Surface) => void} [over] painted above the lines
 */

export const EDGES = { left: 58, right: 84, top: 24, bottom: 28 }
const FONT = 'system-ui, "Liberation Sans", sans-serif'

/** The plotted ground inside a plot of given outer size. @param {number} width @param {number} height */
export function groundOf(width, height) {
  return { width: width - EDGES.left - EDGES.right, height: height - EDGES.top - EDGES.bottom }
}

/**
 * @param {HTMLElement} host
 * @param {ChartSpec} spec
 * @param {(index: number) => void} onIndex grid point under the mouse
 */
export function buildChart(host, spec, onIndex) {
  const colours = readColours()
  const ground = groundOf(spec.width, spec.height)
  const levels = levelLines(spec.low, spec.high, ground.height / (spec.high - spec.low))
  let standing = -1
  let ready = false   // places are known only after the first commit

  /** @param {any} u @returns {import("./paint.js").Surface} */
  const surface = (u) => ({
    ctx: u.ctx,
    x: (hz) => u.valToPos(hz, "x", true),
    y: (db) => u.valToPos(db, "y", true),
    box: { left: u.bbox.left, top: u.bbox.top, right: u.bbox.left + u.bbox.width, bottom: u.bbox.top + u.bbox.height },
    ratio: devicePixelRatio, hz: spec.hz, colours, font: FONT,
  })

  const plot = new uPlot({
    width: spec.width,
    height: spec.height,
    padding: [EDGES.top, EDGES.right, 0, 0],
    legend: { show: false },
    scales: {
      x: { time: false, distr: 3, range: () => [LOWEST_HZ, HIGHEST_HZ] },
      y: { range: () => [spec.low, spec.high] },
    },
    axes: [
      {
        size: EDGES.bottom, gap: 4, stroke: colours.quiet, font: `12px ${FONT}`, grid: { show: false }, ticks: { show: false },
        splits: () => LINED_HZ, filter: (/** @type {any} */ _, /** @type {number[]} */ splits) => splits,
        values: (/** @type {any} */ _, /** @type {number[]} */ splits) => splits.map(tickLabel),
      },
      {
        size: EDGES.left - 18, gap: 6, stroke: colours.quiet, font: `12px ${FONT}`, grid: { show: false }, ticks: { show: false },
        label: spec.caption, labelSize: 18, labelFont: `12px ${FONT}`, labelGap: 0,
        splits: () => levels,
        values: (/** @type {any} */ _, /** @type {number[]} */ splits) => splits.map(spec.levelLabel ?? ((db) => String(db).replace("-", "\u2212"))),
      },
    ],
    series: [{}, ...spec.lines.map((line) => ({
      stroke: colours[line.colour], width: line.width, dash: line.dash, points: { show: false }, spanGaps: false,
    }))],
    cursor: {
      drag: { x: false, y: false, click: () => {} },   // snapping looks like dragging to the library, which would swallow clicks
      points: { size: 9 }, y: false,
      move: (/** @type {any} */ u, /** @type {number} */ left, /** @type {number} */ top) =>
        left < 0 ? [left, top] : [u.valToPos(u.data[0][u.posToIdx(left)], "x"), top],
    },
    hooks: {
      drawClear: [(/** @type {any} */ u) => {
        const s = surface(u)
        u.ctx.save()   // the library remembers its own colours, and does not set them again
        u.ctx.setLineDash([])   // a redraw comes with the last line's dash
        paintGround(s)
        if (spec.specified) {
          paintHatch(s, LOWEST_HZ, spec.specified.fromHz)
          paintHatch(s, spec.specified.toHz, HIGHEST_HZ)
        }
        paintLines(s, levels)
        paintRegions(s, spec.regions)
        for (const band of spec.bands) {
          paintBand(s, band.lower, band.upper,
            { fill: colours[band.colour], alpha: band.alpha, edge: band.edge && colours[band.edge] })
        }
        inside(s, () => spec.under?.(s))
        u.ctx.restore()
      }],
      draw: [(/** @type {any} */ u) => {
        const s = surface(u)
        u.ctx.save()
        u.ctx.setLineDash([])
        inside(s, () => spec.over?.(s))
        paintEndLabels(s, [...spec.lines.filter((line) => line.label)
          .map((line) => ({ text: line.name, values: line.values, colour: colours[line.colour] })), ...(spec.labels?.() ?? [])])
        spec.marks.forEach((mark) => paintMark(s, mark))
        u.ctx.restore()
      }],
      ready: [() => {
        ready = true
        if (standing >= 0) stand(standing)
      }],
    },
  }, [spec.hz, ...spec.lines.map((line) => line.values)], host)

  /** @param {number} index grid point to stand on */
  function stand(index) {
    standing = index
    if (ready) plot.setCursor({ left: plot.valToPos(Math.max(LOWEST_HZ, spec.hz[index]), "x"), top: 0 })
  }
  plot.over.addEventListener("mousemove", (event) => onIndex(plot.posToIdx(event.clientX - plot.over.getBoundingClientRect().left)))
  plot.over.addEventListener("mouseleave", () => standing >= 0 && stand(standing))

  return {
    stand,
    /** @param {number} clientX @param {number} clientY @returns {{ index: number, db: number } | null} what lies under a place of the page */
    at(clientX, clientY) {
      const box = plot.over.getBoundingClientRect()
      const left = clientX - box.left, top = clientY - box.top
      if (left < 0 || top < 0 || left > box.width || top > box.height) return null
      return { index: plot.posToIdx(left), db: plot.posToVal(top, "y") }
    },
    repaint: () => plot.redraw(false),
    destroy: () => plot.destroy(),
  }
}


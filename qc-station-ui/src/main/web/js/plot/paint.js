// Strokes of a plot that the plotting library does not have: ground, hatching, bands, regions, labels at line ends, marks.
import { LABELLED_HZ, LINED_HZ, runs, thin } from "./scales.js"

/**
 * @typedef {import("./scales.js").Values} Values
 * @typedef {object} Surface  a canvas with its scales; all lengths in canvas pixels
 * @property {CanvasRenderingContext2D} ctx
 * @property {(hz: number) => number} x
 * @property {(db: number) => number} y
 * @property {{ left: number, top: number, right: number, bottom: number }} box
 * @property {number} ratio canvas pixels a CSS pixel
 * @property {number[]} hz the grid
 * @property {import("./colours.js").Colours} colours
 * @property {string} font family
 */

/** Runs strokes inside the plotted ground only. @param {Surface} s @param {() => void} strokes */
export function inside(s, strokes) {
  const { ctx, box } = s
  ctx.save()
  ctx.beginPath()
  ctx.rect(box.left, box.top, box.right - box.left, box.bottom - box.top)
  ctx.clip()
  strokes()
  ctx.restore()
}

/** @param {Surface} s */
export function paintGround(s) {
  s.ctx.fillStyle = s.colours.plot
  s.ctx.fillRect(s.box.left, s.box.top, s.box.right - s.box.left, s.box.bottom - s.box.top)
}

/** Diagonal lines over a span of frequency. @param {Surface} s @param {number} fromHz @param {number} toHz */
export function paintHatch(s, fromHz, toHz) {
  const { ctx, box, ratio } = s
  const left = Math.max(box.left, s.x(fromHz)), right = Math.min(box.right, s.x(toHz))
  if (right - left < 1) return
  ctx.save()
  ctx.beginPath()
  ctx.rect(left, box.top, right - left, box.bottom - box.top)
  ctx.clip()
  ctx.strokeStyle = s.colours.hatch
  ctx.lineWidth = ratio
  ctx.beginPath()
  const step = 8 * ratio, height = box.bottom - box.top
  for (let x = left - height - ((left - height) % step); x < right; x += step) {
    ctx.moveTo(x, box.bottom)
    ctx.lineTo(x + height, box.top)
  }
  ctx.stroke()
  ctx.restore()
}

/** @param {Surface} s @param {number[]} levels */
export function paintLines(s, levels) {
  const { ctx, box, ratio, colours } = s
  ctx.save()
  ctx.lineWidth = ratio
  for (const hz of LINED_HZ) {
    ctx.strokeStyle = LABELLED_HZ.includes(hz) ? colours.line : colours.fine
    strokeLine(ctx, crisp(s.x(hz)), box.top, crisp(s.x(hz)), box.bottom)
  }
  for (const db of levels) {
    ctx.strokeStyle = db === 0 ? colours.quiet : colours.line
    strokeLine(ctx, box.left, crisp(s.y(db)), box.right, crisp(s.y(db)))
  }
  ctx.restore()
}

/**
 * @param {Surface} s @param {Values} lower @param {Values} upper
 * @param {{ fill: string, alpha?: number, edge?: string }} style
 */
export function paintBand(s, lower, upper, style) {
  const { ctx, ratio } = s
  inside(s, () => {
    for (const [from, to] of runs(lower, upper)) {
      const top = pathOf(s, upper, from, to), bottom = pathOf(s, lower, from, to)
      ctx.beginPath()
      top.forEach(([x, y], i) => (i === 0 ? ctx.moveTo(x, y) : ctx.lineTo(x, y)))
      bottom.reverse().forEach(([x, y]) => ctx.lineTo(x, y))
      ctx.closePath()
      ctx.globalAlpha = style.alpha ?? 1
      ctx.fillStyle = style.fill
      ctx.fill()
      ctx.globalAlpha = 1
      if (!style.edge) continue
      ctx.strokeStyle = style.edge
      ctx.lineWidth = ratio
      for (const edge of [top, bottom]) strokePath(ctx, edge)
    }
  })
}

/** @param {Surface} s @param {Values} values @param {{ colour: string, width: number, alpha?: number, dash?: number[] }} style */
export function paintCurve(s, values, style) {
  const { ctx, ratio } = s
  ctx.globalAlpha = style.alpha ?? 1
  ctx.strokeStyle = style.colour
  ctx.lineWidth = style.width * ratio
  ctx.setLineDash((style.dash ?? []).map((length) => length * ratio))
  for (const [from, to] of runs(values)) strokePath(ctx, pathOf(s, values, from, to))
  ctx.setLineDash([])
  ctx.globalAlpha = 1
}

/** Names along the top edge, the failing ones tinted. @param {Surface} s @param {{ name: string, fromHz: number, toHz: number, failed: boolean }[]} regions */
export function paintRegions(s, regions) {
  const { ctx, box, ratio, colours } = s
  ctx.save()
  ctx.textAlign = "center"
  ctx.textBaseline = "middle"
  for (const region of regions) {
    const left = Math.max(box.left, s.x(region.fromHz)), right = Math.min(box.right, s.x(region.toHz))
    if (region.failed) {
      ctx.fillStyle = colours["fail-tint"]
      ctx.fillRect(left, box.top, right - left, box.bottom - box.top)
    }
    const y = box.top - 11 * ratio
    ctx.strokeStyle = region.failed ? colours.fail : colours.quiet
    ctx.lineWidth = (region.failed ? 3 : 1) * ratio
    strokeLine(ctx, left + 2 * ratio, box.top - 2 * ratio, right - 2 * ratio, box.top - 2 * ratio)
    ctx.font = font(s, 12, region.failed ? 700 : 400)
    ctx.fillStyle = region.failed ? colours.fail : colours.quiet
    if (ctx.measureText(region.name).width < right - left) ctx.fillText(region.name, (left + right) / 2, y)
  }
  ctx.restore()
}

/** A label at each line's right end, moved apart where they would overlap. @param {Surface} s @param {{ text: string, values: Values, colour: string }[]} labels */
export function paintEndLabels(s, labels) {
  const { ctx, box, ratio } = s
  const rows = labels.map((label) => ({ ...label, y: endOf(s, label.values) })).filter((row) => row.y !== null)
    .map((row) => ({ ...row, y: Math.min(box.bottom - 7 * ratio, Math.max(box.top + 7 * ratio, /** @type {number} */ (row.y))) }))
    .sort((a, b) => a.y - b.y)
  spread(rows, 15 * ratio, box.bottom - 7 * ratio)
  ctx.save()
  ctx.textAlign = "left"
  ctx.textBaseline = "middle"
  ctx.font = font(s, 13, 600)
  for (const row of rows) {
    ctx.fillStyle = row.colour
    ctx.fillText(row.text, box.right + 6 * ratio, row.y, ctx.canvas.width - box.right - 6 * ratio)
  }
  ctx.restore()
}

/** A ring at a point, with its numbers beside it. @param {Surface} s @param {{ hz: number, db: number, text: string }} mark */
export function paintMark(s, mark) {
  const { ctx, box, ratio, colours } = s
  const x = s.x(mark.hz), y = Math.min(box.bottom - 6 * ratio, Math.max(box.top + 6 * ratio, s.y(mark.db)))
  ctx.save()
  for (const [colour, width] of /** @type {[string, number][]} */ ([[colours.plot, 6], [colours.fail, 2.5]])) {
    ctx.beginPath()
    ctx.arc(x, y, 7 * ratio, 0, 2 * Math.PI)
    ctx.strokeStyle = colour
    ctx.lineWidth = width * ratio
    ctx.stroke()
  }
  if (mark.text) paintTag(s, x, y, mark.text)
  ctx.restore()
}

/** @param {Surface} s @param {number} x @param {number} y @param {string} text */
function paintTag(s, x, y, text) {
  const { ctx, box, ratio, colours } = s
  ctx.font = font(s, 13, 700)
  ctx.textAlign = "left"
  const width = ctx.measureText(text).width + 12 * ratio, height = 22 * ratio
  const rightwards = x + 14 * ratio + width < box.right
  const left = rightwards ? x + 14 * ratio : x - 14 * ratio - width
  const top = Math.min(box.bottom - height - 2 * ratio, Math.max(box.top + 2 * ratio, y - height / 2))
  ctx.fillStyle = colours.plot
  ctx.strokeStyle = colours.fail
  ctx.lineWidth = 1.5 * ratio
  ctx.beginPath()
  ctx.roundRect(left, top, width, height, 4 * ratio)
  ctx.fill()
  ctx.stroke()
  ctx.fillStyle = colours.fail
  ctx.textBaseline = "middle"
  ctx.fillText(text, left + 6 * ratio, top + height / 2)
}

/** @param {Surface} s @param {number} px @param {number} weight */
export function font(s, px, weight) {
  return `${weight} ${px * s.ratio}px ${s.font}`
}

/** @param {Surface} s @param {Values} values @returns {number | null} */
function endOf(s, values) {
  for (let i = values.length - 1; i >= 0; i--) {
    const value = values[i]
    if (value !== null && Number.isFinite(value)) return s.y(value)
  }
  return null
}

/** @param {{ y: number }[]} rows rising @param {number} gap @param {number} bottom */
function spread(rows, gap, bottom) {
  for (let i = 1; i < rows.length; i++) rows[i].y = Math.max(rows[i].y, rows[i - 1].y + gap)
  const over = rows.length ? rows[rows.length - 1].y - bottom : 0
  if (over <= 0) return
  rows[rows.length - 1].y = bottom
  for (let i = rows.length - 2; i >= 0; i--) rows[i].y = Math.min(rows[i].y, rows[i + 1].y - gap)
}

/** @param {Surface} s @param {Values} values @param {number} from @param {number} to @returns {[number, number][]} */
function pathOf(s, values, from, to) {
  const part = values.slice(from, to + 1)
  const pixels = Math.max(2, Math.ceil(Math.abs(s.x(s.hz[to]) - s.x(s.hz[from]))))
  return thin(part, pixels).map((i) => [s.x(s.hz[from + i]), s.y(/** @type {number} */ (part[i]))])
}

/** @param {CanvasRenderingContext2D} ctx @param {[number, number][]} path */
function strokePath(ctx, path) {
  ctx.beginPath()
  path.forEach(([x, y], i) => (i === 0 ? ctx.moveTo(x, y) : ctx.lineTo(x, y)))
  ctx.stroke()
}

/** @param {CanvasRenderingContext2D} ctx @param {number} x0 @param {number} y0 @param {number} x1 @param {number} y1 */
function strokeLine(ctx, x0, y0, x1, y1) {
  ctx.beginPath()
  ctx.moveTo(x0, y0)
  ctx.lineTo(x1, y1)
  ctx.stroke()
}

/** @param {number} at */
function crisp(at) {
  return Math.round(at) + 0.5
}

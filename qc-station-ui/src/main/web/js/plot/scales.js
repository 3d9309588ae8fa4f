// Axes and bands as numbers. Pure: nothing here knows a page or a canvas.

/** @typedef {(number | null)[]} Values  one a grid point; null is a gap */
/** @typedef {{ dbPerDecade: number, pxPerDb: number, low: number, high: number }} LevelScale */

export const LOWEST_HZ = 19.95
export const HIGHEST_HZ = 20000
const DECADES = Math.log10(HIGHEST_HZ / LOWEST_HZ)
/** Decade to decibel proportions of IEC 60263, the wider first. */
const PROPORTIONS = [25, 50]
/** Rows of text closer than this run into one another. */
const LABEL_ROW_PX = 19

export const LABELLED_HZ = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000]

/** Every frequency that has a line: 20, 30 … 90, 100, 200 … 20 000 Hz. */
export const LINED_HZ = [10, 100, 1000, 10000]
  .flatMap((decade) => [1, 2, 3, 4, 5, 6, 7, 8, 9].map((step) => decade * step))
  .filter((hz) => hz >= 20 && hz <= 20000)

/** @param {number} hz @returns {string} 20, 500, 1k, 20k; empty for a frequency that has a line only */
export function tickLabel(hz) {
  if (!LABELLED_HZ.includes(hz)) return ""
  return hz < 1000 ? String(hz) : `${hz / 1000}k`
}

/** @param {number} widthPx of the plotted ground @returns {number} length of one decade in pixels */
export function decadePx(widthPx) {
  return widthPx / DECADES
}

/**
 * Picks the proportion for a ground of given size: one decade as long as 25 dB if what must be seen fits, else 50 dB.
 * The span follows from the height, so that the ground keeps its size whatever is shown.
 * @param {number} widthPx @param {number} heightPx @param {number} lowest @param {number} highest dB that must be seen
 * @returns {LevelScale}
 */
export function fitLevel(widthPx, heightPx, lowest, highest) {
  const decade = decadePx(widthPx)
  const needed = highest - lowest + 4
  const dbPerDecade = PROPORTIONS.find((proportion) => heightPx / (decade / proportion) >= needed) ?? PROPORTIONS[1]
  const pxPerDb = decade / dbPerDecade
  const span = heightPx / pxPerDb
  const low = Math.floor((lowest + highest) / 2 - span / 2)
  return { dbPerDecade, pxPerDb, low, high: low + span }
}

/**
 * The other way round: the height that a span of decibels takes, one decade as long as 25 dB unless said otherwise.
 * @param {number} widthPx @param {number} spanDb @param {number} [dbPerDecade] @returns {number} pixels
 */
export function heightFor(widthPx, spanDb, dbPerDecade = PROPORTIONS[0]) {
  return Math.round((decadePx(widthPx) / dbPerDecade) * spanDb)
}

/**
 * Level lines: the closest of 1, 2, 5, 10, 20 dB whose labels do not run into one another.
 * @param {number} low @param {number} high @param {number} pxPerDb @returns {number[]} rising multiples of the step inside low … high
 */
export function levelLines(low, high, pxPerDb) {
  const step = [1, 2, 5, 10, 20].find((db) => db * pxPerDb >= LABEL_ROW_PX) ?? 20
  const lines = []
  for (let db = Math.ceil(low / step) * step; db <= high + 1e-9; db += step) lines.push(db === 0 ? 0 : db)
  return lines
}

/** A level re the fundamental as percent, for whole powers of ten. @param {number} db @returns {string} empty for the lines between */
export function thdLevels(db) {
  return db % 20 === 0 ? `${Number((100 * 10 ** (db / 20)).toPrecision(1))}` : ""
}

/** @param {...(Values | null | undefined)} arrays @returns {[number, number] | null} lowest and highest number; null if there is none */
export function extent(...arrays) {
  let low = Infinity, high = -Infinity
  for (const values of arrays) {
    for (const value of values ?? []) {
      if (value === null || !Number.isFinite(value)) continue
      if (value < low) low = value
      if (value > high) high = value
    }
  }
  return low <= high ? [low, high] : null
}

/**
 * A symmetric half span that holds limits and data, in whole decibels, at least `least` and at most `most`.
 * @param {number} least @param {number} most @param {...(Values | null | undefined)} arrays
 */
export function halfSpan(least, most, ...arrays) {
  const found = extent(...arrays)
  const reach = found ? Math.max(Math.abs(found[0]), Math.abs(found[1])) : 0
  return Math.min(most, Math.max(least, Math.ceil(reach + 1)))
}

/** @param {number[]} frequencies rising @param {number} hz above 0 @returns {number} index nearest in log frequency */
export function nearestIndex(frequencies, hz) {
  let low = 0, high = frequencies.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (frequencies[middle] <= hz) low = middle
    else high = middle
  }
  return hz * hz < frequencies[low] * frequencies[high] ? low : high
}

/**
 * Runs in which every array has a number: a band is filled run by run, never across a gap.
 * @param {...Values} arrays equal lengths @returns {[number, number][]} first and last index of each run
 */
export function runs(...arrays) {
  /** @type {[number, number][]} */
  const found = []
  let start = -1
  const length = Math.min(...arrays.map((values) => values.length))
  for (let i = 0; i <= length; i++) {
    const present = i < length && arrays.every((values) => Number.isFinite(values[i]))
    if (present && start < 0) start = i
    if (!present && start >= 0) {
      found.push([start, i - 1])
      start = -1
    }
  }
  return found
}

/**
 * The points that are drawn: never more than pixels. Of each group the one farthest from the group's neighbours stays, so a peak is kept.
 * @param {Values} values @param {number} pixels @returns {number[]} indices, rising
 */
export function thin(values, pixels) {
  const count = values.length
  if (count <= pixels) return values.map((_, i) => i)
  const group = Math.ceil(count / pixels)
  const kept = []
  for (let start = 0; start < count; start += group) {
    const end = Math.min(start + group, count)
    const before = values[Math.max(0, start - 1)] ?? 0
    let best = start, farthest = -1
    for (let i = start; i < end; i++) {
      const distance = Math.abs((values[i] ?? before) - before)
      if (distance > farthest) {
        farthest = distance
        best = i
      }
    }
    kept.push(best)
  }
  return kept
}

/** @param {Values | null | undefined} values @param {number | null | undefined} offset @returns {Values} each value less the offset; gaps stay */
export function lessOffset(values, offset) {
  return (values ?? []).map((value) => (value === null || !Number.isFinite(value) ? null : value - (offset ?? 0)))
}

/** @param {Values | null | undefined} a @param {Values | null | undefined} b @returns {Values} a − b; a gap where either has one */
export function less(a, b) {
  return (a ?? []).map((value, i) => {
    const other = b?.[i]
    return value === null || other === null || other === undefined ? null : value - other
  })
}

/** @param {Values | null | undefined} values @returns {Values} */
export function negated(values) {
  return (values ?? []).map((value) => (value === null ? null : -value))
}

// A limit set as the tree that its YAML writes, and its edges: the numbers that a person drags or types. Pure.

/**
 * @typedef {[number, number] | [[number, number], [number, number]]} WindowDb one pair, or a pair at the region's start and one at its end
 * @typedef {{ name: string, hz: [number, number], "window-db": WindowDb, "match-db"?: number | [number, number], required?: boolean }} Region
 * @typedef {{ product: string, tuning: string, version: number, smoothing: string, golden: string,
 *     level: { "band-hz": [number, number], "tolerance-db": [number, number], "balance-db": number }, regions: Region[],
 *     decision: { rule: string, guard?: number, "conditional-pass"?: string } } & Record<string, any>} LimitSet
 * @typedef {"lower" | "upper" | "match" | "lowest" | "highest" | "balance"} EdgeKind
 * @typedef {{ region: string | null, kind: EdgeKind, end: 0 | 1 | null }} Edge  `end`: 0 the region's start, 1 its end, null for a limit that is the same all over
 */

/** Limits are written in tenths of a decibel, up to this. */
export const STEP_DB = 0.1
const LARGEST_DB = 40

/** @param {LimitSet} set @returns {LimitSet} a copy that may be changed */
export function copyOf(set) {
  return structuredClone(set)
}

/** The window at a region's start and end. @param {Region} region @returns {[[number, number], [number, number]]} */
export function windowEnds(region) {
  const window = region["window-db"]
  return Array.isArray(window[0]) ? /** @type {[[number, number], [number, number]]} */ (window) : [/** @type {any} */ (window), /** @type {any} */ (window)]
}

/** @param {Region} region @returns {[number, number] | null} match limit at start and end; null if the region has none */
export function matchEnds(region) {
  const match = region["match-db"]
  if (match === undefined || match === null) return null
  return Array.isArray(match) ? match : [match, match]
}

/** Every edge that the set has, level first, then region by region. @param {LimitSet} set @returns {Edge[]} */
export function edgesOf(set) {
  /** @type {Edge[]} */
  const edges = [{ region: null, kind: "lowest", end: null }, { region: null, kind: "highest", end: null }, { region: null, kind: "balance", end: null }]
  for (const region of set.regions) {
    const sloped = Array.isArray(region["window-db"][0])
    for (const kind of /** @type {EdgeKind[]} */ (["lower", "upper"])) {
      for (const end of sloped ? /** @type {(0 | 1)[]} */ ([0, 1]) : [null]) edges.push({ region: region.name, kind, end })
    }
    const match = region["match-db"]
    if (match === undefined || match === null) continue
    for (const end of Array.isArray(match) ? /** @type {(0 | 1)[]} */ ([0, 1]) : [null]) edges.push({ region: region.name, kind: "match", end })
  }
  return edges
}

/** @param {Edge} a @param {Edge | null} b */
export function sameEdge(a, b) {
  return b !== null && a.region === b.region && a.kind === b.kind && a.end === b.end
}

/** @param {LimitSet} set @param {Edge} edge @returns {number} its value in dB */
export function valueOf(set, edge) {
  if (edge.kind === "lowest") return set.level["tolerance-db"][0]
  if (edge.kind === "highest") return set.level["tolerance-db"][1]
  if (edge.kind === "balance") return set.level["balance-db"]
  const region = regionOf(set, edge)
  if (edge.kind === "match") return /** @type {[number, number]} */ (matchEnds(region))[edge.end ?? 0]
  return windowEnds(region)[edge.end ?? 0][edge.kind === "lower" ? 0 : 1]
}

/**
 * The set with one edge moved, to a tenth of a decibel; never past the edge on the other side, nor a match limit to 0.
 * @param {LimitSet} set @param {Edge} edge @param {number} db @returns {LimitSet} a new set
 */
export function moved(set, edge, db) {
  const next = copyOf(set)
  const value = within(set, edge, Math.round(db / STEP_DB) / Math.round(1 / STEP_DB))
  if (edge.kind === "lowest") next.level["tolerance-db"][0] = value
  else if (edge.kind === "highest") next.level["tolerance-db"][1] = value
  else if (edge.kind === "balance") next.level["balance-db"] = value
  else if (edge.kind === "match") setMatch(regionOf(next, edge), edge.end, value)
  else setWindow(regionOf(next, edge), edge, value)
  return next
}

/** @param {LimitSet} set @param {Edge} edge @param {number} db */
function within(set, edge, db) {
  const [low, high] = rangeOf(set, edge)
  return Number(Math.min(high, Math.max(low, db)).toFixed(1))
}

/** How far an edge may go. @param {LimitSet} set @param {Edge} edge @returns {[number, number]} */
export function rangeOf(set, edge) {
  if (edge.kind === "match" || edge.kind === "balance") return [STEP_DB, LARGEST_DB]
  if (edge.kind === "lowest") return [-LARGEST_DB, set.level["tolerance-db"][1] - STEP_DB]
  if (edge.kind === "highest") return [set.level["tolerance-db"][0] + STEP_DB, LARGEST_DB]
  const [lower, upper] = windowEnds(regionOf(set, edge))[edge.end ?? 0]
  return edge.kind === "lower" ? [-LARGEST_DB, upper - STEP_DB] : [lower + STEP_DB, LARGEST_DB]
}

/** @param {LimitSet} set @param {Edge} edge @returns {Region} */
function regionOf(set, edge) {
  const region = set.regions.find((one) => one.name === edge.region)
  if (!region) throw new RangeError(`no region ${edge.region}`)
  return region
}

/** @param {Region} region @param {0 | 1 | null} end @param {number} value */
function setMatch(region, end, value) {
  if (end === null) region["match-db"] = value
  else /** @type {[number, number]} */ (region["match-db"])[end] = value
}

/** @param {Region} region @param {Edge} edge @param {number} value */
function setWindow(region, edge, value) {
  const side = edge.kind === "lower" ? 0 : 1
  const window = /** @type {any} */ (region["window-db"])
  if (edge.end === null) window[side] = value
  else window[edge.end][side] = value
}

/**
 * A limit over a region at one frequency: linear in log frequency from start to end, held at both.
 * @param {[number, number]} ends @param {[number, number]} hz the region @param {number} f
 */
export function spanAt(ends, hz, f) {
  if (hz[0] === hz[1]) return ends[0]
  const share = Math.log(f / hz[0]) / Math.log(hz[1] / hz[0])
  return ends[0] + (ends[1] - ends[0]) * Math.max(0, Math.min(1, share))
}

/**
 * First and last grid point of a region, compared on the rounded frequencies by which the points are called.
 * @param {number[]} labels @param {[number, number]} hz @returns {[number, number]}
 */
export function pointsOf(labels, hz) {
  let first = labels.length, last = -1
  labels.forEach((label, i) => {
    if (label < hz[0] || label > hz[1]) return
    first = Math.min(first, i)
    last = i
  })
  return [first, last]
}

/**
 * Limits at every grid point, for drawing; where two regions share an edge point, the tighter one. Null where nothing is judged.
 * @param {LimitSet} set @param {number[]} frequencies @param {number[]} labels
 */
export function linesOf(set, frequencies, labels) {
  /** @type {(number | null)[]} */
  const none = frequencies.map(() => null)
  const lower = [...none], upper = [...none], match = [...none]
  for (const region of set.regions) {
    const [first, last] = pointsOf(labels, region.hz)
    const [start, end] = windowEnds(region), ends = matchEnds(region)
    for (let i = first; i <= last; i++) {
      const f = frequencies[i]
      lower[i] = Math.max(lower[i] ?? -Infinity, spanAt([start[0], end[0]], region.hz, f))
      upper[i] = Math.min(upper[i] ?? Infinity, spanAt([start[1], end[1]], region.hz, f))
      if (ends) match[i] = Math.min(match[i] ?? Infinity, spanAt(ends, region.hz, f))
    }
  }
  return { lower, upper, match }
}

/** What of a set curves and other checks depend on: while that stays, a screen can try limits by itself. @param {LimitSet} set */
export function groundOfSet(set) {
  return JSON.stringify([set.golden, set.smoothing, set.level["band-hz"], set.distortion ?? null, set.polarity ?? null, set["idle-noise-dba"] ?? null, set.drive, set["ear-simulator"]])
}

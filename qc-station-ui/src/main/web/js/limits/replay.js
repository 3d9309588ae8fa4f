// Recorded units under any limits, as the service's trial judges them: level, balance, windows and match over flat arrays, other
// checks as recorded. Pure; runs in a worker and in tests.
import { matchEnds, pointsOf, spanAt, windowEnds } from "./limit-set.js"

/**
 * @typedef {import("./limit-set.js").LimitSet} LimitSet
 * @typedef {{ inspection: string, serial: string, batch: string, station: string, verdict: string, row: number, group: number,
 *     left: number | null, right: number | null, otherwise: "fails" | "open" | "tuning" | null, alike: boolean }} Unit
 * @typedef {{ station: string, level: (number | null)[] | null, match: (number | null)[] | null, offset: number | null, balance: number | null }} Group
 * @typedef {{ product: string, tuning: string, points: number, rows: number, frequencyHz: number[], label: number[],
 *     limitSet: { version: number, limitSet: LimitSet }, units: Unit[], groups: Group[] }} Head
 * @typedef {{ head: Head, left: Float32Array, right: Float32Array, difference: Float32Array }} Recorded
 * @typedef {{ check: string, region: string | null, channel: string | null, units: number, sole: number }} Share
 * @typedef {{ passed: number, failed: number, undecided: number, conditional: number, toPass: number, toFail: number, near: number,
 *     checks: Share[], verdicts: Uint8Array }} Outcome  `near`: units so close to a limit that only the service can tell
 */

export const PASS = 0, FAIL = 1, INVALID = 2
/** As the service: closer than this to a limit, 32-bit floats do not tell. */
const TOO_NEAR_DB = 1e-4

/** @param {ArrayBuffer} buffer the service's answer @returns {Recorded} */
export function decode(buffer) {
  const length = new DataView(buffer).getUint32(0, true)
  const head = /** @type {Head} */ (JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 4, length))))
  const size = head.rows * head.points
  const floats = (/** @type {number} */ place) => new Float32Array(buffer, 4 + length + place * size * 4, size)
  return { head, left: floats(0), right: floats(1), difference: floats(2) }
}

/**
 * One check's smallest margins, plain and less the guard band; NaN where a point is absent, no entry counts where `judged` says no.
 * @typedef {{ check: string, region: string | null, channel: string | null, required: boolean, plain: Float64Array, tight: Float64Array, judged: (group: number) => boolean }} Margins
 */

export class Replay {
  #recorded
  /** @type {Map<string, Margins>} by check and limits: a drag moves one region, the others stay as they are */
  #kept = new Map()

  /** @param {Recorded} recorded */
  constructor(recorded) {
    this.#recorded = recorded
  }

  /** @param {LimitSet} set @returns {Outcome} */
  outcome(set) {
    const guard = guardOf(set), groups = this.#recorded.head.groups
    const undecidable = groups.map((group) => guard.guarded && !decidable(set, group, guard.factor, this.#recorded.head))
    const checks = this.#margins(set, guard)
    return this.#verdicts(checks, guard, undecidable)
  }

  /** @param {LimitSet} set @param {Guard} guard @returns {Margins[]} */
  #margins(set, guard) {
    const wanted = /** @type {[string, () => Margins][]} */ ([
      ["level left", () => this.#level(set, "left", guard)], ["level right", () => this.#level(set, "right", guard)], ["balance", () => this.#balance(set, guard)],
    ])
    const used = new Map()
    const found = wanted.map(([, make]) => make())
    for (const region of set.regions) {
      for (const channel of /** @type {("left" | "right")[]} */ (["left", "right"])) {
        const key = JSON.stringify(["window", channel, region, set.decision])
        used.set(key, this.#kept.get(key) ?? this.#window(region, channel, guard))
        found.push(used.get(key))
      }
      if (!matchEnds(region)) continue
      const key = JSON.stringify(["match", region, set.decision])
      used.set(key, this.#kept.get(key) ?? this.#match(region, guard))
      found.push(used.get(key))
    }
    // two sets are compared side by side: what the last few needed is kept
    for (const [key, margins] of used) {
      this.#kept.delete(key)
      this.#kept.set(key, margins)
    }
    while (this.#kept.size > 4 * used.size) this.#kept.delete(this.#kept.keys().next().value ?? "")
    return found
  }

  /** @param {LimitSet} set @param {"left" | "right"} channel @param {Guard} guard @returns {Margins} */
  #level(set, channel, guard) {
    const [lowest, highest] = set.level["tolerance-db"]
    return this.#single("level", channel, guard, (group) => group.offset, (unit) => {
      const a = unit[channel] ?? NaN
      return Math.min(highest - a, a - lowest)
    })
  }

  /** @param {LimitSet} set @param {Guard} guard @returns {Margins} */
  #balance(set, guard) {
    return this.#single("balance", null, guard, (group) => group.balance,
      (unit) => set.level["balance-db"] - Math.abs((unit.left ?? NaN) - (unit.right ?? NaN)))
  }

  /** @param {string} check @param {string | null} channel @param {Guard} guard @param {(group: Group) => number | null} u @param {(unit: Unit) => number} margin @returns {Margins} */
  #single(check, channel, guard, u, margin) {
    const { units, groups, rows } = this.#recorded.head
    const plain = new Float64Array(rows), tight = new Float64Array(rows)
    const w = groups.map((group) => guard.factor * (u(group) ?? 0))
    for (const unit of units) {
      if (unit.row < 0) continue
      plain[unit.row] = margin(unit)
      tight[unit.row] = plain[unit.row] - (guard.guarded ? w[unit.group] : 0)
    }
    return { check, region: null, channel, required: true, plain, tight, judged: () => true }
  }

  /** @param {import("./limit-set.js").Region} region @param {"left" | "right"} channel @param {Guard} guard @returns {Margins} */
  #window(region, channel, guard) {
    const { frequencyHz, label } = this.#recorded.head
    const [start, end] = windowEnds(region), [first, last] = pointsOf(label, region.hz)
    const lower = /** @type {number[]} */ ([]), upper = /** @type {number[]} */ ([])
    for (let i = first; i <= last; i++) {
      lower.push(spanAt([start[0], end[0]], region.hz, frequencyHz[i]))
      upper.push(spanAt([start[1], end[1]], region.hz, frequencyHz[i]))
    }
    const values = this.#recorded[channel]
    return this.#over("window", region, channel, first, guard, (at, k) => {
      const value = values[at]
      return Math.min(upper[k] - value, value - lower[k])
    }, lower.length)
  }

  /** @param {import("./limit-set.js").Region} region @param {Guard} guard @returns {Margins} */
  #match(region, guard) {
    const { frequencyHz, label } = this.#recorded.head
    const ends = /** @type {[number, number]} */ (matchEnds(region)), [first, last] = pointsOf(label, region.hz)
    const limit = /** @type {number[]} */ ([])
    for (let i = first; i <= last; i++) limit.push(spanAt(ends, region.hz, frequencyHz[i]))
    const values = this.#recorded.difference
    return this.#over("match", region, null, first, guard, (at, k) => limit[k] - Math.abs(values[at]), limit.length)
  }

  /**
   * @param {string} check @param {import("./limit-set.js").Region} region @param {string | null} channel @param {number} first @param {Guard} guard
   * @param {(at: number, k: number) => number} marginAt @param {number} count @returns {Margins}
   */
  #over(check, region, channel, first, guard, marginAt, count) {
    const { units, groups, rows, points } = this.#recorded.head
    const plain = new Float64Array(rows), tight = new Float64Array(rows)
    const hasMatch = matchEnds(region) !== null
    const bands = groups.map((group) => bandsOf(group, first, count, guard, check === "match"))
    const judged = groups.map((group) => !guard.guarded || known(group, first, count, hasMatch))
    for (const unit of units) {
      if (unit.row < 0) continue
      const base = unit.row * points + first, w = bands[unit.group]
      let least = Infinity, leastTight = Infinity
      for (let k = 0; k < count; k++) {
        const margin = marginAt(base + k, k)
        if (!(margin >= least)) least = Number.isNaN(margin) || Number.isNaN(least) ? NaN : margin
        if (w && !(margin - w[k] >= leastTight)) leastTight = margin - w[k]
      }
      plain[unit.row] = least
      tight[unit.row] = w ? leastTight : least
    }
    return { check, region: region.name, channel, required: region.required !== false, plain, tight, judged: (group) => judged[group] }
  }

  /** @param {Margins[]} checks @param {Guard} guard @param {boolean[]} undecidable @returns {Outcome} */
  #verdicts(checks, guard, undecidable) {
    const { units } = this.#recorded.head
    const verdicts = new Uint8Array(units.length)
    const shares = checks.map((c) => ({ check: c.check, region: c.region, channel: c.channel, units: 0, sole: 0 }))
    const outcome = { passed: 0, failed: 0, undecided: 0, conditional: 0, toPass: 0, toFail: 0, near: 0, checks: shares, verdicts }
    units.forEach((unit, u) => {
      verdicts[u] = unit.row < 0 ? (unit.verdict === "PASS" ? PASS : FAIL) : this.#verdict(unit, checks, guard, undecidable, shares, outcome)
      if (verdicts[u] === PASS) outcome.passed++
      else if (verdicts[u] === FAIL) outcome.failed++
      else outcome.undecided++
      if (verdicts[u] === PASS && unit.verdict !== "PASS") outcome.toPass++
      if (verdicts[u] === FAIL && unit.verdict === "PASS") outcome.toFail++
    })
    return outcome
  }

  /** @param {Unit} unit @param {Margins[]} checks @param {Guard} guard @param {boolean[]} undecidable @param {Share[]} shares @param {{ conditional: number, near: number }} counts */
  #verdict(unit, checks, guard, undecidable, shares, counts) {
    if (undecidable[unit.group]) return INVALID
    const row = unit.row
    const failing = []
    let conditional = false, near = false
    for (let c = 0; c < checks.length; c++) {
      const { plain, tight, required, judged } = checks[c]
      if (!judged(unit.group)) continue
      if (Number.isNaN(plain[row])) {
        if (required) return INVALID
        continue
      }
      near ||= Math.abs(plain[row]) < TOO_NEAR_DB || (guard.guarded && Math.abs(tight[row]) < TOO_NEAR_DB)
      if ((guard.refuses ? tight[row] : plain[row]) < 0) failing.push(c)
      else conditional ||= guard.guarded && tight[row] < 0
    }
    if (near || !unit.alike) counts.near++
    for (const c of failing) shares[c].units++
    if (failing.length === 1 && unit.otherwise !== "fails" && unit.otherwise !== "tuning") shares[failing[0]].sole++
    if (failing.length || unit.otherwise === "fails") return FAIL
    if (unit.otherwise === "open") return INVALID
    if (unit.otherwise === "tuning") return FAIL
    if (conditional) counts.conditional++
    return PASS
  }
}

/** @typedef {{ guarded: boolean, refuses: boolean, factor: number }} Guard `factor`: guard band as a multiple of the standard uncertainty */

/** @param {LimitSet} set @returns {Guard} */
function guardOf(set) {
  const guarded = set.decision?.rule === "guarded"
  return { guarded, refuses: guarded && set.decision["conditional-pass"] === "refuse", factor: guarded ? 2 * (set.decision.guard ?? 0) : 0 }
}

/** @param {Group} group @param {number} first @param {number} count @param {Guard} guard @param {boolean} match @returns {number[] | null} */
function bandsOf(group, first, count, guard, match) {
  const u = match ? group.match : group.level
  if (!guard.guarded || !u) return null
  return Array.from({ length: count }, (_, k) => guard.factor * (u[first + k] ?? NaN))
}

/** @param {Group} group @param {number} first @param {number} count @param {boolean} match */
function known(group, first, count, match) {
  const all = (/** @type {(number | null)[] | null} */ u) => u !== null && u.slice(first, first + count).every((value) => value !== null)
  return all(group.level) && (!match || all(group.match))
}

/** Whether guard bands are known where they must be and leave something to pass. @param {LimitSet} set @param {Group} group @param {number} factor @param {Head} head */
function decidable(set, group, factor, head) {
  if (!group.level || !group.match || group.offset === null || group.balance === null) return false
  const [lowest, highest] = set.level["tolerance-db"]
  if (factor * group.offset > (highest - lowest) / 2 || factor * group.balance > set.level["balance-db"]) return false
  return set.regions.every((region) => {
    const [first, last] = pointsOf(head.label, region.hz), [start, end] = windowEnds(region), match = matchEnds(region)
    if (!known(group, first, last - first + 1, match !== null)) return region.required === false
    for (let i = first; i <= last; i++) {
      const f = head.frequencyHz[i]
      const half = (spanAt([start[1], end[1]], region.hz, f) - spanAt([start[0], end[0]], region.hz, f)) / 2
      if (factor * /** @type {number} */ (group.level?.[i]) > half) return false
      if (match && factor * /** @type {number} */ (group.match?.[i]) > spanAt(match, region.hz, f)) return false
    }
    return true
  })
}

/** Wilson's score interval at 95 %. @param {number} hits @param {number} trials @returns {[number, number]} */
export function wilson(hits, trials) {
  if (!trials) return [0, 1]
  const z = 1.959963984540054, share = hits / trials, perTrial = (z * z) / trials
  const centre = share + perTrial / 2, half = z * Math.sqrt((share * (1 - share)) / trials + perTrial / (4 * trials))
  return [hits === 0 ? 0 : (centre - half) / (1 + perTrial), hits === trials ? 1 : (centre + half) / (1 + perTrial)]
}

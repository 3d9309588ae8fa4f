// The course of a shift at the bench, as one small machine: which step it stands at, and what each event makes of it. Pure.
import { findingOf, fitsPattern, patternExample, serialOf } from "./history.js"

/**
 * @typedef {"serial" | "looking" | "repeated" | "mount" | "sweeping" | "sending" | "verdict"} Step
 *   serial: waits for the scanner; looking: asks what is known of the serial; repeated: it was judged before, an occasion is to be chosen;
 *   mount: waits until the pair is mounted (or its files are chosen); sweeping: records; sending: kept here, on its way; verdict: answered,
 *   held or refused, and says what comes next
 * @typedef {"next-unit" | "reseat" | "seating" | "mend" | "tuning"} Then what comes after a verdict
 * @typedef {{ key: string, values?: Record<string, any> }} Notice
 * @typedef {object} State
 * @property {Step} step
 * @property {string} serial
 * @property {string[]} todo tunings still to be measured of this unit, the present one first
 * @property {string[]} done tunings measured in this go
 * @property {string} occasion
 * @property {number} seating
 * @property {number} tries used of this unit's present tuning
 * @property {number} allowed 0 where it is not known
 * @property {import("./history.js").Judged | null} judged before
 * @property {number} choice among the occasions, at `repeated`
 * @property {Notice | null} notice what to say beside the step
 * @property {string | null} outcome PASS, FAIL, RESEAT, INVALID, HELD, FLAWED or REFUSED
 * @property {Then} then
 * @property {string | null} key of the capture under way
 * @property {boolean} asked whether the service knew of this serial
 */

/** Why a unit is measured once more. */
export const OCCASIONS = /** @type {const} */ (["rework", "audit", "return"])

/** @type {State} */
const EMPTY = {
  step: "serial", serial: "", todo: [], done: [], occasion: "production", seating: 1, tries: 0, allowed: 0, judged: null, choice: 0, notice: null,
  outcome: null, then: "next-unit", key: null, asked: true,
}

/**
 * @typedef {{ product: string, name: string, pattern: string | null, tunings: string[] }} Plan what is measured in this shift
 * @typedef {{ type: "scan", serial: string } | { type: "history", serial: string, inspections: Api.Inspection[], away: boolean, heldAt: string | null } | { type: "arrow", by: number }
 *   | { type: "enter" } | { type: "escape" } | { type: "stopped", notice: Notice } | { type: "captured", key: string }
 *   | { type: "answered", key: string, inspection: Api.Inspection } | { type: "waiting", key: string, notice: Notice, flawed: boolean }
 *   | { type: "refused", key: string }} Event
 */

/** @param {Notice | null} [notice] @returns {State} */
export function begin(notice = null) {
  return { ...EMPTY, notice }
}

/**
 * @param {State} state @param {Event} event @param {Plan} plan
 * @returns {State} the same object where the event changes nothing
 */
export function next(state, event, plan) {
  switch (event.type) {
    case "scan": return scanned(state, serialOf(event.serial), plan)
    case "history": return state.step === "looking" && event.serial === state.serial ? known(state, event, plan) : state
    case "arrow": return state.step === "repeated" ? { ...state, choice: (state.choice + event.by + OCCASIONS.length) % OCCASIONS.length } : state
    case "enter": return entered(state, plan)
    case "escape": return escaped(state)
    case "captured": return isMeasuring(state) ? { ...measuring(state), step: "sending", key: event.key, notice: null, outcome: null } : state
    case "stopped": return isMeasuring(state) || state.step === "sending" ? { ...measuring(state), step: "mount", outcome: null, notice: event.notice } : state
    case "answered": return event.key === state.key && (state.step === "sending" || state.step === "verdict") ? answered(state, event.inspection) : state
    case "waiting": return event.key === state.key && state.step === "sending" ? held(state, event) : state
    case "refused": return event.key === state.key && (state.step === "sending" || state.outcome === "HELD" || state.outcome === "FLAWED")
      ? { ...state, step: "verdict", outcome: "REFUSED", then: "next-unit", notice: null } : state
    default: return state
  }
}

/** Whether Enter measures at once: the pair is to be mounted again, or with another tuning. @param {State} state */
export function measuresOn(state) {
  return state.step === "verdict" && state.then !== "next-unit"
}

/**
 * What Enter measures.
 * @param {State} state @returns {{ serial: string, tuning: string, occasion: string, seating: number }} `seating` 0: nobody could say how many there are
 */
export function attemptOf(state) {
  const { serial, todo, occasion, seating, asked } = measuring(state)
  return { serial, tuning: todo[0], occasion, seating: asked ? seating : 0 }
}

/** @param {State} state */
function isMeasuring(state) {
  return state.step === "mount" || state.step === "sweeping" || measuresOn(state)
}

/** A scanner may type at every step but while the sweep plays. @param {State} state */
export function takesSerial(state) {
  return state.step !== "sweeping"
}

/** @param {State} state @param {string} serial @param {Plan} plan @returns {State} */
function scanned(state, serial, plan) {
  if (!takesSerial(state) || !serial) return state
  if (!fitsPattern(serial, plan.pattern)) {
    return begin({ key: "screen.bench.wrongSerial", values: { serial, product: plan.name, pattern: patternExample(plan.pattern ?? "") } })
  }
  return { ...EMPTY, step: "looking", serial, todo: plan.tunings }
}

/** @param {State} state @param {{ inspections: Api.Inspection[], away: boolean, heldAt: string | null }} event @param {Plan} plan @returns {State} */
function known(state, { inspections, away, heldAt }, plan) {
  const finding = findingOf(inspections, plan.product, state.todo)
  const unasked = heldAt ? { key: "screen.bench.heldAlready", values: { time: heldAt } } : away ? { key: "screen.bench.historyAway" } : null
  const mount = /** @type {State} */ ({ ...state, step: "mount", asked: !away, notice: unasked })
  switch (finding.kind) {
    case "other": return begin({ key: "screen.bench.otherProduct", values: { serial: state.serial, product: finding.product, wanted: plan.name } })
    case "judged": return { ...state, step: "repeated", judged: finding.last, choice: 0, asked: !away, notice: unasked }
    case "open": {
      const { tuning, occasion, seating, tries, allowed } = finding
      return { ...mount, occasion, seating, tries, allowed, todo: state.todo.slice(state.todo.indexOf(tuning)), notice: { key: "screen.bench.goesOn", values: { tuning, tries, allowed } } }
    }
    case "passed": return {
      ...mount, todo: state.todo.filter((tuning) => !finding.tunings.includes(tuning)),
      notice: { key: "screen.bench.partly", values: { tunings: finding.tunings.join(", ") } },
    }
    default: return mount
  }
}

/** @param {State} state @param {Plan} plan @returns {State} */
function entered(state, plan) {
  if (state.step === "repeated") return { ...state, step: "mount", occasion: OCCASIONS[state.choice], todo: plan.tunings, seating: 1, notice: null }
  if (state.step === "mount" || measuresOn(state)) return { ...measuring(state), step: "sweeping", notice: null, outcome: null }
  return state.step === "verdict" ? begin() : state
}

/** @param {State} state @returns {State} */
function escaped(state) {
  if (state.step === "sweeping") return { ...state, step: "mount", notice: { key: "screen.bench.aborted" } }
  return state.step === "serial" && !state.notice ? state : begin()
}

/** @param {State} state @param {Api.Inspection} inspection @returns {State} */
function answered(state, inspection) {
  const seatings = inspection.seatings
  const base = /** @type {State} */ ({
    ...state, step: "verdict", notice: null, outcome: inspection.verdict ?? inspection.lastAttempt ?? "INVALID",
    tries: seatings?.tries ?? 0, allowed: seatings?.allowed ?? 0, seating: (seatings?.valid ?? 0) + 1,
  })
  if (inspection.state === "open") {
    return { ...base, then: inspection.next === "another-seating" ? "seating" : inspection.lastAttempt === "INVALID" ? "mend" : "reseat" }
  }
  return inspection.verdict === "PASS" ? following(base) : { ...base, then: "next-unit" }
}

/** A further tuning of the unit, or the next unit. @param {State} state @returns {State} */
function following(state) {
  return { ...state, then: state.todo.length > 1 ? "tuning" : "next-unit" }
}

/** The pair is measured now: with its next tuning, if that is what comes. @param {State} state @returns {State} */
function measuring(state) {
  if (state.step !== "verdict" || state.then !== "tuning") return state
  const [measured, ...todo] = state.todo
  return { ...state, todo, done: [...state.done, measured], seating: 1, tries: 0, allowed: 0 }
}

/** Not judged yet: what the browser itself found decides whether to go on. @param {State} state @param {{ notice: Notice, flawed: boolean }} event @returns {State} */
function held(state, { notice, flawed }) {
  const base = /** @type {State} */ ({ ...state, step: "verdict", outcome: flawed ? "FLAWED" : "HELD", notice })
  return flawed ? { ...base, then: "mend" } : following(base)
}

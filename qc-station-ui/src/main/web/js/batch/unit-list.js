// The units of a batch, each with its word; arrows walk, Enter opens.
import { el, put } from "../dom.js"
import { arrange, keepPlace } from "../keep-place.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

/** @typedef {{ onMark: (unit: Api.UnitCurves | null) => void, onOpen: (unit: Api.UnitCurves) => void }} Handlers */

export class UnitList {
  /** @type {Api.UnitCurves[]} */
  #units = []
  #handlers
  #at = -1
  /** @type {HTMLElement[]} */
  #rows = []
  /** @type {Map<string, HTMLElement>} rows by inspection: what a closed one says never changes */
  #known = new Map()
  #count = el("p", { class: "more" })
  #list = el("ul")

  /** @param {Api.BatchCurves} curves @param {Api.Inspection[]} failures with their sentences @param {Handlers} handlers */
  constructor(curves, failures, handlers) {
    this.#handlers = handlers
    this.element = el("section", { class: "unit-list" }, el("h2", {}, t("screen.units.title")), this.#count, this.#list)
    this.renew(curves, failures)
  }

  /** Takes in what came since; rows that stay keep their focus, their mark and their place. @param {Api.BatchCurves} curves @param {Api.Inspection[]} failures */
  renew(curves, failures) {
    const reasons = new Map(failures.map((item) => [item.id, item.reasons?.[0]?.text ?? ""]))
    const marked = this.#units[this.#at]?.inspection
    this.#units = [...withoutCurves(curves, failures), ...curves.units].sort((a, b) => rank(a) - rank(b))   // failed ones first; each group in production order
    const before = this.#known
    this.#known = new Map(this.#units.map((unit) => [unit.inspection, before.get(unit.inspection) ?? this.#row(unit, reasons.get(unit.inspection))]))
    this.#rows = this.#units.map((unit) => /** @type {HTMLElement} */ (this.#known.get(unit.inspection)))
    this.#at = this.#units.findIndex((unit) => unit.inspection === marked)
    put(this.#count, curves.shown < curves.of ? t("screen.units.some", { shown: curves.shown, of: curves.of }) : t("screen.units.all", { of: this.#units.length }))
    keepPlace(this.#list, () => arrange(this.#list, this.#rows))
  }

  /** @param {string | undefined} inspection @returns {Api.UnitCurves | null} */
  unitOf(inspection) {
    return this.#units.find((unit) => unit.inspection === inspection) ?? null
  }

  /** @param {number} step @returns {boolean} */
  walk(step) {
    if (!this.#units.length) return false
    const next = Math.max(0, Math.min(this.#units.length - 1, this.#at + step))
    this.mark(this.#units[next], true)
    this.#handlers.onMark(this.#units[next])
    return true
  }

  /** @returns {boolean} */
  openMarked() {
    if (this.#at < 0) return false
    this.#handlers.onOpen(this.#units[this.#at])
    return true
  }

  /** @param {Api.UnitCurves | null} unit @param {boolean} scroll */
  mark(unit, scroll) {
    this.#rows[this.#at]?.classList.remove("marked")
    this.#at = unit ? this.#units.indexOf(unit) : -1
    const row = this.#rows[this.#at]
    row?.classList.add("marked")
    if (scroll) row?.scrollIntoView({ block: "nearest" })
  }

  /** @param {Api.UnitCurves} unit @param {string | undefined} reason */
  #row(unit, reason) {
    const pick = () => {
      const now = this.unitOf(unit.inspection)
      this.mark(now, false)
      this.#handlers.onMark(now)
    }
    const button = el("button", { type: "button", data: { key: unit.inspection }, on: { click: () => this.#handlers.onOpen(unit), pointerenter: pick, focus: pick } },
      shape(unit.verdict), el("span", { class: "serial" }, unit.serial), el("span", { class: `word state-${unit.verdict.toLowerCase()}` }, tOf("screen.word.", unit.verdict)),
      reason ? el("span", { class: "why" }, reason) : null)
    return el("li", {}, button)
  }
}

/**
 * Units that failed and have no curve (one that never sealed): listed all the same, since they count in the yield.
 * @param {Api.BatchCurves} curves @param {Api.Inspection[]} failures @returns {Api.UnitCurves[]}
 */
function withoutCurves(curves, failures) {
  const drawn = new Set(curves.units.map((unit) => unit.serial))
  return failures.filter((item) => !drawn.has(item.serial)).map((item) => (
    { inspection: item.id, serial: item.serial, verdict: "FAIL", leftDeviationDb: [], rightDeviationDb: [], differenceDb: [] }))
}

/** @param {Api.UnitCurves} unit */
function rank(unit) {
  return unit.verdict === "PASS" ? 1 : 0
}

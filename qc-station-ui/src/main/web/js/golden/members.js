// The units that make a golden response: odd ones first with why, each left out or taken in again by decision.
import { el } from "../dom.js"
import { isNumber } from "../format.js"
import { shape } from "../shapes.js"
import { t } from "../texts.js"

/** @typedef {{ onMark: (unit: Api.GoldenUnit | null) => void, onToggle: (unit: Api.GoldenUnit) => void }} Handlers */

export class MemberList {
  #units
  #handlers
  #rows
  #at = -1

  /** @param {Api.GoldenUnit[]} units odd ones first @param {Handlers} handlers @param {string | null} marked inspection that stays marked */
  constructor(units, handlers, marked) {
    this.#units = units
    this.#handlers = handlers
    this.#rows = units.map((unit) => this.#row(unit))
    this.element = el("section", { class: "unit-list member-list" }, el("h2", {}, t("screen.golden.units")), el("p", { class: "more" }, t("screen.golden.unitsHint")), el("ul", {}, this.#rows))
    this.mark(units.find((unit) => unit.inspection === marked) ?? null, false)
  }

  /** @returns {string | null} */
  marked() {
    return this.#units[this.#at]?.inspection ?? null
  }

  hasFocus() {
    return this.element.contains(document.activeElement)
  }

  focus() {
    /** @type {HTMLElement | null} */ (this.#rows[Math.max(0, this.#at)]?.querySelector("button"))?.focus()
  }

  /** @param {number} step @returns {boolean} */
  walk(step) {
    const next = this.#units[Math.max(0, Math.min(this.#units.length - 1, this.#at + step))]
    if (!next) return false
    this.mark(next, true)
    this.focus()
    return true
  }

  /** @param {Api.GoldenUnit | null} unit @param {boolean} scroll */
  mark(unit, scroll) {
    this.#rows[this.#at]?.classList.remove("marked")
    this.#at = unit ? this.#units.indexOf(unit) : -1
    const row = this.#rows[this.#at]
    row?.classList.add("marked")
    if (scroll) row?.scrollIntoView({ block: "nearest" })
    this.#handlers.onMark(unit)
  }

  /** @param {Api.GoldenUnit} unit */
  #row(unit) {
    const pick = () => this.mark(unit, false)
    const farthest = Math.max(Math.abs(unit.left?.farthest ?? NaN), Math.abs(unit.right?.farthest ?? NaN))
    return el("li", {}, el("button", { type: "button", "aria-pressed": String(unit.leftOut), class: unit.leftOut ? "left-out" : null,
      on: { click: () => this.#handlers.onToggle(unit), pointerenter: pick, focus: pick } },
    shape(unit.odd ? "PROBLEM" : "VALID"), el("span", { class: "serial" }, unit.serial),
    el("span", { class: "word" }, unit.leftOut ? t("screen.golden.leftOut") : isNumber(farthest) ? `${farthest.toFixed(1)}\u202f\u03c3` : ""),
    unit.odd ? el("span", { class: "why" }, t("screen.golden.odd"), " ", unit.why.join(" ")) : null))
  }
}

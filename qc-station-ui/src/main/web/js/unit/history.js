// Every inspection of a unit, newest first; arrows walk.
import { el } from "../dom.js"
import { localTime } from "../format.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

export class History {
  #items
  #open
  #rows
  /** @type {string | null} */
  #marked = null

  /** @param {Api.Inspection[]} inspections @param {(inspection: Api.Inspection) => void} open */
  constructor(inspections, open) {
    this.#items = [...inspections].sort((a, b) => (a.startedAt < b.startedAt ? 1 : -1))
    this.#open = open
    this.#rows = this.#items.map((item) => this.#row(item))
    this.element = el("section", { class: "history" }, el("h2", {}, t("screen.history.title")), el("ul", {}, this.#rows.map((row) => el("li", {}, row))))
  }

  newest() {
    return this.#items[0]
  }

  /** @param {string} id */
  mark(id) {
    this.#marked = id
    this.#rows.forEach((row, i) => row.setAttribute("aria-current", String(this.#items[i].id === id)))
  }

  /** @param {number} step @returns {boolean} */
  walk(step) {
    const at = this.#items.findIndex((item) => item.id === this.#marked)
    const next = this.#items[Math.max(0, Math.min(this.#items.length - 1, at + step))]
    if (!next || next.id === this.#marked) return false
    this.#open(next)
    this.#rows[this.#items.indexOf(next)].scrollIntoView({ block: "nearest" })
    return true
  }

  /** @param {Api.Inspection} item */
  #row(item) {
    const word = item.verdict ?? item.lastAttempt ?? "INCOMPLETE"
    return el("button", { type: "button", on: { click: () => this.#open(item) } },
      shape(word), el("span", { class: `word state-${word.toLowerCase()}` }, tOf("screen.word.", word)),
      el("span", { class: "tuning" }, item.tuning), el("span", { class: "more" }, tOf("screen.occasion.", item.occasion)),
      el("time", { datetime: item.startedAt }, localTime(item.closedAt ?? item.startedAt)),
      item.state === "open" ? el("span", { class: "more" }, t("screen.history.open")) : item.state === "abandoned" ? el("span", { class: "more" }, t("screen.history.abandoned")) : null)
  }
}

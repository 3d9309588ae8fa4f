// The proposed pairs as a table: arrows walk, and it is what is printed for the bench that puts the pairs together.
import { el } from "../dom.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

export class PairList {
  #pairs
  #show
  #rows
  #at = -1

  /** @param {Api.ProposedPair[]} pairs @param {(pair: Api.ProposedPair) => void} show */
  constructor(pairs, show) {
    this.#pairs = pairs
    this.#show = show
    this.#rows = pairs.map((pair, i) => this.#row(pair, i))
    this.element = el("div", { class: "pair-list" }, el("table", {},
      el("thead", {}, el("tr", {}, [t("screen.pairing.column.serial"), t("screen.pairing.column.left"), t("screen.pairing.column.right"),
        t("screen.pairing.column.share"), t("screen.pairing.column.state")].map((title, i) => el("th", { scope: "col", class: i === 3 ? "number" : null }, title)))),
      el("tbody", {}, this.#rows)))
  }

  /** @param {number} step @returns {boolean} */
  walk(step) {
    const next = Math.max(0, Math.min(this.#pairs.length - 1, this.#at + step))
    if (!this.#pairs.length || next === this.#at) return false
    this.#mark(next)
    this.#rows[next].scrollIntoView({ block: "nearest" })
    return true
  }

  /** @param {number} place */
  #mark(place) {
    if (place === this.#at) return
    this.#rows[this.#at]?.classList.remove("marked")
    this.#at = place
    this.#rows[place].classList.add("marked")
    this.#show(this.#pairs[place])
  }

  /** @param {Api.ProposedPair} pair @param {number} place */
  #row(pair, place) {
    const earpiece = (/** @type {Api.PairedEarpiece} */ one) => el("td", { class: one.channel },
      el("a", { href: hashOf("unit", one.serial, { inspection: one.inspection }) }, one.earpiece))
    return el("tr", { on: { click: () => this.#mark(place), focusin: () => this.#mark(place) } },
      el("th", { scope: "row" }, el("button", { type: "button", class: "pair-serial", "aria-label": t("screen.pairing.show", { serial: pair.serial }) }, pair.serial)),
      earpiece(pair.left), earpiece(pair.right),
      el("td", { class: "number" }, `${Math.round(pair.cost * 100)}\u202f%`),
      el("td", { class: "pair-state" }, state(pair)))
  }
}

/** @param {Api.ProposedPair} pair */
function state(pair) {
  if (pair.asBuilt) return el("span", { class: "quiet" }, t("screen.pairing.stays"))
  if (!pair.inspected) return el("span", {}, t("screen.pairing.toInspect"))
  const word = pair.inspected.verdict
  return el("a", { class: `outcome state-${word.toLowerCase()}`, href: hashOf("unit", pair.serial, { inspection: pair.inspected.inspection }) },
    shape(word), tOf("screen.word.", word))
}

// One proposal: what it gains, its pairs in a list that arrows walk, the marked pair's curves beside it.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { db, frequency, localTime, signedDb } from "../format.js"
import { takesText } from "../keys.js"
import { ResponsePanel } from "../plot/response-panel.js"
import { go } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"
import { PairList } from "./pair-list.js"

export class Proposal {
  #host
  #id
  #closed = new AbortController()
  #panel = new ResponsePanel()
  #facts = el("p", { class: "pair-facts" })
  /** @type {PairList | null} */
  #list = null
  #asked = 0

  /** @param {HTMLElement} host @param {string} id */
  constructor(host, id) {
    this.#host = host
    this.#id = id
    this.#load()
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key === "Escape") {
      go("pairing")
      return true
    }
    if (takesText(event.target)) return false
    if (event.key === "ArrowDown" || event.key === "ArrowUp") return this.#list?.walk(event.key === "ArrowDown" ? 1 : -1) ?? false
    return this.#panel.key(event)
  }

  async #load() {
    put(this.#host, busy(t("screen.pairing.loading")))
    try {
      this.#draw(/** @type {Api.Pairing} */ (await get(`/api/pairings/${encodeURIComponent(this.#id)}`, this.#closed.signal)))
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#host, failed(failure, () => this.#load()))
    }
  }

  /** @param {Api.Pairing} pairing */
  #draw(pairing) {
    this.#list = new PairList(pairing.pairs, (pair) => this.#show(pair))
    put(this.#host, el("section", { class: "pairing" },
      el("header", { class: "pairing-head" },
        el("a", { class: "back", href: "#/pairing" }, t("screen.pairing.back")),
        el("h1", {}, t("screen.pairing.of", { product: pairing.product, tuning: pairing.tuning })),
        el("p", { class: "quiet" }, localTime(pairing.createdAt), " \u00b7 ", t("screen.pairing.limitSet", { version: pairing.limitSet.version })),
        el("div", { class: "pairing-tools" },
          el("a", { class: "button", href: pairing.links.csv, download: "" }, t("screen.pairing.csv")),
          el("button", { type: "button", class: "button", on: { click: () => print() } }, t("screen.pairing.print")))),
      figures(pairing),
      el("ul", { class: "pairing-notes" }, pairing.notes.map((note) => el("li", {}, note))),
      pairing.pairs.length
        ? el("div", { class: "pairing-body" }, this.#list.element, el("section", { class: "pairing-plot" }, this.#facts, this.#panel.element))
        : stateOf("WAITING", t("screen.pairing.noPairs.title"), t("screen.pairing.noPairs.mend")),
      others(pairing)))
    this.#list.walk(1)
  }

  /** @param {Api.ProposedPair} pair */
  async #show(pair) {
    const asked = ++this.#asked
    put(this.#facts, facts(pair))
    try {
      const curves = /** @type {Api.Curves} */ (await get(`/api/pairings/${encodeURIComponent(this.#id)}/pairs/${pair.number}/curves`, this.#closed.signal))
      if (asked === this.#asked) this.#panel.show(curves, [])
    } catch {
      if (asked === this.#asked && !this.#closed.signal.aborted) this.#panel.clear(t("screen.plot.offline"))
    }
  }
}

/** @param {Api.ProposedPair} pair */
function facts(pair) {
  const match = pair.match.atHz === null ? null : t("screen.pairing.match", {
    difference: signedDb(pair.match.differenceDb), limit: db(pair.match.limitDb), frequency: frequency(pair.match.atHz) })
  return [match, t("screen.pairing.balance", { difference: signedDb(pair.balance.differenceDb), limit: db(pair.balance.limitDb) })].filter(Boolean).join(" ")
}

/** @param {Api.Pairing} pairing */
function figures(pairing) {
  const share = (/** @type {number | null} */ cost) => (cost === null ? db(null) : `${Math.round(cost * 100)}\u202f%`)
  const entries = [
    ["gained", `+${pairing.gained}`, t("screen.pairing.figure.gained")],
    ["", `${pairing.proposed.pairs}`, t("screen.pairing.figure.proposed", { lefts: pairing.pool.lefts, rights: pairing.pool.rights })],
    ["", `${pairing.asBuilt.feasible}`, t("screen.pairing.figure.asBuilt", { pairs: pairing.asBuilt.pairs })],
    ["", `${share(pairing.asBuilt.meanCost)} \u2192 ${share(pairing.proposed.meanCost)}`, t("screen.pairing.figure.cost")],
  ]
  return el("dl", { class: "pairing-figures" }, entries.map(([kind, value, text]) => el("div", { class: kind }, el("dd", {}, value), el("dt", {}, text))))
}

/** Who has no mate, and who may not be paired. @param {Api.Pairing} pairing */
function others(pairing) {
  if (!pairing.alone.length && !pairing.leftOut.length) return null
  return el("section", { class: "pairing-others" },
    pairing.alone.length ? el("details", {}, el("summary", {}, t("screen.pairing.alone", { count: pairing.alone.length })),
      el("p", {}, pairing.alone.map((one) => one.earpiece).join(", "))) : null,
    pairing.leftOut.length ? el("details", {}, el("summary", {}, t("screen.pairing.leftOut", { count: pairing.leftOut.length })),
      el("ul", {}, pairing.leftOut.map((one) => el("li", {}, el("b", {}, one.earpiece), " ", one.text)))) : null)
}

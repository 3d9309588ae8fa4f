// One batch in one tuning: yield, ranked reasons, clouds of curves against the window, and its units.
import { get, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { takesText } from "../keys.js"
import { BatchPapers } from "../print/batch-papers.js"
import { go, hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"
import { Clouds } from "./clouds.js"
import { riskBlock } from "./risk-block.js"
import { UnitList } from "./unit-list.js"
import { reasonBars, yieldBlock } from "./yield-block.js"

/** As many curves as are drawn and listed at once. */
const SHOWN_UNITS = 200

export class BatchDetail {
  #host
  #batch
  #query
  #closed = new AbortController()
  /** @type {UnitList | null} */
  #units = null
  /** @type {Clouds | null} */
  #clouds = null

  /** @param {HTMLElement} host @param {string} batch @param {Record<string, string>} query */
  constructor(host, batch, query) {
    this.#host = host
    this.#batch = batch
    this.#query = query
    this.#load()
  }

  close() {
    this.#closed.abort()
  }

  /** @param {import("../router.js").Route} route @returns {boolean} */
  update(route) {
    if (route.name !== this.#batch) return false
    this.#query = route.query
    this.#load()
    return true
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key === "Escape") {
      go("batch")
      return true
    }
    if (takesText(event.target) || !this.#units) return false
    if (event.key === "ArrowDown" || event.key === "ArrowUp") return this.#units.walk(event.key === "ArrowDown" ? 1 : -1)
    if (event.key === "Enter" && !(event.target instanceof HTMLAnchorElement) && !(event.target instanceof HTMLButtonElement)) return this.#units.openMarked()
    return this.#clouds?.key(event) ?? false
  }

  async #load() {
    const signal = this.#closed.signal
    const head = el("header", { class: "batch-head" })
    const body = el("div", { class: "batch-body" }, busy(t("screen.batch.loading", { batch: this.#batch })))
    put(this.#host, el("section", { class: "batch" }, head, body))
    const known = /** @type {Promise<Api.Page<Api.BatchSummary>>} */ (get("/api/batches", signal))
      .then((page) => page.items.filter((item) => item.batch === this.#batch), () => [])
    const draw = async (/** @type {Api.Statistics | null} */ statistics) => this.#drawHead(head, await known, statistics)
    try {
      const search = new URLSearchParams(this.#query).toString()
      const statistics = /** @type {Api.Statistics} */ (await get(this.#path("statistics", search), signal))
      const curves = /** @type {Api.BatchCurves} */ (await get(this.#path("curves", `${search ? `${search}&` : ""}limit=${SHOWN_UNITS}`), signal))
      await draw(statistics)
      this.#drawBody(body, statistics, curves, await this.#failedOf(statistics))
    } catch (failure) {
      if (signal.aborted) return
      await draw(null)
      if (failure instanceof Problem && failure.document.status === 422) put(body, this.#choices(failure.document, await known))
      else put(body, failed(failure, () => this.#load()))
    }
  }

  /** @param {string} what @param {string} search */
  #path(what, search) {
    return `/api/batches/${encodeURIComponent(this.#batch)}/${what}${search ? `?${search}` : ""}`
  }

  /** The failed inspections, for their sentences and for units that have no curve. @param {Api.Statistics} statistics @returns {Promise<Api.Inspection[]>} */
  async #failedOf(statistics) {
    const query = new URLSearchParams({ batch: this.#batch, product: statistics.product, tuning: statistics.tuning, verdict: "FAIL", limit: "500" })
    try {
      const page = /** @type {Api.Page<Api.Inspection>} */ (await get(`/api/inspections?${query}`, this.#closed.signal))
      return page.items.filter((item) => item.limitSet !== undefined && statistics.limitSets.includes(item.limitSet.version))
    } catch {
      return []   // the list does without the sentences
    }
  }

  /** @param {HTMLElement} head @param {Api.BatchSummary[]} known @param {Api.Statistics | null} statistics */
  #drawHead(head, known, statistics) {
    const chips = known.flatMap((summary) => summary.tunings.map((tuning) => ({ product: summary.product, name: summary.productName ?? summary.product, tuning })))
    const current = statistics ?? this.#query
    put(head,
      el("a", { class: "back", href: "#/batch" }, t("screen.batch.all")),
      el("h1", {}, this.#batch),
      el("nav", { class: "chips", "aria-label": t("screen.batch.narrow") }, chips.map((chip) => el("a", {
        class: "chip", href: hashOf("batch", this.#batch, { product: chip.product, tuning: chip.tuning }),
        "aria-current": chip.product === current.product && chip.tuning === current.tuning ? "true" : null,
      }, new Set(known.map((summary) => summary.product)).size > 1 ? `${chip.name} \u00b7 ${chip.tuning}` : chip.tuning))),
      statistics ? el("p", { class: "facts" }, t("screen.batch.facts", { product: known.find((k) => k.product === statistics.product)?.productName ?? statistics.product,
        versions: statistics.limitSets.join(", "), inspected: statistics.units.inspected })) : null)
  }

  /** @param {HTMLElement} body @param {Api.Statistics} statistics @param {Api.BatchCurves} curves @param {Api.Inspection[]} failures */
  #drawBody(body, statistics, curves, failures) {
    if (!statistics.units.inspected) return put(body, stateOf("WAITING", t("screen.batch.empty.title"), t("screen.batch.empty.mend")))
    const open = (/** @type {Api.UnitCurves} */ unit) => go("unit", unit.serial, { inspection: unit.inspection })
    const clouds = new Clouds(statistics, curves, { onMark: (unit) => this.#units?.mark(unit, true), onOpen: open })
    const units = new UnitList(curves, failures, { onMark: (unit) => clouds.mark(unit?.differenceDb?.length ? unit : null), onOpen: open })
    this.#clouds = clouds
    this.#units = units
    put(body,
      el("div", { class: "batch-main" },
        el("div", { class: "batch-top" }, yieldBlock(statistics), reasonBars(statistics.reasons)),
        clouds.element,
        riskBlock(statistics, this.#closed.signal),
        new BatchPapers(statistics, this.#closed.signal).element),
      units.element)
    clouds.refresh()
  }

  /** @param {Api.ProblemDocument} document @param {Api.BatchSummary[]} known */
  #choices(document, known) {
    const offered = Array.isArray(document.choices) ? document.choices.filter((choice) => choice && typeof choice === "object") : []
    const choices = offered.length ? offered : known.flatMap((summary) => summary.tunings.map((tuning) => ({ product: summary.product, tuning })))
    return stateOf("WAITING", t("screen.batch.mixed"), document.detail ?? "", el("ul", { class: "choices" }, choices.map((choice) => el("li", {},
      el("a", { class: "choice", href: hashOf("batch", this.#batch, { ...this.#query, ...choiceQuery(choice) }) }, choiceWords(choice))))))
  }
}

/** @param {any} choice @returns {Record<string, string>} */
function choiceQuery(choice) {
  return Object.fromEntries(["product", "tuning", "limitSet"].filter((key) => choice[key] !== undefined && choice[key] !== null).map((key) => [key, String(choice[key])]))
}

/** @param {any} choice */
function choiceWords(choice) {
  const version = choice.limitSet === undefined || choice.limitSet === null ? null : t("screen.batch.version", { version: choice.limitSet })
  return [choice.product, choice.tuning, version].filter(Boolean).join(" \u00b7 ")
}

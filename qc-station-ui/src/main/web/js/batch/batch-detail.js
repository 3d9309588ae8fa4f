// One batch in one tuning: yield, ranked reasons, clouds of curves against the window, and its units.
import { get, Problem } from "../api.js"
import { coalesced } from "../coalesce.js"
import { el, put } from "../dom.js"
import { keepPlace } from "../keep-place.js"
import { takesText } from "../keys.js"
import { listen } from "../live.js"
import { BatchPapers } from "../print/batch-papers.js"
import { go, hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"
import { capabilityPanel } from "./capability-panel.js"
import { chartPanel } from "./chart-panel.js"
import { Clouds } from "./clouds.js"
import { componentPanel } from "./component-panel.js"
import { narrowing } from "./narrowing.js"
import { riskBlock } from "./risk-block.js"
import { stationPanel } from "./station-panel.js"
import { UnitList } from "./unit-list.js"
import { reasonBars, yieldBlock } from "./yield-block.js"

/** As many curves as are drawn and listed at once. */
const SHOWN_UNITS = 200
/** Not asked more often than that, however fast the line is. */
const LEAST_MS = 1000

export class BatchDetail {
  #host
  #batch
  #query
  #closed = new AbortController()
  /** @type {UnitList | null} */
  #units = null
  /** @type {Clouds | null} */
  #clouds = null
  /** What is drawn. @type {Api.Statistics | null} */
  #drawn = null
  #top = el("div", { class: "batch-top" })
  #head = el("header", { class: "batch-head" })
  #state = el("p", { class: "live quiet", role: "status" })
  #soon = coalesced(() => this.#renew(), LEAST_MS)
  #live

  /** @param {HTMLElement} host @param {string} batch @param {Record<string, string>} query */
  constructor(host, batch, query) {
    this.#host = host
    this.#batch = batch
    this.#query = query
    this.#live = listen({
      onNews: (news) => news.verdict && news.batch === batch && this.#soon.ask(),
      onState: (state) => this.#showState(state),
      poll: () => this.#renew(),
    })
    this.#load()
  }

  close() {
    this.#closed.abort()
    this.#soon.close()
    this.#live.close()
  }

  /** @param {import("../live.js").LiveState} state */
  #showState(state) {
    const words = { connecting: t("screen.live.connecting"), live: t("screen.live.live"), polling: t("screen.live.polling"), offline: t("screen.live.offline") }
    this.#state.dataset.state = state
    put(this.#state, words[state])
  }

  /** What came since the page was drawn, without touching what somebody looks at or types into. */
  async #renew() {
    if (!this.#drawn) return
    const signal = this.#closed.signal, search = new URLSearchParams(this.#query).toString(), before = this.#drawn
    const statistics = /** @type {Api.Statistics} */ (await get(this.#path("statistics", search), signal))
    if (before !== this.#drawn || sameUnits(before, statistics)) return
    if (!before.units.inspected) return this.#load()
    const [curves, failures, known] = await Promise.all([this.#curvesOf(search), this.#failedOf(statistics), this.#known()])
    if (before !== this.#drawn || signal.aborted) return
    this.#drawn = statistics
    keepPlace(this.#head, () => this.#drawHead(this.#head, known, statistics))
    keepPlace(this.#top, () => put(this.#top, yieldBlock(statistics), reasonBars(statistics.reasons)))
    this.#clouds?.renew(statistics, curves)
    this.#units?.renew(curves, failures)
  }

  /** @returns {Promise<Api.BatchSummary[]>} */
  #known() {
    return /** @type {Promise<Api.Page<Api.BatchSummary>>} */ (get("/api/batches", this.#closed.signal))
      .then((page) => page.items.filter((item) => item.batch === this.#batch), () => [])
  }

  /** @param {string} search @returns {Promise<Api.BatchCurves>} */
  #curvesOf(search) {
    return get(this.#path("curves", `${search ? `${search}&` : ""}limit=${SHOWN_UNITS}`), this.#closed.signal)
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
    if (event.key === "Enter" && !(event.target instanceof HTMLAnchorElement) && !(event.target instanceof HTMLButtonElement) && !(event.target instanceof HTMLElement && event.target.tagName === "SUMMARY")) return this.#units.openMarked()
    return this.#clouds?.key(event) ?? false
  }

  async #load() {
    const signal = this.#closed.signal
    const head = this.#head
    this.#drawn = null
    const body = el("div", { class: "batch-body" }, busy(t("screen.batch.loading", { batch: this.#batch })))
    put(this.#host, el("section", { class: "batch" }, head, body))
    const known = this.#known()
    const draw = async (/** @type {Api.Statistics | null} */ statistics) => this.#drawHead(head, await known, statistics)
    try {
      const search = new URLSearchParams(this.#query).toString()
      const statistics = /** @type {Api.Statistics} */ (await get(this.#path("statistics", search), signal))
      const curves = await this.#curvesOf(search)
      await draw(statistics)
      this.#drawBody(body, statistics, curves, await this.#failedOf(statistics))
      this.#drawn = statistics
    } catch (failure) {
      if (signal.aborted) return
      await draw(null)
      if (failure instanceof Problem && failure.document.status === 422) put(body, this.#choices(failure.document, await known))
      else put(body, failed(failure, () => this.#load()))
    }
  }

  get #narrowed() {
    return Boolean(this.#query.station || this.#query.from || this.#query.to)
  }

  /** @param {string} what @param {string} search */
  #path(what, search) {
    return `/api/batches/${encodeURIComponent(this.#batch)}/${what}${search ? `?${search}` : ""}`
  }

  /** The failed inspections, for their sentences and for units that have no curve. @param {Api.Statistics} statistics @returns {Promise<Api.Inspection[]>} */
  async #failedOf(statistics) {
    const query = new URLSearchParams({ batch: this.#batch, product: statistics.product, tuning: statistics.tuning, verdict: "FAIL", limit: "500", ...(this.#query.station ? { station: this.#query.station } : {}) })
    try {
      const page = /** @type {Api.Page<Api.Inspection>} */ (await get(`/api/inspections?${query}`, this.#closed.signal))
      const from = Date.parse(this.#query.from ?? "") || -Infinity, to = Date.parse(this.#query.to ?? "") || Infinity
      const inTime = (/** @type {Api.Inspection} */ item) => !item.startedAt || (Date.parse(item.startedAt) >= from && Date.parse(item.startedAt) < to)
      return page.items.filter((item) => item.limitSet !== undefined && statistics.limitSets.includes(item.limitSet.version) && inTime(item))
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
      statistics || this.#narrowed ? narrowing(this.#batch, this.#query, statistics?.stations ?? []) : null,
      statistics ? el("p", { class: "facts" }, t("screen.batch.facts", { product: known.find((k) => k.product === statistics.product)?.productName ?? statistics.product,
        versions: statistics.limitSets.join(", "), inspected: statistics.units.inspected })) : null,
      this.#state)
  }

  /** @param {HTMLElement} body @param {Api.Statistics} statistics @param {Api.BatchCurves} curves @param {Api.Inspection[]} failures */
  #drawBody(body, statistics, curves, failures) {
    if (!statistics.units.inspected) return put(body, stateOf("WAITING", t("screen.batch.empty.title"), t("screen.batch.empty.mend")))
    const open = (/** @type {Api.UnitCurves} */ unit) => go("unit", unit.serial, { inspection: unit.inspection })
    const clouds = new Clouds(statistics, curves, { onMark: (unit) => this.#units?.mark(unit, true), onOpen: open })
    const units = new UnitList(curves, failures, { onMark: (unit) => clouds.mark(unit?.differenceDb?.length ? unit : null), onOpen: open })
    this.#clouds = clouds
    put(this.#top, yieldBlock(statistics), reasonBars(statistics.reasons))
    this.#units = units
    put(body,
      el("div", { class: "batch-main" },
        this.#top,
        clouds.element,
        riskBlock(statistics, this.#closed.signal),
        this.#figures(statistics),
        new BatchPapers(statistics, this.#closed.signal).element),
      units.element)
    clouds.refresh()
  }

  /** Capability, charts, components and stations, each asked for when it comes into view. @param {Api.Statistics} statistics */
  #figures(statistics) {
    const source = {
      path: (/** @type {string} */ what, /** @type {Record<string, string>} */ more = {}) => this.#path(what, new URLSearchParams({ ...this.#query, ...more }).toString()),
      signal: this.#closed.signal,
      open: (/** @type {{ serial: string, inspection: string }} */ unit) => go("unit", unit.serial, { inspection: unit.inspection }),
    }
    return [capabilityPanel(source), chartPanel(source), componentPanel(source, statistics.regions), stationPanel(source)]
  }

  /** @param {Api.ProblemDocument} document @param {Api.BatchSummary[]} known */
  #choices(document, known) {
    if (document.stations) return stateOf("WAITING", t("screen.narrow.nothing"), document.detail ?? "")
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

/** @param {Api.Statistics} before @param {Api.Statistics} now */
function sameUnits(before, now) {
  return before.product === now.product && before.tuning === now.tuning && before.units.inspected === now.units.inspected && before.units.passed === now.units.passed
    && before.limitSets.join() === now.limitSets.join()
}

// Every batch, newest first; kept up to date while the line goes on.
import { get } from "../api.js"
import { walkLinks } from "../bench/choose-station.js"
import { coalesced } from "../coalesce.js"
import { el, put } from "../dom.js"
import { localTime } from "../format.js"
import { arrange, keepPlace } from "../keep-place.js"
import { listen } from "../live.js"
import { hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"

/** Not asked more often than that, however fast the line is. */
const LEAST_MS = 1000

/** @param {HTMLElement} host @returns {import("../screens.js").Screen} */
export function listBatches(host) {
  const closed = new AbortController()
  const list = new BatchTable()
  const read = async () => /** @type {Api.Page<Api.BatchSummary>} */ (await get("/api/batches", closed.signal)).items
  const show = (/** @type {Api.BatchSummary[]} */ items) => {
    list.show(items)
    if (items.length && !list.element.isConnected) put(host, list.element)
    if (!items.length) put(host, stateOf("WAITING", t("screen.batches.empty.title"), t("screen.batches.empty.mend"), el("code", {}, t("screen.batches.empty.command"))))
  }
  const load = async () => {
    put(host, busy(t("screen.batches.loading")))
    try {
      show(await read())
      const first = /** @type {HTMLElement | null} */ (host.querySelector("a.row-link"))
      first?.focus()
    } catch (failure) {
      if (!closed.signal.aborted) put(host, failed(failure, load))
    }
  }
  const renew = async () => show(await read())
  const soon = coalesced(renew, LEAST_MS)
  const live = listen({ onNews: (news) => news.verdict && soon.ask(), onState: () => undefined, poll: renew })
  load()
  return {
    close() {
      closed.abort()
      soon.close()
      live.close()
    },
    key: (event) => walkLinks(host, event),
  }
}

/** The table, whose rows stay the same elements while their numbers change. */
class BatchTable {
  /** @type {Map<string, { row: HTMLElement, fingerprint: string }>} */
  #rows = new Map()
  #body = el("tbody")

  constructor() {
    const titles = [t("screen.batches.batch"), t("screen.batches.product"), t("screen.batches.tunings"), t("screen.batches.units"), t("screen.batches.last")]
    this.element = el("section", { class: "page" }, el("h1", {}, t("screen.batches.title")), el("table", { class: "list" },
      el("thead", {}, el("tr", {}, titles.map((title, i) => el("th", { scope: "col", class: i === 3 ? "number" : null }, title)))), this.#body))
  }

  /** @param {Api.BatchSummary[]} batches newest first */
  show(batches) {
    keepPlace(this.#body, () => arrange(this.#body, batches.map((batch) => this.#row(batch))))
  }

  /** @param {Api.BatchSummary} batch */
  #row(batch) {
    const key = `${batch.batch} ${batch.product}`, fingerprint = JSON.stringify(batch)
    let known = this.#rows.get(key)
    if (!known) {
      known = { row: el("tr"), fingerprint: "" }
      this.#rows.set(key, known)
    }
    const { row } = known
    if (known.fingerprint !== fingerprint) {
      known.fingerprint = fingerprint
      keepPlace(row, () => put(row, cells(batch)))
    }
    return row
  }
}

/** @param {Api.BatchSummary} batch */
function cells(batch) {
  const link = hashOf("batch", batch.batch, { product: batch.product, tuning: batch.tunings.length === 1 ? batch.tunings[0] : null })
  return [
    el("th", { scope: "row" }, el("a", { class: "row-link", href: link, data: { key: `${batch.batch} ${batch.product}` } }, batch.batch)),
    el("td", {}, batch.productName ?? batch.product), el("td", {}, batch.tunings.join(", ")), el("td", { class: "number" }, batch.units), el("td", {}, localTime(batch.lastAt)),
  ]
}

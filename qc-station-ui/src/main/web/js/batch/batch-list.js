// Every batch, newest first.
import { get } from "../api.js"
import { walkLinks } from "../bench/choose-station.js"
import { el, put } from "../dom.js"
import { localTime } from "../format.js"
import { hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"

/** @param {HTMLElement} host @returns {import("../screens.js").Screen} */
export function listBatches(host) {
  const closed = new AbortController()
  const load = async () => {
    put(host, busy(t("screen.batches.loading")))
    try {
      const page = /** @type {Api.Page<Api.BatchSummary>} */ (await get("/api/batches", closed.signal))
      put(host, page.items.length ? table(page.items)
        : stateOf("WAITING", t("screen.batches.empty.title"), t("screen.batches.empty.mend"), el("code", {}, t("screen.batches.empty.command"))))
      const first = /** @type {HTMLElement | null} */ (host.querySelector("a.row-link"))
      first?.focus()
    } catch (failure) {
      if (!closed.signal.aborted) put(host, failed(failure, load))
    }
  }
  load()
  return { close: () => closed.abort(), key: (event) => walkLinks(host, event) }
}

/** @param {Api.BatchSummary[]} batches */
function table(batches) {
  return el("section", { class: "page" }, el("h1", {}, t("screen.batches.title")),
    el("table", { class: "list" },
      el("thead", {}, el("tr", {}, [t("screen.batches.batch"), t("screen.batches.product"), t("screen.batches.tunings"), t("screen.batches.units"), t("screen.batches.last")]
        .map((title, i) => el("th", { scope: "col", class: i === 3 ? "number" : null }, title)))),
      el("tbody", {}, batches.map((batch) => el("tr", {},
        el("th", { scope: "row" }, el("a", { class: "row-link", href: hashOf("batch", batch.batch, { product: batch.product, tuning: batch.tunings.length === 1 ? batch.tunings[0] : null }) }, batch.batch)),
        el("td", {}, batch.productName ?? batch.product), el("td", {}, batch.tunings.join(", ")), el("td", { class: "number" }, batch.units), el("td", {}, localTime(batch.lastAt)))))))
}

// Limits: a tuning's limit set over its recorded units; move an edge and see what would become of them, then draft, sign, activate.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { go, hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"
import { Workbench } from "./workbench.js"

/** @type {import("../screens.js").StartScreen} */
export function startLimits(host, route) {
  return new LimitsScreen(host, route.name, route.second ?? null, route.query)
}

class LimitsScreen {
  #host
  #product
  #tuning
  #query
  #closed = new AbortController()
  /** @type {Workbench | null} */
  #workbench = null

  /** @param {HTMLElement} host @param {string | null} product @param {string | null} tuning @param {Record<string, string>} query */
  constructor(host, product, tuning, query) {
    this.#host = host
    this.#product = product ?? ""
    this.#tuning = tuning ?? ""
    this.#query = query
    this.#load()
  }

  close() {
    this.#closed.abort()
    this.#workbench?.close()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key !== "Escape") return false
    if (this.#workbench?.leaveField()) return true
    go("batch")
    return true
  }

  async #load() {
    put(this.#host, busy(t("screen.limits.loading")))
    const signal = this.#closed.signal
    try {
      const [products, batches] = await Promise.all([
        /** @type {Promise<Api.Page<Api.Product>>} */ (get("/api/products", signal)), /** @type {Promise<Api.Page<Api.BatchSummary>>} */ (get("/api/batches", signal))])
      const all = products.items.flatMap((product) => product.tunings.map((tuning) => ({ product: product.product, name: product.name, tuning: tuning.tuning, active: tuning.activeLimitSet })))
      if (!all.length) return put(this.#host, stateOf("WAITING", t("screen.golden.noProduct.title"), t("screen.golden.noProduct.mend")))
      const one = all.find((each) => each.product === this.#product && each.tuning === this.#tuning)
      if (!one) {
        const first = all.find((each) => each.product === this.#product) ?? all[0]
        return go("limits", [first.product, first.tuning])
      }
      const body = el("div", { class: "limits-body" })
      put(this.#host, el("section", { class: "limits" },
        el("header", { class: "batch-head" }, el("h1", {}, t("screen.limits.title")), el("nav", { class: "chips", "aria-label": t("screen.bench.tuning") }, all.map((each) => el("a", {
          class: "chip", href: hashOf("limits", [each.product, each.tuning]), "aria-current": each === one ? "true" : null,
        }, `${each.name} \u00b7 ${each.tuning}`)))), body))
      const own = batches.items.filter((batch) => batch.product === one.product && batch.tunings.includes(one.tuning))
      this.#workbench = new Workbench(body, one.product, one.tuning, own, this.#query)
    } catch (failure) {
      if (!signal.aborted) put(this.#host, failed(failure, () => this.#load()))
    }
  }

}

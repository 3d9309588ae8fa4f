// Golden: a tuning's golden response built from measured units, the odd ones seen before they count, and its versions compared.
import { get, post } from "../api.js"
import { el, put } from "../dom.js"
import { howMeasured } from "../how-measured.js"
import { takesText } from "../keys.js"
import { go, hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { Steps } from "../station/steps.js"
import { t } from "../texts.js"
import { Cloud } from "./cloud.js"
import { comparisonBlock, VersionCompare } from "./compare.js"
import { MemberList } from "./members.js"

/** @type {import("../screens.js").StartScreen} */
export function startGolden(host, route) {
  return new GoldenScreen(host, route.name, route.second ?? null, route.query.batch ?? null)
}

class GoldenScreen {
  #host
  #product
  #tuning
  #batch
  #closed = new AbortController()
  #head = el("header", { class: "batch-head" })
  #choice = el("div", { class: "golden-choice" })
  #body = el("div", { class: "golden-body" })
  #versions = el("section", { class: "golden-versions" })
  #cloud = new Cloud((unit) => this.#members?.mark(unit, true))
  /** @type {MemberList | null} */
  #members = null
  /** @type {Set<string>} inspections left out by decision */
  #leftOut = new Set()
  #asked = 0

  /** @param {HTMLElement} host @param {string | null} product @param {string | null} tuning @param {string | null} batch */
  constructor(host, product, tuning, batch) {
    this.#host = host
    this.#product = product ?? ""
    this.#tuning = tuning ?? ""
    this.#batch = batch
    this.#load()
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key === "Escape") {
      go("batch", this.#batch)
      return true
    }
    if (takesText(event.target)) return false
    if (event.key === "ArrowDown" || event.key === "ArrowUp") return this.#members?.walk(event.key === "ArrowDown" ? 1 : -1) ?? false
    return this.#cloud.key(event)
  }

  get #path() {
    return `/api/products/${encodeURIComponent(this.#product)}/tunings/${encodeURIComponent(this.#tuning)}/golden-responses`
  }

  async #load() {
    put(this.#host, busy(t("screen.golden.loading")))
    try {
      const products = /** @type {Api.Page<Api.Product>} */ (await get("/api/products", this.#closed.signal)).items
      const all = products.flatMap((product) => product.tunings.map((tuning) => ({ product: product.product, name: product.name, tuning: tuning.tuning })))
      if (!all.length) return put(this.#host, stateOf("WAITING", t("screen.golden.noProduct.title"), t("screen.golden.noProduct.mend")))
      if (!all.some((one) => one.product === this.#product && one.tuning === this.#tuning)) {
        const first = all.find((one) => one.product === this.#product) ?? all[0]
        return go("golden", [first.product, first.tuning])
      }
      put(this.#host, el("section", { class: "golden" }, this.#head, this.#choice, this.#body, this.#versions, howMeasured(["golden", "distance"])))
      put(this.#head, el("h1", {}, t("screen.golden.title")), el("nav", { class: "chips", "aria-label": t("screen.bench.tuning") }, all.map((one) => el("a", {
        class: "chip", href: hashOf("golden", [one.product, one.tuning]), "aria-current": one.product === this.#product && one.tuning === this.#tuning ? "true" : null,
      }, `${one.name} \u00b7 ${one.tuning}`))))
      this.#drawVersions()
      await this.#drawChoice()
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#host, failed(failure, () => this.#load()))
    }
  }

  async #drawChoice() {
    const page = /** @type {Api.Page<Api.BatchSummary>} */ (await get("/api/batches", this.#closed.signal))
    const batches = page.items.filter((batch) => batch.product === this.#product && batch.tunings.includes(this.#tuning))
      .sort((a, b) => b.units - a.units).map((batch) => batch.batch)   // a median of many is the better one
    if (!batches.length) return put(this.#body, stateOf("WAITING", t("screen.golden.noBatch.title"), t("screen.golden.noBatch.mend")))
    const batch = batches.includes(this.#batch ?? "") ? /** @type {string} */ (this.#batch) : batches[0]
    put(this.#choice, el("span", { class: "quiet" }, t("screen.golden.choose")), el("div", { class: "chips" }, batches.map((name) => el("button", { type: "button", class: "chip",
      "aria-current": name === batch ? "true" : null, on: { click: () => { this.#batch = name; this.#leftOut.clear(); this.#drawChoice() } } }, name))))
    this.#batch = batch
    history.replaceState(null, "", hashOf("golden", [this.#product, this.#tuning], { batch }))
    this.#members = null
    await this.#build()
  }

  /** @param {Record<string, unknown>} [more] to save @returns {Promise<Api.GoldenBuild>} */
  #ask(more = {}) {
    return post(`${this.#path}/builds`, { batch: this.#batch, leaveOut: [...this.#leftOut], ...more })
  }

  async #build() {
    const mine = ++this.#asked
    if (!this.#members) put(this.#body, busy(t("screen.golden.building", { batch: this.#batch ?? "" })))
    try {
      const build = await this.#ask()
      if (mine === this.#asked && !this.#closed.signal.aborted) this.#drawBuild(build)
    } catch (failure) {
      if (mine === this.#asked && !this.#closed.signal.aborted) put(this.#body, failed(failure, () => this.#build()))
    }
  }

  /** @param {Api.GoldenBuild} build */
  #drawBuild(build) {
    const list = new MemberList(build.members, {
      onMark: (unit) => this.#cloud.mark(unit),
      onToggle: (unit) => {
        if (!this.#leftOut.delete(unit.inspection)) this.#leftOut.add(unit.inspection)
        this.#build()
      },
    }, this.#members?.marked() ?? null)
    const focused = this.#members?.hasFocus() ?? false
    this.#members = list
    put(this.#body,
      el("div", { class: "golden-main" },
        el("p", { class: "golden-facts" }, t("screen.golden.facts", { units: build.units, curves: build.curves, odd: build.members.filter((unit) => unit.odd).length })),
        this.#cloud.element,
        build.notes.map((line) => el("p", { class: "plot-note" }, line)),
        el("details", {}, el("summary", {}, t("screen.golden.method")), build.method.map((line) => el("p", { class: "plot-note" }, line))),
        comparisonBlock(build.againstActive, t("screen.golden.againstActive")), comparisonBlock(build.againstExpected, t("screen.golden.againstExpected"))),
      el("div", { class: "golden-side" }, list.element, this.#saveForm()))
    this.#cloud.show(build)
    if (focused) list.focus()
  }

  #saveForm() {
    return new Steps({
      title: t("screen.golden.save.title"), why: t("screen.golden.save.why"), action: t("screen.golden.save.action"),
      steps: [{ text: t("screen.golden.save.who"), fields: [] }],
      send: async () => {
        const made = await this.#ask({ save: true })
        return { state: "VALID", words: [t("screen.golden.saved", { version: made.saved?.version ?? "", name: made.saved?.name ?? "" })] }
      },
    }, () => this.#drawVersions()).element
  }

  async #drawVersions() {
    try {
      const page = /** @type {Api.Page<Api.GoldenVersion>} */ (await get(this.#path, this.#closed.signal))
      put(this.#versions, new VersionCompare(this.#path, page.items, this.#closed.signal).element)
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#versions, failed(failure, () => this.#drawVersions()))
    }
  }
}

// Across: is it this unit, or all of them? One unit beside every unit of its product in its tuning.
import { get, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { signedDb } from "../format.js"
import { takesText } from "../keys.js"
import { recall } from "../memory.js"
import { go, hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t, tOf } from "../texts.js"
import { DotPlot } from "./dot-plot.js"
import { LikeLists } from "./like-lists.js"

/** @type {import("../screens.js").StartScreen} */
export function startAcross(host, route) {
  const serial = route.name ?? remembered()
  return serial ? new AcrossScreen(host, serial, route.query.tuning ?? null) : askFirst(host)
}

function remembered() {
  const value = recall("unit")
  return typeof value === "string" ? value : null
}

/** @param {HTMLElement} host @returns {import("../screens.js").Screen} */
function askFirst(host) {
  put(host, stateOf("WAITING", t("screen.across.none.title"), t("screen.across.none.mend"), el("a", { class: "button", href: "#/unit" }, t("screen.across.none.go"))))
  return { close() {} }
}

class AcrossScreen {
  #host
  #serial
  #tuning
  #closed = new AbortController()
  #plot = new DotPlot((point) => go("unit", point.serial, { inspection: point.inspection }))
  /** @type {HTMLButtonElement[]} */
  #rows = []
  /** @type {Api.UnitAcross | null} */
  #across = null
  #at = 0

  /** @param {HTMLElement} host @param {string} serial @param {string | null} tuning */
  constructor(host, serial, tuning) {
    this.#host = host
    this.#serial = serial
    this.#tuning = tuning
    this.#load()
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key === "Escape") {
      go("unit", this.#serial)
      return true
    }
    if (takesText(event.target) || !this.#across) return false
    if (event.key === "ArrowDown" || event.key === "ArrowUp") return this.#walk(event.key === "ArrowDown" ? 1 : -1)
    return this.#plot.key(event)
  }

  async #load() {
    put(this.#host, busy(t("screen.across.loading", { serial: this.#serial })))
    const path = `/api/units/${encodeURIComponent(this.#serial)}`
    try {
      const query = this.#tuning ? `?tuning=${encodeURIComponent(this.#tuning)}` : ""
      const unit = /** @type {Api.Unit} */ (await get(path, this.#closed.signal))
      this.#draw(/** @type {Api.UnitAcross} */ (await get(`${path}/across${query}`, this.#closed.signal)), unit)
    } catch (failure) {
      if (this.#closed.signal.aborted) return
      const nothing = failure instanceof Problem && [404, 409].includes(failure.document.status)
      put(this.#host, nothing ? stateOf("WAITING", t("screen.across.nothing"), /** @type {Problem} */ (failure).document.detail ?? "",
        el("a", { class: "button", href: "#/unit" }, t("screen.across.none.go"))) : failed(failure, () => this.#load()))
    }
  }

  /** @param {Api.UnitAcross} across @param {Api.Unit} unit */
  #draw(across, unit) {
    this.#across = across
    this.#rows = across.measures.map((measure, i) => this.#row(measure, i))
    put(this.#host, el("section", { class: "across" },
      el("header", { class: "across-head" }, el("a", { class: "back", href: hashOf("unit", across.serial) }, t("screen.across.unit")),
        el("h1", {}, t("screen.across.title", { serial: across.serial })),
        el("nav", { class: "chips", "aria-label": t("screen.across.tunings") }, unit.tunings.filter((one) => one.verdict).map((one) => el("a", {
          class: "chip", href: hashOf("across", across.serial, { tuning: one.tuning }), "aria-current": one.tuning === across.tuning ? "true" : null }, one.tuning)))),
      el("p", { class: "across-answer" }, across.answer),
      el("p", { class: "quiet" }, t("screen.across.compared", { units: across.units, batches: across.batches }), " ", across.notes.join(" ")),
      el("div", { class: "across-body" },
        el("section", { class: "measure-list" }, el("h2", {}, t("screen.across.measures")), el("ul", {}, this.#rows.map((row) => el("li", {}, row)))),
        this.#plot.element),
      new LikeLists(across).element))
    const first = across.measures.findIndex((measure) => measure.region === across.region && measure.what === "worst-difference")
    this.#choose(Math.max(0, first))
  }

  /** @param {Api.AcrossMeasure} measure @param {number} i */
  #row(measure, i) {
    const place = measure.percentile === null ? "" : t("screen.across.percentile", { share: Math.round(measure.percentile * 100) })
    return /** @type {HTMLButtonElement} */ (el("button", { type: "button", on: { click: () => this.#choose(i) } },
      el("span", { class: "measure-name" }, measure.region, " \u00b7 ", tOf("screen.across.what.", measure.what)),
      el("span", { class: "measure-value" }, `${signedDb(measure.value)} dB`),
      el("span", { class: measure.standsApart ? "apart" : "more" }, measure.standsApart ? t("screen.across.apart", { place }) : place)))
  }

  /** @param {number} step @returns {boolean} */
  #walk(step) {
    const next = Math.max(0, Math.min(this.#rows.length - 1, this.#at + step))
    if (next === this.#at) return false
    this.#choose(next)
    this.#rows[next].scrollIntoView({ block: "nearest" })
    return true
  }

  /** @param {number} i */
  #choose(i) {
    const across = /** @type {Api.UnitAcross} */ (this.#across)
    this.#at = i
    this.#rows.forEach((row, place) => row.setAttribute("aria-current", String(place === i)))
    const measure = across.measures[i]
    this.#plot.show(across, i, `${measure.region} \u00b7 ${tOf("screen.across.what.", measure.what)}, dB`)
  }
}

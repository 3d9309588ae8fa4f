// Outside report: somebody else's curves of a unit held against its record, and the answer in plain sentences.
import { get, postParts, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { localTime } from "../format.js"
import { takesText } from "../keys.js"
import { recall, remember } from "../memory.js"
import { go, hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t, tOf } from "../texts.js"
import { Answer } from "./answer.js"
import { CurveFiles } from "./curve-files.js"
import { RigFacts } from "./rig-facts.js"

/** @type {import("../screens.js").StartScreen} */
export function startOutside(host, route) {
  return route.name ? new OutsideScreen(host, route.name, route.second ?? null) : askSerial(host)
}

/** @param {HTMLElement} host @returns {import("../screens.js").Screen} */
function askSerial(host) {
  const unit = recall("unit")
  const input = /** @type {HTMLInputElement} */ (el("input", { id: "outside-serial", type: "text", value: typeof unit === "string" ? unit : "", autocomplete: "off", spellcheck: "false", maxlength: 64 }))
  put(host, el("section", { class: "page" }, el("h1", {}, t("screen.outside.title")), el("p", {}, t("screen.outside.why")),
    el("form", { class: "unit-search", on: { submit: (/** @type {Event} */ event) => {
      event.preventDefault()
      if (input.value.trim()) go("outside", input.value.trim().normalize("NFC"))
    } } }, el("label", { for: "outside-serial" }, t("screen.outside.serial")), input, el("button", { type: "submit", class: "button" }, t("screen.outside.open")))))
  input.focus()
  input.select()
  return { close() {} }
}

class OutsideScreen {
  #host
  #serial
  #closed = new AbortController()
  #files = new CurveFiles(() => this.#changed())
  /** @type {RigFacts | null} */
  #facts = null
  #answer = new Answer()
  #problem = el("div", { class: "outside-problem", role: "alert" })
  #kept = el("div", { class: "outside-kept" })
  #compare = /** @type {HTMLButtonElement} */ (el("button", { type: "submit", class: "button primary" }, t("screen.outside.compare")))
  #keep = /** @type {HTMLButtonElement} */ (el("button", { type: "button", class: "button", on: { click: () => this.#send(true) } }, t("screen.outside.keep")))

  /** @param {HTMLElement} host @param {string} serial @param {string | null} report opened first */
  constructor(host, serial, report) {
    this.#host = host
    this.#serial = serial
    this.#load(report)
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
    return takesText(event.target) ? false : this.#answer.key(event)
  }

  get #path() {
    return `/api/units/${encodeURIComponent(this.#serial)}/outside-reports`
  }

  /** @param {string | null} report */
  async #load(report) {
    put(this.#host, busy(t("screen.unit.loading", { serial: this.#serial })))
    try {
      const unit = /** @type {Api.Unit} */ (await get(`/api/units/${encodeURIComponent(this.#serial)}`, this.#closed.signal))
      remember("unit", unit.serial)
      this.#facts = new RigFacts(unit.tunings.filter((tuning) => tuning.inspection).map((tuning) => tuning.tuning), () => this.#changed())
      this.#draw(unit, this.#facts)
      await this.#list(report)
    } catch (failure) {
      if (this.#closed.signal.aborted) return
      const unknown = failure instanceof Problem && failure.document.status === 404
      put(this.#host, el("section", { class: "page" }, unknown
        ? stateOf("WAITING", t("screen.unit.unknown.title", { serial: this.#serial }), t("screen.unit.unknown.mend"), el("a", { href: hashOf("outside") }, t("screen.outside.another")))
        : failed(failure, () => this.#load(report))))
    }
  }

  /** @param {Api.Unit} unit @param {RigFacts} facts */
  #draw(unit, facts) {
    put(this.#host, el("div", { class: "outside" },
      el("header", {}, el("h1", {}, t("screen.outside.of", { serial: unit.serial })),
        el("p", {}, unit.productName ?? unit.product, " \u00b7 ", el("a", { href: hashOf("unit", unit.serial) }, t("screen.outside.record")))),
      el("form", { class: "outside-form", on: { submit: (/** @type {Event} */ event) => { event.preventDefault(); this.#send(false) } } },
        this.#files.element, facts.element, el("div", { class: "outside-actions" }, this.#compare, this.#keep), this.#problem),
      this.#answer.element, this.#kept))
    this.#changed()
    this.#files.focus()
  }

  #changed() {
    const ready = this.#files.ready
    this.#compare.disabled = !ready
    this.#keep.disabled = !ready
    put(this.#problem)
  }

  /** @param {boolean} keep */
  async #send(keep) {
    if (!this.#facts) return
    put(this.#problem)
    this.#compare.disabled = this.#keep.disabled = true
    try {
      const parts = /** @type {[string, any][]} */ ([["report", this.#facts.facts()], ...this.#files.parts()])
      const answer = /** @type {Api.OutsideReport} */ (await postParts(`${this.#path}${keep ? "" : "?keep=false"}`, parts))
      this.#answer.show(answer)
      if (keep) await this.#list(answer.id)
    } catch (failure) {
      put(this.#problem, failed(failure))
    } finally {
      this.#compare.disabled = this.#keep.disabled = !this.#files.ready
    }
  }

  /** @param {string | null} open */
  async #list(open) {
    const { items } = /** @type {{ items: Api.OutsideReport[] }} */ (await get(this.#path, this.#closed.signal))
    const chosen = items.find((item) => item.id === open) ?? (this.#answer.empty ? items[0] : undefined)
    if (chosen) this.#answer.show(chosen)
    put(this.#kept, el("h2", {}, t("screen.outside.kept")), items.length
      ? el("ul", {}, items.map((item) => el("li", {}, el("button", { type: "button", class: "button quiet", on: { click: () => this.#answer.show(item) } },
        `${localTime(item.receivedAt)} \u00b7 ${item.source?.name ?? t("screen.outside.noName")} \u00b7 ${tOf("screen.outcome.", item.outcome)}`))))
      : el("p", { class: "quiet" }, t("screen.outside.noneKept")))
  }
}

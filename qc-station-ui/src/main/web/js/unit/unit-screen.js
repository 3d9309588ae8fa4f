// Unit: everything about one pair by its serial number.
import { get, Offline, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { takesText } from "../keys.js"
import { remember } from "../memory.js"
import { PairPlots } from "../plot/pair-plots.js"
import { hasCurves } from "../plot/response-panel.js"
import { howMeasured, OF_A_PAIR } from "../how-measured.js"
import { conditionalWords, idleNoiseBlock, spreadBlock } from "../quality-words.js"
import { PrintButton } from "../print/print-button.js"
import { regionsTable } from "../regions.js"
import { go, hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { busy, failed, stateOf } from "../states.js"
import { t, tOf } from "../texts.js"
import { certificateButton } from "./certificate-button.js"
import { History } from "./history.js"
import { storySection } from "./story.js"
import { attemptsTable, factsList } from "./record-facts.js"

/** @type {import("../screens.js").StartScreen} */
export function startUnit(host, route) {
  return route.name ? new UnitScreen(host, route.name, route.query.inspection ?? null) : askSerial(host)
}

/** @param {HTMLElement} host @returns {import("../screens.js").Screen} */
function askSerial(host) {
  put(host, el("section", { class: "page" }, el("h1", {}, t("screen.unit.ask.title")), el("p", {}, t("screen.unit.ask.why")), searchForm("")))
  host.querySelector("input")?.focus()
  return { close() {} }
}

/** @param {string} serial */
function searchForm(serial) {
  const input = /** @type {HTMLInputElement} */ (el("input", { id: "unit-serial", type: "text", value: serial, autocomplete: "off", spellcheck: "false", maxlength: 64 }))
  return el("form", { class: "unit-search", role: "search", on: { submit: (/** @type {Event} */ event) => {
    event.preventDefault()
    if (input.value.trim()) go("unit", input.value.trim().normalize("NFC"))
  } } }, el("label", { for: "unit-serial" }, t("screen.unit.serial")), input, el("button", { type: "submit", class: "button" }, t("screen.unit.open")))
}

class UnitScreen {
  #host
  #serial
  #closed = new AbortController()
  #panel = new PairPlots()
  #record = el("section", { class: "record" })
  #wanted
  /** @type {History | null} */
  #history = null
  /** @type {PrintButton | null} of the inspection on the screen */
  #print = null

  /** @param {HTMLElement} host @param {string} serial @param {string | null} wanted inspection to open first */
  constructor(host, serial, wanted) {
    this.#host = host
    this.#serial = serial
    this.#wanted = wanted
    this.#load()
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key === "Escape") {
      history.back()
      return true
    }
    if (this.#print?.key(event)) return true
    if (takesText(event.target)) return false
    if (event.key === "ArrowDown" || event.key === "ArrowUp") return this.#history?.walk(event.key === "ArrowDown" ? 1 : -1) ?? false
    return this.#panel.key(event)
  }

  async #load() {
    put(this.#host, busy(t("screen.unit.loading", { serial: this.#serial })))
    try {
      const unit = /** @type {Api.Unit} */ (await get(`/api/units/${encodeURIComponent(this.#serial)}`, this.#closed.signal))
      remember("unit", unit.serial)
      this.#draw(unit)
    } catch (failure) {
      if (this.#closed.signal.aborted) return
      const unknown = failure instanceof Problem && failure.document.status === 404
      put(this.#host, el("section", { class: "page" }, unknown
        ? stateOf("WAITING", t("screen.unit.unknown.title", { serial: this.#serial }), t("screen.unit.unknown.mend"))
        : failed(failure, () => this.#load()), searchForm(this.#serial)))
    }
  }

  /** @param {Api.Unit} unit */
  #draw(unit) {
    this.#history = new History(unit.inspections, (inspection) => this.#open(inspection.id))
    put(this.#host, el("div", { class: "unit" },
      el("header", { class: "unit-head" },
        el("div", { class: `unit-verdict state-${unit.verdict.toLowerCase()}` }, shape(unit.verdict), el("span", { class: "unit-word" }, tOf("screen.word.", unit.verdict))),
        el("div", { class: "unit-about" }, el("h1", {}, unit.serial),
          el("p", {}, unit.productName ?? unit.product, " \u00b7 ", el("a", { href: hashOf("batch", unit.batch, { product: unit.product }) }, unit.batch)),
          el("ul", { class: "tunings" }, unit.tunings.map((tuning) => tuningState(tuning)))),
        certificateButton(`/api/units/${encodeURIComponent(unit.serial)}/certificate`, t("screen.certificate.unit"))),
      el("div", { class: "unit-side" }, searchForm(""), this.#history.element), el("section", { class: "unit-plot" }, this.#panel.choices, this.#panel.element), this.#record, storySection(unit.serial, this.#closed.signal)))
    const first = unit.inspections.find((inspection) => inspection.id === this.#wanted) ?? this.#history.newest()
    if (first) this.#open(first.id)
    else this.#panel.clear(t("screen.unit.none"))
  }

  /** @param {string} id */
  async #open(id) {
    this.#history?.mark(id)
    this.#wanted = id
    history.replaceState(null, "", hashOf("unit", this.#serial, { inspection: id }))
    const stale = () => this.#closed.signal.aborted || this.#wanted !== id
    try {
      const inspection = /** @type {Api.Inspection} */ (await get(`/api/inspections/${id}`, this.#closed.signal))
      if (stale()) return
      this.#drawRecord(inspection)
      if (!hasCurves(inspection)) return this.#panel.clear(t("screen.plot.none"))
      const curves = /** @type {Api.Curves} */ (await get(`/api/inspections/${id}/curves`, this.#closed.signal))
      if (!stale()) this.#panel.show(curves, inspection)
    } catch (failure) {
      if (stale()) return
      if (!(failure instanceof Problem || failure instanceof Offline)) throw failure
      this.#panel.clear(failure instanceof Problem ? t("screen.plot.none") : t("screen.plot.offline"))
    }
  }

  /** @param {Api.Inspection} inspection */
  #drawRecord(inspection) {
    const word = inspection.verdict ?? inspection.lastAttempt ?? "INCOMPLETE"
    this.#print = new PrintButton(inspection)
    put(this.#record,
      el("h2", { class: `record-word state-${word.toLowerCase()}` }, shape(word), el("span", {}, tOf("screen.word.", word)),
        conditionalWords(inspection) ? el("span", { class: "conditional" }, conditionalWords(inspection)) : null),
      inspection.reasons.length ? el("ol", { class: "record-reasons" }, inspection.reasons.map((reason) => el("li", {}, reason.text)))
        : el("p", { class: "quiet" }, inspection.verdict === "PASS" ? t("screen.verdict.allInside") : t("screen.unit.noReason")),
      certificateButton(inspection.links?.certificate ?? `/api/inspections/${inspection.id}/certificate`, t("screen.certificate.inspection")),
      this.#print.element,
      regionsTable(inspection.regions ?? [], inspection.reasons), idleNoiseBlock(inspection), spreadBlock(inspection), howMeasured(OF_A_PAIR), attemptsTable(inspection), factsList(inspection))
  }
}

/** One tuning with its state; a recording that sounded like another tuning says so. @param {Api.Unit["tunings"][0]} tuning */
function tuningState(tuning) {
  const problem = tuning.problem && tuning.problem !== "missing" ? tuning.problemText : null
  return el("li", {}, shape(tuning.verdict ?? (problem ? "INVALID" : "INCOMPLETE")), tuning.tuning,
    el("span", { class: "more" }, tuning.verdict ? tOf("screen.word.", tuning.verdict) : problem ? "" : tuning.required ? t("screen.unit.missing") : t("screen.unit.optional"),
      problem ? el("span", { class: "tuning-problem" }, " ", problem) : null))
}

// The answer to an outside report: whether both agree, why, on one plot, by region, and what is assumed.
import { el, put } from "../dom.js"
import { DASH, frequency, percent, signedDb } from "../format.js"
import { buildChart } from "../plot/chart.js"
import { PlotRoom } from "../plot/room.js"
import { halfSpan } from "../plot/scales.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

/** @type {Record<string, string>} */
const SHAPES = { AGREES: "PASS", DISAGREES: "FAIL", CANNOT_TELL: "INVALID", NOT_COMPARED: "INCOMPLETE" }

/** @typedef {(number | null)[]} Values */

export class Answer {
  element = el("section", { class: "answer", "aria-live": "polite" })
  /** @type {Api.OutsideReport | null} */
  #report = null
  #readout = el("p", { class: "answer-readout", role: "status" })
  #room = new PlotRoom("answer-room", (host, width, height) => this.#chart(host, width, height))
  #index = 128
  /** @type {ReturnType<typeof buildChart> | null} */
  #plot = null

  get empty() {
    return this.#report === null
  }

  /** @param {Api.OutsideReport} report */
  show(report) {
    this.#report = report
    const kind = SHAPES[report.outcome] ?? "INCOMPLETE"
    put(this.element,
      el("div", { class: `answer-word state-${kind.toLowerCase()}` }, shape(kind), el("h2", {}, report.headline)),
      el("div", { class: "answer-lines" }, report.conclusion.map((line) => el("p", {}, line)), report.inTheBatch ? el("p", {}, report.inTheBatch) : null),
      el("p", { class: "quiet" }, t("screen.outside.against", { tuning: report.tuning, version: report.limitSetVersion, station: report.station })),
      this.#room.element, this.#readout, regionTable(report),
      listOf(t("screen.outside.assumed"), report.assumptions), listOf(t("screen.outside.asked"), report.questions),
      report.links.dossier ? el("p", { class: "dossiers" },
        el("a", { class: "button", href: report.links.dossier, target: "_blank", rel: "noopener" }, t("screen.outside.dossier")),
        el("a", { class: "button", href: `${report.links.dossier}&public=true`, target: "_blank", rel: "noopener" }, t("screen.outside.dossierPublic"))) : null)
    this.#room.refresh()
    this.#stand(this.#index)
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (!this.#report || (event.key !== "ArrowLeft" && event.key !== "ArrowRight")) return false
    this.#stand(Math.min(240, Math.max(0, this.#index + (event.key === "ArrowRight" ? 1 : -1))))
    return true
  }

  /** @param {number} index */
  #stand(index) {
    const report = this.#report
    if (!report) return
    this.#index = index
    this.#plot?.stand(index)
    const { frequencyHz, oursDb, theirsDb, limitDb } = report.curves
    put(this.#readout, t("screen.outside.readout", { hz: frequency(frequencyHz[index]), ours: signedDb(oursDb[index]), theirs: signedDb(theirsDb?.[index]), limit: signedDb(limitDb[index]).replace("+", "\u00b1") }))
  }

  /** @param {HTMLElement} host @param {number} width @param {number} height */
  #chart(host, width, height) {
    const curves = /** @type {Api.OutsideReport} */ (this.#report).curves
    const failing = new Set(/** @type {Api.OutsideReport} */ (this.#report).regions.filter((region) => region.outcome === "DISAGREES").map((region) => region.name))
    const half = halfSpan(2, 40, curves.oursDb, ...(curves.theirsDb ? [curves.theirsDb] : []))
    const minus = (/** @type {Values} */ values) => values.map((value) => (value === null ? null : -value))
    this.#plot = buildChart(host, {
      hz: curves.frequencyHz, width, height, low: -half, high: half, caption: t("screen.cloud.differenceAxis"),
      lines: [
        { name: t("screen.outside.limit"), values: curves.limitDb, colour: "golden", width: 1, dash: [2, 4] },
        { name: "", values: minus(curves.limitDb), colour: "golden", width: 1, dash: [2, 4] },
        { name: t("screen.outside.ours"), values: curves.oursDb, colour: "difference", width: 2, label: true },
        ...(curves.theirsDb ? [/** @type {import("../plot/chart.js").Line} */ ({ name: t("screen.outside.theirs"), values: curves.theirsDb, colour: "golden", width: 2, dash: [8, 5], label: true })] : []),
      ],
      bands: [
        ...(curves.theirsDb ? [around(curves.theirsDb, curves.theirExpandedDb, "golden", 0.08)] : []),
        around(curves.oursDb, curves.ourExpandedDb, "difference", 0.2),
      ],
      regions: /** @type {Api.OutsideReport} */ (this.#report).regions.map((region) => ({ name: region.name, fromHz: region.fromHz, toHz: region.toHz, failed: failing.has(region.name) })),
      specified: null, marks: [],
    }, (index) => this.#stand(index))
    this.#plot.stand(this.#index)
    return this.#plot
  }
}

/** @param {Values} middle @param {Values} half @param {import("../plot/colours.js").ColourName} colour @param {number} alpha @returns {import("../plot/chart.js").Band} */
function around(middle, half, colour, alpha) {
  const at = (/** @type {number} */ sign) => middle.map((value, i) => (value === null || half[i] === null ? null : value + sign * Number(half[i])))
  return { lower: at(-1), upper: at(1), colour, alpha }
}

/** @param {Api.OutsideReport} report */
function regionTable(report) {
  if (!report.regions.length) return null
  const head = [t("screen.outside.region"), t("screen.outside.theirsMean"), t("screen.outside.oursMean"), t("screen.outside.limit"), "E\u2099", t("screen.outside.percentile"), t("screen.outside.outcome")]
  return el("table", { class: "answer-table" }, el("caption", {}, t("screen.outside.tableCaption", { coverage: report.coverage.toFixed(2) })),
    el("thead", {}, el("tr", {}, head.map((text, place) => el("th", { scope: "col", class: place > 0 && place < 6 ? "number" : null }, text)))),
    el("tbody", {}, report.regions.map((region) => el("tr", {},
      el("th", { scope: "row" }, region.name, el("span", { class: "more" }, ` ${frequency(region.fromHz)} \u2026 ${frequency(region.toHz)}`)),
      el("td", { class: "number" }, measured(region.theirsDb, region.theirExpandedDb)), el("td", { class: "number" }, measured(region.oursDb, region.ourExpandedDb)),
      el("td", { class: "number" }, region.limitDb === null ? DASH : `\u00b1${region.limitDb.toFixed(1)}`), el("td", { class: "number" }, region.en === null ? DASH : signedEn(region.en)),
      el("td", { class: "number" }, percent(region.percentile)), el("td", {}, el("span", { class: `word state-${(SHAPES[region.outcome] ?? "INCOMPLETE").toLowerCase()}` }, tOf("screen.outcome.", region.outcome)))))))
}

/** @param {number} en */
function signedEn(en) {
  return (en < 0 ? "\u2212" : "+") + Math.abs(en).toFixed(2)
}

/** @param {number | null} value @param {number | null} expanded */
function measured(value, expanded) {
  return value === null ? DASH : `${signedDb(value)} \u00b1 ${Number(expanded).toFixed(1)}`
}

/** @param {string} title @param {string[]} lines */
function listOf(title, lines) {
  return lines.length ? el("section", { class: "answer-list" }, el("h3", {}, title), el("ul", {}, lines.map((line) => el("li", {}, line)))) : null
}

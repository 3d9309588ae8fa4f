// Gauge study: plan it, collect its measurements one seating after the other, read what it says; and the uncertainty budget it feeds.
import { get, post, postParts } from "../api.js"
import { el, put } from "../dom.js"
import { failed } from "../states.js"
import { t } from "../texts.js"
import { budgetPanel } from "./budget.js"
import { gaugeTable } from "./gauge-table.js"
import { Steps } from "./steps.js"
import { operatorField, pairStep } from "./tasks.js"
import { ChooseTuning } from "./choose-tuning.js"

export class GaugePanel {
  #station
  #stations
  #studies
  #signal
  #changed
  #tuning
  #steps = el("div", { class: "gauge-steps" })
  #facts = el("div", { class: "station-facts" })

  /** @param {string} station @param {string[]} stations all of them @param {Api.GaugeStudy[]} studies @param {AbortSignal} signal @param {() => Promise<void>} changed */
  constructor(station, stations, studies, signal, changed) {
    this.#station = station
    this.#stations = stations
    this.#studies = studies
    this.#signal = signal
    this.#changed = changed
    this.#tuning = new ChooseTuning(signal, studies, () => this.#draw())
    this.element = el("div", {}, this.#tuning.element, el("div", { class: "work-columns gauge-columns" }, this.#steps, this.#facts))
  }

  get #path() {
    return `/api/stations/${encodeURIComponent(this.#station)}`
  }

  async #draw() {
    const { product, tuning } = this.#tuning
    const own = this.#studies.filter((study) => study.product === product && study.tuning === tuning)
    const open = own.find((study) => study.state !== "complete"), done = own.find((study) => study.state === "complete")
    if (open) await this.#drawCollecting(open.id)
    else this.#drawPlan(product, tuning)
    await this.#drawResult(done)
  }

  /** @param {string} product @param {string} tuning */
  #drawPlan(product, tuning) {
    const plan = new Steps({
      title: t("screen.gauge.plan.title"), why: t("screen.gauge.plan.why"), action: t("screen.gauge.plan.action"),
      steps: [
        { text: t("screen.gauge.plan.parts"), fields: [{ name: "parts", label: t("screen.gauge.parts"), kind: "text" }] },
        { text: t("screen.gauge.plan.appraisers"), more: t("screen.gauge.plan.stations", { stations: this.#stations.join(", ") }), fields: [
          { name: "kind", label: t("screen.gauge.kind"), kind: "select", options: [["operators", t("screen.gauge.operators")], ["stations", t("screen.gauge.stations")]] },
          { name: "names", label: t("screen.gauge.names"), kind: "text" }] },
        { text: t("screen.gauge.plan.seatings"), fields: [{ name: "seatings", label: t("screen.gauge.seatings"), kind: "number", value: 3 }] },
        { text: t("screen.task.who"), fields: [operatorField()] },
      ],
      send: async ({ parts, kind, names, ...entries }) => {
        const made = /** @type {Api.GaugeStudy} */ (await post(`${this.#path}/gauge-studies`, { product, tuning, parts: listOf(parts), [kind]: listOf(names), ...entries }))
        this.#studies = [made, ...this.#studies]
        return { state: "VALID", words: [t("screen.gauge.planned", { n: made.wanted })] }
      },
    }, () => this.#changed().then(() => this.#draw()))
    put(this.#steps, plan.element)
  }

  /** @param {string} id */
  async #drawCollecting(id) {
    try {
      const study = /** @type {Api.GaugeStudy} */ (await get(`${this.#path}/gauge-studies/${id}`, this.#signal))
      const next = nextPlace(study)
      put(this.#steps, progressBar(study), next ? this.#collect(study, next).element : null, progressTable(study))
    } catch (failure) {
      if (!this.#signal.aborted) put(this.#steps, failed(failure, () => this.#drawCollecting(id)))
    }
  }

  /** @param {Api.GaugeStudy} study @param {{ part: string, appraiser: string, seating: number }} next */
  #collect(study, next) {
    const byStation = study.appraiserKind === "stations"
    return new Steps({
      title: t("screen.gauge.collect.title", { n: study.measured + 1, of: study.wanted }), action: t("screen.gauge.collect.action"),
      steps: [
        { text: t("screen.gauge.collect.mount", { part: next.part, appraiser: next.appraiser, seating: next.seating }), fields: [] },
        pairStep(t("screen.gauge.collect.measure")),
        { text: t("screen.task.who"), fields: [{ ...operatorField(), value: byStation ? undefined : next.appraiser, kept: byStation }] },
      ],
      send: async ({ left, right, operator }) => {
        const capture = { part: next.part, operator, seating: next.seating, ...(byStation ? { station: next.appraiser } : {}) }
        await postParts(`${this.#path}/gauge-studies/${study.id}/captures`, [["capture", capture], ["left", left], ["right", right]])
        return { state: "VALID", words: [t("screen.gauge.collected", { part: next.part, seating: next.seating })] }
      },
    }, () => this.#changed().then(() => this.#drawCollecting(study.id)))
  }

  /** @param {Api.GaugeStudy | undefined} done */
  async #drawResult(done) {
    const { product, tuning } = this.#tuning
    if (!done) return put(this.#facts, el("h2", {}, t("screen.gauge.result")), el("p", { class: "quiet" }, t("screen.gauge.none")))
    try {
      const [study, budget] = await Promise.all([
        get(`${this.#path}/gauge-studies/${done.id}`, this.#signal),
        get(`${this.#path}/budget?product=${product}&tuning=${tuning}`, this.#signal).catch(() => null)])
      put(this.#facts, gaugeTable(/** @type {Api.GaugeStudy} */ (study)), budgetPanel(/** @type {Api.Budget | null} */ (budget)))
    } catch (failure) {
      if (!this.#signal.aborted) put(this.#facts, failed(failure, () => this.#drawResult(done)))
    }
  }
}

/** @param {string} text names with commas or blanks between @returns {string[]} */
export function listOf(text) {
  return text.split(/[\s,;]+/).filter(Boolean)
}

/** The first measurement that is missing, part by part so that each is mounted anew. @param {Api.GaugeStudy} study */
function nextPlace(study) {
  return study.missing?.[0] ?? null
}

/** @param {Api.GaugeStudy} study */
function progressBar(study) {
  return el("p", { class: "gauge-progress" }, el("progress", { max: study.wanted, value: study.measured }), t("screen.gauge.progress", { n: study.measured, of: study.wanted }))
}

/** A row a part, a column an appraiser: how many seatings are there. @param {Api.GaugeStudy} study */
function progressTable(study) {
  const left = (/** @type {string} */ part, /** @type {string} */ appraiser) => (study.missing ?? []).filter((place) => place.part === part && place.appraiser === appraiser).length
  return el("table", { class: "gauge-plan" }, el("caption", {}, t("screen.gauge.plan.table")),
    el("thead", {}, el("tr", {}, el("th", { scope: "col" }, t("screen.gauge.part")), study.appraisers.map((name) => el("th", { scope: "col", class: "number" }, name)))),
    el("tbody", {}, study.parts.map((part) => el("tr", {}, el("th", { scope: "row" }, part), study.appraisers.map((name) => {
      const there = study.seatings - left(part, name)
      return el("td", { class: `number ${there === study.seatings ? "full" : ""}` }, t("screen.gauge.cell", { n: there, of: study.seatings }))
    })))))
}

// Station: whether it can be trusted now, what each part is worth, and the steps that mend it.
import { get } from "../api.js"
import { chooseStation } from "../bench/choose-station.js"
import { el, put } from "../dom.js"
import { howMeasured } from "../how-measured.js"
import { takesText } from "../keys.js"
import { remember } from "../memory.js"
import { go, hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { busy, failed } from "../states.js"
import { t, tOf } from "../texts.js"
import { blockPanel } from "./clearing.js"
import { correctionPlot } from "./correction-plot.js"
import { GaugePanel } from "./gauge.js"
import { cardsOf, glance } from "./glance.js"
import { Steps } from "./steps.js"
import { correctionTask, factsOf, idleFloorTask, microphoneTask, outputTask } from "./tasks.js"
import { driftCharts } from "./trends.js"
import { VerificationPanel } from "./verification.js"

/** @typedef {import("./glance.js").Part} Part */

/** @type {Part[]} */
const PARTS = ["left", "right", "output", "correction", "verification", "idle", "gauge"]
/** @type {Record<Part, import("../how-measured.js").Quantity[]>} */
const EXPLAINED = {
  left: ["microphone", "control"], right: ["microphone", "control"], output: ["output", "control"], correction: ["correction"],
  verification: ["verification", "control"], idle: ["idleNoise"], gauge: ["gauge", "uncertainty"],
}

/** @type {import("../screens.js").StartScreen} */
export function startStation(host, route) {
  if (!route.name) return chooseStation(host, "station")
  return new StationScreen(host, route.name, route.query.part)
}

class StationScreen {
  #host
  #name
  /** @type {Part} */
  #part
  #closed = new AbortController()
  #head = el("header", { class: "station-head" })
  #block = el("div", { class: "station-block" })
  #glance = el("div", { class: "station-glance" })
  #work = el("div", { class: "station-work" })
  /** @type {Api.Station | null} */
  #station = null
  /** @type {Api.Station[]} */
  #others = []
  /** @type {Api.GaugeStudy[]} */
  #studies = []

  /** @param {HTMLElement} host @param {string} name @param {string | undefined} part */
  constructor(host, name, part) {
    this.#host = host
    this.#name = name
    this.#part = PARTS.find((known) => known === part) ?? "left"
    remember("station", name)
    this.#load()
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key === "Escape") {
      go("bench", this.#name)
      return true
    }
    if (takesText(event.target) || (event.key !== "ArrowLeft" && event.key !== "ArrowRight")) return false
    if (!(event.target instanceof HTMLElement && event.target.closest(".glance"))) return false
    const at = PARTS.indexOf(this.#part) + (event.key === "ArrowRight" ? 1 : -1)
    if (!PARTS[at]) return true
    this.#choose(PARTS[at])
    const card = /** @type {HTMLElement | null} */ (this.#glance.querySelector(`[data-part="${PARTS[at]}"]`))
    card?.focus()
    return true
  }

  async #load() {
    put(this.#host, busy(t("screen.station.reading", { station: this.#name })))
    try {
      await this.#read()
      put(this.#host, el("section", { class: "station-page" }, this.#head, this.#block, this.#glance, this.#work))
      this.#draw()
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#host, failed(failure, () => this.#load()))
    }
  }

  async #read() {
    const signal = this.#closed.signal, path = `/api/stations/${encodeURIComponent(this.#name)}`
    const [station, all, studies] = await Promise.all([get(path, signal), get("/api/stations", signal), get(`${path}/gauge-studies`, signal)])
    this.#station = /** @type {Api.Station} */ (station)
    this.#others = /** @type {Api.Page<Api.Station>} */ (all).items
    this.#studies = /** @type {Api.Page<Api.GaugeStudy>} */ (studies).items
  }

  /** What was sent has changed the station; the steps and their answer stay. */
  #renew = async () => {
    try {
      await this.#read()
      this.#drawState()
    } catch {
      // the answer that has just been shown stays; the next visit reads anew
    }
  }

  #draw() {
    this.#drawState()
    this.#drawWork()
  }

  #drawState() {
    const station = /** @type {Api.Station} */ (this.#station)
    const state = station.state ?? "ready"
    const drawing = state === "ready" ? "VALID" : state === "blocked" ? "BLOCKED" : "PROBLEM"
    put(this.#head,
      el("div", { class: `station-state state-${drawing.toLowerCase()}` }, shape(drawing), el("div", {}, el("h1", {}, this.#name), el("p", { class: "state-word" }, tOf("screen.stationState.", state)))),
      el("div", { class: "station-needs-list" }, station.note ? el("p", { class: "quiet" }, station.note) : null,
        (station.needs ?? []).length ? el("ul", {}, (station.needs ?? []).map((need) => el("li", {}, need.text))) : null),
      el("nav", { class: "chips", "aria-label": t("screen.station.others") }, this.#others.map((other) => other.station ?? other.name).map((name) => el("a", {
        class: "chip", href: hashOf("station", name, { part: this.#part }), "aria-current": name === this.#name ? "true" : null }, name))))
    put(this.#block, blockPanel(this.#name, station.blocks ?? [], this.#renew))
    put(this.#glance, glance(cardsOf(station, this.#studies), this.#part, (part) => this.#choose(part)))
  }

  /** @param {Part} part */
  #choose(part) {
    this.#part = part
    history.replaceState(null, "", hashOf("station", this.#name, { part }))
    put(this.#glance, glance(cardsOf(/** @type {Api.Station} */ (this.#station), this.#studies), part, (other) => this.#choose(other)))
    this.#drawWork()
  }

  #drawWork() {
    const station = /** @type {Api.Station} */ (this.#station), part = this.#part, name = this.#name
    const how = howMeasured(EXPLAINED[part])
    if (part === "verification") return put(this.#work, new VerificationPanel(name, station.verifications ?? [], this.#closed.signal, this.#renew).element, how)
    if (part === "gauge") return put(this.#work, new GaugePanel(name, this.#others.map((other) => other.station ?? other.name), this.#studies, this.#closed.signal, this.#renew).element, how)
    const task = part === "output" ? outputTask(name, station.output) : part === "correction" ? correctionTask(name) : part === "idle" ? idleFloorTask(name)
      : microphoneTask(name, part, station.microphones?.[part])
    const facts = el("div", { class: "station-facts" })
    const draw = () => this.#drawFacts(facts, part)
    draw()
    const steps = new Steps(task, () => this.#renew().then(draw))
    put(this.#work, el("div", { class: "work-columns" }, steps.element, facts), how)
  }

  /** @param {HTMLElement} host @param {Part} part */
  #drawFacts(host, part) {
    const station = /** @type {Api.Station} */ (this.#station)
    const facts = factsOf(station, part)
    const charts = el("div", { class: "charts" })
    put(host, el("h2", {}, t("screen.station.now")), facts.length ? el("dl", { class: "facts-list" }, facts.map(([label, value]) => el("div", {}, el("dt", {}, label), el("dd", {}, value))))
      : el("p", { class: "quiet" }, t("screen.station.never")), part === "correction" ? correctionPlot(station.correction) : null, charts)
    if (part === "left" || part === "right" || part === "output") {
      driftCharts(this.#name, part, this.#closed.signal).then((chart) => put(charts, chart), () => put(charts))
    }
  }
}

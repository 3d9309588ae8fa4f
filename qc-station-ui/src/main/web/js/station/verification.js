// Shift verification: the steps with the reference unit, what came of the last ones, and the trend of each region.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { isNumber, localTime, signedDb } from "../format.js"
import { shape } from "../shapes.js"
import { failed } from "../states.js"
import { t, tOf } from "../texts.js"
import { ChooseTuning } from "./choose-tuning.js"
import { Steps } from "./steps.js"
import { certifyTask, verificationTask } from "./tasks.js"
import { trendChart } from "./trends.js"

/** Verifications listed; the trend has more. */
const LISTED = 6
/** Control charts shown at once. */
const FIRST_CHARTS = 2

export class VerificationPanel {
  #station
  #signal
  #changed
  #tuning
  #steps = el("div", { class: "verification-steps" })
  #facts = el("div", { class: "station-facts" })

  /** @param {string} station @param {{ product: string, tuning: string }[]} last its newest verifications @param {AbortSignal} signal @param {() => void} changed */
  constructor(station, last, signal, changed) {
    this.#station = station
    this.#signal = signal
    this.#changed = changed
    this.#tuning = new ChooseTuning(signal, last, () => this.#load(true))
    this.element = el("div", {}, this.#tuning.element, el("div", { class: "work-columns" }, this.#steps, this.#facts))
  }

  /** @param {boolean} anew whether the steps are drawn anew too */
  async #load(anew) {
    const { product, tuning } = this.#tuning, path = `/api/stations/${encodeURIComponent(this.#station)}`
    try {
      const [units, made] = await Promise.all([get(`${path}/reference-units`, this.#signal), get(`${path}/verifications?product=${product}&tuning=${tuning}`, this.#signal)])
      const own = /** @type {Api.Page<Api.ReferenceUnit>} */ (units).items.filter((unit) => unit.product === product && unit.tuning === tuning)
      if (anew) this.#drawSteps(own)
      this.#drawFacts(/** @type {Api.Verifications} */ (made))
    } catch (failure) {
      if (!this.#signal.aborted) put(this.#facts, failed(failure, () => this.#load(anew)))
    }
  }

  /** @param {Api.ReferenceUnit[]} units */
  #drawSteps(units) {
    const { product, tuning } = this.#tuning
    const valid = units.filter((unit) => unit.valid).map((unit) => unit.serial)
    const certify = new Steps(certifyTask(this.#station, product, tuning), () => this.#load(true))
    if (!valid.length) return put(this.#steps, el("p", {}, units.length ? t("screen.verification.expired") : t("screen.verification.noUnit")), certify.element)
    const verify = new Steps(verificationTask(this.#station, product, tuning, valid), () => {
      this.#changed()
      this.#load(false)
    })
    put(this.#steps, verify.element, el("details", {}, el("summary", {}, t("screen.verification.another")), certify.element))
  }

  /** @param {Api.Verifications} made */
  #drawFacts(made) {
    put(this.#facts, el("h2", {}, t("screen.verification.last")),
      made.items.length ? verificationTable(made.items.slice(0, LISTED)) : el("p", { class: "quiet" }, t("screen.verification.none")),
      made.trends.length ? el("h2", {}, t("screen.drift.title")) : null,
      trendCharts(made.trends), made.trends.length ? el("p", { class: "plot-note" }, made.method) : null)
  }
}

/** @param {Api.Verification[]} items newest first */
function verificationTable(items) {
  return el("table", { class: "verifications" },
    el("thead", {}, el("tr", {}, [t("screen.attempts.when"), t("screen.field.referenceUnit"), t("screen.attempts.outcome"), t("screen.verification.worst")].map((title) => el("th", { scope: "col" }, title)))),
    el("tbody", {}, items.map((item) => {
      const worst = item.regions.filter((region) => isNumber(region.deviationDb)).reduce((/** @type {Api.VerificationRegion | null} */ a, b) =>
        a && Math.abs(a.deviationDb ?? 0) >= Math.abs(b.deviationDb ?? 0) ? a : b, null)
      return el("tr", {}, el("td", {}, localTime(item.measuredAt)), el("td", {}, item.referenceUnit),
        el("td", {}, el("span", { class: `outcome state-${item.passed ? "valid" : "blocked"}` }, shape(item.passed ? "VALID" : "BLOCKED"), item.passed ? t("screen.verification.repeats") : t("screen.verification.strays")),
          item.cleared ? el("span", { class: "more" }, t("screen.verification.cleared", { engineer: item.cleared.engineer ?? "\u2013", reason: tOf("station.clearing.", item.cleared.reason) })) : null),
        el("td", {}, worst ? t("screen.verification.worstWords", { deviation: worst.deviationDb, region: worst.region, channel: worst.channel }) : signedDb(null)))
    })))
}

/** The charts that signal or lie farthest come first; the others are one press away. @param {Api.Trend[]} trends */
function trendCharts(trends) {
  const reach = (/** @type {Api.Trend} */ trend) => Math.max(...trend.points.map((point) => Math.abs(point.deviationDb) + (point.signals ? 100 : 0)))
  const ranked = [...trends].sort((a, b) => reach(b) - reach(a)).map(trendChart)
  const rest = ranked.slice(FIRST_CHARTS)
  return el("div", {}, el("div", { class: "charts" }, ranked.slice(0, FIRST_CHARTS)),
    rest.length ? el("details", {}, el("summary", {}, t("screen.drift.more", { n: rest.length })), el("div", { class: "charts" }, rest)) : null)
}

// What the limit set risks on this batch: passing a bad unit, refusing a good one. Asked for when it is opened.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { DASH, frequency, isNumber } from "../format.js"
import { busy, failed } from "../states.js"
import { t, tOf } from "../texts.js"

/** @typedef {{ risk: number, atHz: number | null, uDb: number }} Risk */
/** @typedef {{ check: string, region: string | null, channel: string | null, consumers: Risk | null, producers: Risk | null }} RiskRow */
/** @typedef {{ checks: RiskRow[], method: string, notes: string[] }} Risks */

/** @param {Api.Statistics} statistics @param {AbortSignal} signal @returns {HTMLElement} */
export function riskBlock(statistics, signal) {
  const body = el("div", { class: "risk-body" })
  let asked = false
  const ask = () => {
    if (asked) return
    asked = true
    put(body, busy(t("screen.risk.loading")))
    const query = new URLSearchParams({ product: statistics.product, tuning: statistics.tuning, limitSet: String(Math.max(...statistics.limitSets)) })
    get(`/api/batches/${encodeURIComponent(statistics.batch)}/risks?${query}`, signal)
      .then((risks) => put(body, drawn(/** @type {Risks} */ (risks))), (failure) => { asked = false; put(body, failed(failure, ask)) })
  }
  return el("details", { class: "how risks", on: { toggle: ask } }, el("summary", {}, t("screen.risk.title")), body)
}

/** @param {Risks} risks @returns {HTMLElement[]} */
function drawn(risks) {
  const titles = [t("screen.risk.check"), t("screen.risk.consumers"), t("screen.risk.producers"), t("screen.risk.u")]
  return [
    el("table", {}, el("thead", {}, el("tr", {}, titles.map((title) => el("th", { scope: "col" }, title)))),
      el("tbody", {}, risks.checks.map((row) => el("tr", {}, el("th", { scope: "row" }, nameOf(row)),
        el("td", {}, words(row.consumers)), el("td", {}, words(row.producers)), el("td", {}, row.consumers ? row.consumers.uDb.toFixed(2) : DASH))))),
    el("p", { class: "more" }, risks.method),
    ...risks.notes.map((note) => el("p", { class: "more" }, note)),
  ]
}

/** @param {RiskRow} row */
function nameOf(row) {
  return [row.region, tOf("word.", row.check), row.channel ? tOf("word.", row.channel) : null].filter(Boolean).join(", ")
}

/** @param {Risk | null} risk */
function words(risk) {
  if (!risk || !isNumber(risk.risk)) return DASH
  const share = risk.risk < 0.0001 ? t("screen.risk.tiny") : `${(100 * risk.risk).toFixed(2)}\u202f%`
  return risk.atHz === null ? share : `${share} \u00b7 ${frequency(risk.atHz)}`
}

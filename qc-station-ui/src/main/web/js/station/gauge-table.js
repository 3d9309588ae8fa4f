// What a gauge study says: spreads by source for each region and quantity, with the share that measuring has in all that spreads.
import { el } from "../dom.js"
import { isNumber, localTime } from "../format.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"
import { number } from "./budget.js"

/** Above it measuring has too large a share (common practice, no source). */
const TOO_MUCH_PERCENT = 30

/** @param {Api.GaugeStudy} study a complete one @returns {HTMLElement} */
export function gaugeTable(study) {
  const analysis = study.analysis
  return el("section", { class: "gauge-result" }, el("h2", {}, t("screen.gauge.result")),
    el("p", { class: "quiet" }, t("screen.gauge.studied", { parts: study.parts.length, appraisers: study.appraisers.length, seatings: study.seatings, when: localTime(study.validUntil) })),
    analysis ? el("div", {}, rowsTable([...analysis.regions, ...analysis.numbers]), el("p", { class: "plot-note" }, analysis.method)) : el("p", { class: "quiet" }, t("screen.gauge.noSet")))
}

/** @param {Api.GaugeRow[]} rows */
function rowsTable(rows) {
  const titles = [t("screen.gauge.region"), t("screen.gauge.quantity"), t("screen.gauge.repeat"), t("screen.gauge.appraiser"), t("screen.gauge.interaction"), t("screen.gauge.grr"),
    t("screen.gauge.partSpread"), t("screen.gauge.grrPercent"), t("screen.gauge.ndc")]
  return el("table", { class: "gauge-table" }, el("caption", {}, t("screen.gauge.caption")),
    el("thead", {}, el("tr", {}, titles.map((title, i) => el("th", { scope: "col", class: i > 1 ? "number" : null }, title)))),
    el("tbody", {}, rows.map((row) => {
      const r = row.result
      const large = isNumber(r?.grrPercent) && r.grrPercent > TOO_MUCH_PERCENT
      return el("tr", {}, el("th", { scope: "row" }, row.region ?? ""), el("td", {}, tOf("screen.quantity.", row.quantity)),
        number(r?.repeatDb), number(r?.appraiserDb), r?.pooled ? el("td", { class: "number quiet" }, t("screen.gauge.pooled")) : number(r?.interactionDb), number(r?.grrDb), number(r?.partDb),
        el("td", { class: "number" }, large ? shape("PROBLEM") : null, isNumber(r?.grrPercent) ? `${r.grrPercent.toFixed(0)}\u202f%` : "\u2013"),
        el("td", { class: "number" }, isNumber(r?.ndc) ? r.ndc.toFixed(1) : "\u2013"))
    })))
}

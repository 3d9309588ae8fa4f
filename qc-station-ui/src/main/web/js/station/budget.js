// The uncertainty budget of a station: sources in rows, what they make uncertain in columns; and the largest of each region.
import { el } from "../dom.js"
import { frequency, isNumber } from "../format.js"
import { nearestIndex } from "../plot/scales.js"
import { t } from "../texts.js"

/** @param {Api.Budget | null} budget @returns {HTMLElement} */
export function budgetPanel(budget) {
  if (!budget) return el("section", {}, el("h2", {}, t("screen.budget.title")), el("p", { class: "quiet" }, t("screen.budget.none")))
  return el("section", { class: "budget" }, el("h2", {}, t("screen.budget.title")),
    sourceTable(budget), regionTable(budget), el("p", { class: "plot-note" }, budget.method))
}

/** @param {Api.Budget} budget */
function sourceTable(budget) {
  const deviation = largestAt(budget, "deviation"), match = largestAt(budget, "match")
  const at = (/** @type {Api.Values | undefined} */ values, /** @type {number | null} */ hz) => (hz === null ? null : values?.[nearestIndex(budget.frequencyHz, hz)])
  const columns = [t("screen.budget.level"), t("screen.budget.balance"), t("screen.budget.deviationAt", { frequency: deviation ?? NaN }), t("screen.budget.matchAt", { frequency: match ?? NaN })]
  const { level, balance } = budget
  const rows = /** @type {[string, (number | null | undefined)[]][]} */ ([
    [t("screen.budget.repeat", { n: budget.seatings }), [level.repeatDb, balance.repeatDb, at(budget.deviation.repeatDb, deviation), at(budget.match.repeatDb, match)]],
    [t("screen.budget.reproducibility"), [level.reproducibilityDb, balance.reproducibilityDb, at(budget.deviation.reproducibilityDb, deviation), at(budget.match.reproducibilityDb, match)]],
    [t("screen.budget.calibrator"), [level.calibratorDb, null, null, null]],
    [t("screen.budget.correction"), [null, balance.correctionDb, null, at(budget.match.correctionDb, match)]],
    [t("screen.budget.combined"), [level.combinedDb, balance.combinedDb, at(budget.deviation.combinedDb, deviation), at(budget.match.combinedDb, match)]],
    [t("screen.budget.expanded"), [level.expandedDb, balance.expandedDb, at(budget.deviation.expandedDb, deviation), at(budget.match.expandedDb, match)]],
  ])
  return el("table", { class: "budget-sources" }, el("caption", {}, t("screen.budget.caption")),
    el("thead", {}, el("tr", {}, el("th", { scope: "col" }, t("screen.budget.source")), columns.map((title) => el("th", { scope: "col", class: "number" }, title)))),
    el("tbody", {}, rows.map(([name, values], i) => el("tr", { class: i > 3 ? "total" : null }, el("th", { scope: "row" }, name), values.map((value) => number(value))))))
}

/** @param {Api.Budget} budget */
function regionTable(budget) {
  return el("table", { class: "budget-regions" }, el("caption", {}, t("screen.budget.regions")),
    el("thead", {}, el("tr", {}, [t("screen.gauge.region"), t("screen.how.deviation"), t("screen.how.difference")].map((title, i) => el("th", { scope: "col", class: i ? "number" : null }, title)))),
    el("tbody", {}, budget.regions.map((region) => el("tr", {}, el("th", { scope: "row" }, region.region),
      number(region.deviationExpandedDb, region.deviationAtHz), number(region.matchExpandedDb, region.matchAtHz)))))
}

/** Where the largest expanded uncertainty of all regions is. @param {Api.Budget} budget @param {"deviation" | "match"} what @returns {number | null} Hz */
function largestAt(budget, what) {
  const found = budget.regions.map((region) => what === "deviation" ? { db: region.deviationExpandedDb, hz: region.deviationAtHz } : { db: region.matchExpandedDb, hz: region.matchAtHz })
    .filter((one) => isNumber(one.db) && isNumber(one.hz)).sort((a, b) => Number(b.db) - Number(a.db))
  return found[0]?.hz ?? null
}

/** Uncertainties are small: two decimals. @param {number | null | undefined} value @param {number | null} [hz] where */
export function number(value, hz) {
  return el("td", { class: "number" }, isNumber(value) ? value.toFixed(2) : "\u2013", isNumber(hz) ? el("span", { class: "at" }, frequency(hz)) : null)
}

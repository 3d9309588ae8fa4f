// The table of checks: a row a region, window margins of both channels and the match margin; level, balance and polarity above them.
import { el } from "./dom.js"
import { db, frequency, isNumber, signedDb } from "./format.js"
import { shape } from "./shapes.js"
import { t, tOf } from "./texts.js"

/** @param {Api.RegionResult[]} results @param {Api.Reason[]} reasons @returns {HTMLElement} */
export function regionsTable(results, reasons) {
  const wholes = results.filter((result) => !result.name)
  const names = [...new Set(results.filter((result) => result.name).map((result) => /** @type {string} */ (result.name)))]
  return el("table", { class: "regions" },
    el("caption", {}, t("screen.regions.caption")),
    el("thead", {}, el("tr", {}, [t("screen.regions.region"), t("screen.regions.left"), t("screen.regions.right"), t("screen.regions.match")]
      .map((title, i) => el("th", { scope: "col", class: ["", "left", "right", "difference"][i] }, title)))),
    el("tbody", {}, results.length ? null : el("tr", {}, el("td", { class: "unjudged", colspan: 4 }, t("screen.regions.empty"))),
      wholeRows(wholes, reasons), names.map((name) => regionRow(name, results.filter((result) => result.name === name)))))
}

/** @param {string} name @param {Api.RegionResult[]} results */
function regionRow(name, results) {
  const find = (/** @type {string | null} */ channel, /** @type {(check: string) => boolean} */ of) =>
    worst(results.filter((result) => of(result.check) && (channel === null || result.channel === channel)))
  const onChannel = (/** @type {string} */ check) => check !== "match" && check !== "balance"
  return el("tr", {}, el("th", { scope: "row" }, name),
    cell(find("left", onChannel)), cell(find("right", onChannel)), cell(find(null, (check) => check === "match")))
}

/** Level, balance and polarity: checks without a region. @param {Api.RegionResult[]} results @param {Api.Reason[]} reasons */
function wholeRows(results, reasons) {
  const failed = (/** @type {string} */ check) => reasons.some((reason) => reason.kind === check)
  return [...new Set(results.map((result) => result.check))].map((check) => {
    const of = (/** @type {string | null} */ channel) => worst(results.filter((result) => result.check === check && result.channel === channel))
    return el("tr", {}, el("th", { scope: "row" }, tOf("screen.check.", check)), 
      [of("left"), of("right"), of(null)].map((result) => cell(result, failed(check))))
  })
}

/** @param {Api.RegionResult[]} results @returns {Api.RegionResult | undefined} the one nearest to its limit; unjudged ones only if there is no other */
export function worst(results) {
  const judged = results.filter((result) => result.judged && isNumber(result.marginDb))
  return judged.length ? judged.reduce((a, b) => (/** @type {number} */ (a.marginDb) <= /** @type {number} */ (b.marginDb) ? a : b)) : results[0]
}

/** @param {Api.RegionResult | undefined} result @param {boolean} [failed] whether a check without a margin failed */
function cell(result, failed) {
  if (!result) return el("td", { class: "none" }, "")
  if (!result.judged) return el("td", { class: "unjudged" }, t("screen.regions.notJudged"))
  const margin = result.marginDb
  const bad = isNumber(margin) && margin < 0
  if (!isNumber(margin)) return failed === undefined ? el("td", {}, db(null)) : el("td", { class: "plain" }, shape(failed ? "FAIL" : "PASS"), tOf("screen.word.", failed ? "FAIL" : "PASS"))
  return el("td", { class: bad ? "bad" : "good", title: isNumber(result.measuredDb)
    ? t("screen.regions.detail", { measured: result.measuredDb, limit: result.limitDb ?? NaN }) : null },
    bad ? shape("FAIL") : null, el("span", { class: "margin" }, signedDb(margin)),
    isNumber(result.atHz) ? el("span", { class: "at" }, frequency(result.atHz)) : null)
}

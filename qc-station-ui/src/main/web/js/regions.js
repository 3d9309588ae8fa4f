// The table of checks: a row a region, window margins of both channels and the match margin; level, balance and polarity above them.
import { el } from "./dom.js"
import { db, frequency, isNumber, signedDb } from "./format.js"
import { shape } from "./shapes.js"
import { t, tOf } from "./texts.js"

/** Checks that are not of the curve against its window. */
const OF_ITS_OWN = ["thd", "high-order-distortion", "idle-noise"]

/** @param {Api.RegionResult[]} results @param {Api.Reason[]} reasons @returns {HTMLElement} */
export function regionsTable(results, reasons) {
  const wholes = results.filter((result) => !result.name)
  const placed = results.filter((result) => result.name && !OF_ITS_OWN.includes(result.check))
  const names = [...new Set(placed.map((result) => /** @type {string} */ (result.name)))]
  return el("table", { class: "regions" },
    el("caption", {}, t("screen.regions.caption")),
    el("thead", {}, el("tr", {}, [t("screen.regions.region"), t("screen.regions.left"), t("screen.regions.right"), t("screen.regions.match")]
      .map((title, i) => el("th", { scope: "col", class: ["", "left", "right", "difference"][i] }, title)))),
    el("tbody", {}, results.length ? null : el("tr", {}, el("td", { class: "unjudged", colspan: 4 }, t("screen.regions.empty"))),
      wholeRows(wholes, reasons), names.map((name) => regionRow(name, placed.filter((result) => result.name === name))), ownRows(results)))
}

/** Checks that have another unit than a window: a row each, by region. @param {Api.RegionResult[]} results */
function ownRows(results) {
  const own = results.filter((result) => result.name && OF_ITS_OWN.includes(result.check))
  return [...new Set(own.map((result) => `${result.check} ${result.name}`))].map((key) => {
    const rows = own.filter((result) => `${result.check} ${result.name}` === key)
    const of = (/** @type {string} */ channel) => worst(rows.filter((result) => result.channel === channel))
    return el("tr", {}, el("th", { scope: "row" }, tOf("screen.check.", rows[0].check), el("span", { class: "at" }, rows[0].name)), cell(of("left")), cell(of("right")), cell(undefined))
  })
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
  const conditional = result.state === "conditional-pass" || result.state === "conditional-fail"
  if (!isNumber(margin)) return failed === undefined ? el("td", {}, db(null)) : el("td", { class: "plain" }, shape(failed ? "FAIL" : "PASS"), tOf("screen.word.", failed ? "FAIL" : "PASS"))
  return el("td", { class: bad ? "bad" : "good", title: detailOf(result) },
    bad ? shape("FAIL") : null, el("span", { class: "margin" }, signedDb(margin)),
    conditional ? el("span", { class: "at" }, tOf("screen.regions.", result.state)) : null,
    isNumber(result.atHz) || otherUnit(result) ? el("span", { class: "at" }, [otherUnit(result) ? result.unit : "", isNumber(result.atHz) ? frequency(result.atHz) : ""].filter(Boolean).join(" \u00b7 ")) : null)
}

/** @param {Api.RegionResult} result */
function otherUnit(result) {
  return result.unit !== undefined && result.unit !== null && result.unit !== "dB"
}

/** @param {Api.RegionResult} result @returns {string | null} what was measured and what is allowed */
function detailOf(result) {
  if (!isNumber(result.measuredDb)) return null
  if (!otherUnit(result)) return t("screen.regions.detail", { measured: result.measuredDb, limit: result.limitDb ?? NaN })
  return t("screen.regions.detailUnit", { measured: Number(result.measuredDb.toPrecision(3)), limit: result.limitDb ?? NaN, unit: result.unit })
}

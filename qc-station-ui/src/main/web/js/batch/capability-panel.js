// How the batch fits its limits: one row a limit, with the number that may be quoted and why.
import { el } from "../dom.js"
import { DASH, isNumber } from "../format.js"
import { t, tOf } from "../texts.js"
import { methodNote, missingNote, panel } from "./panel.js"

/** Indices below it are marked. Common practice, no source. */
const WANTED = 1.33

/** @param {import("./panel.js").Source} source @returns {HTMLElement} */
export function capabilityPanel(source) {
  return panel("capability", t("screen.capability.title"), source, "capability", () => ({}), (/** @type {Api.Capabilities} */ figures) => {
    const told = figures.rows.filter((row) => !row.missing)
    if (!told.length) return [figures.rows.length ? missingNote(/** @type {Api.Missing} */ (figures.rows[0].missing)) : null, methodNote(figures.method, figures.notes)]
    const titles = ["quantity", "n", "mean", "sd", "cp", "cpk", "pp", "ppk", "quoted"].map((key) => tOf("screen.capability.", key))
    return [el("div", { class: "wide" }, el("table", {}, el("thead", {}, el("tr", {}, titles.map((title, i) => el("th", { scope: "col", class: i && i < 8 ? "number" : null }, title)))),
      el("tbody", {}, figures.rows.map(rowOf)))), ...figures.notes.map((note) => el("p", { class: "plot-note" }, note)), methodNote(figures.method, [])]
  }).element
}

/** @param {Api.CapabilityRow} row */
function rowOf(row) {
  const head = el("th", { scope: "row" }, row.name, el("span", { class: "more" }, limitsOf(row)))
  if (row.missing) return el("tr", {}, head, el("td", { class: "number" }, row.n), el("td", { colspan: 7 }, row.missing.text))
  const normal = row.quoted === "normal"
  return el("tr", { class: normal ? null : "not-normal" }, head, el("td", { class: "number" }, row.n),
    el("td", { class: "number" }, two(row.meanDb)), el("td", { class: "number" }, two(row.sdOverallDb)),
    [row.cp, row.cpk, row.pp, row.ppk].map((index) => el("td", { class: "number" }, index ? el("span", { class: `index ${normal && index.value < WANTED ? "low" : ""}` }, plain(index.value)) : DASH,
      index ? el("span", { class: "more" }, `${plain(index.interval[0])}\u2009\u2026\u2009${plain(index.interval[1])}`) : null)),
    el("td", { class: "quoted" }, quotedOf(row)))
}

/** @param {Api.CapabilityRow} row */
function limitsOf(row) {
  if (isNumber(row.lowerLimitDb) && isNumber(row.upperLimitDb)) return t("screen.capability.between", { lower: two(row.lowerLimitDb), upper: two(row.upperLimitDb) })
  return t("screen.capability.atLeast", { lower: two(row.lowerLimitDb) })
}

/** @param {Api.CapabilityRow} row */
function quotedOf(row) {
  if (row.alternative) return row.alternative.text
  return t("screen.capability.normal", { ppk: plain(row.ppk?.atLeast ?? NaN), p: row.normality ? row.normality.p.toFixed(2) : DASH })
}

/** @param {number} value */
function plain(value) {
  return isNumber(value) ? (value < 0 ? "\u2212" : "") + Math.abs(value).toFixed(2) : DASH
}

/** @param {number | null | undefined} value */
export function two(value) {
  if (!isNumber(value)) return DASH
  const text = Math.abs(value).toFixed(2)
  return Number(text) === 0 ? text : (value < 0 ? "\u2212" : "+") + text
}

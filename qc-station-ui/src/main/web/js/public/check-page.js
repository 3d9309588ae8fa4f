// The public page behind a certificate's code: what the maker's sealed record says, in the certificate's own numbers.
import { get, Offline, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { signedDb, db, frequency } from "../format.js"
import { shape } from "../shapes.js"
import { loadTexts, t } from "../texts.js"
import { recordPlots } from "./record-plots.js"

/**
 * @typedef {{ frequencyHz: number[], left: (number | null)[], right: (number | null)[], golden: (number | null)[], lower: (number | null)[],
 *     upper: (number | null)[], difference: (number | null)[], matchLimit: (number | null)[],
 *     regions: { name: string, fromHz: number, toHz: number }[], specifiedFromHz: number, specifiedToHz: number }} RecordPlot
 * @typedef {{ code: string, verdict: string, facts: Record<string, string>, rows: Record<string, string>[], plot: RecordPlot | null }} PublicRecord
 */

/** Facts in the order of the certificate, with the text of their label. */
const FACTS = [
  ["maker", "screen.check.maker"], ["product", "screen.check.product"], ["serial", "screen.check.serial"], ["batch", "screen.check.batch"],
  ["date", "screen.check.date"], ["station", "screen.check.station"], ["earSimulator", "screen.check.earSimulator"],
  ["limitSet", "screen.check.limitSet"], ["software", "screen.check.software"], ["inspection", "screen.check.inspection"],
]
const GROUPS = ["left", "right", "pair"]
const NUMBERED_HZ = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000]

const answer = el("div", { class: "answer", "aria-live": "polite" })
const input = /** @type {HTMLInputElement} */ (el("input", { id: "code", type: "text", autocomplete: "off", autocapitalize: "characters", spellcheck: "false", maxlength: 40 }))

await loadTexts().catch(() => {})
document.title = t("screen.check.title")
document.body.append(el("main", { class: "check" },
  el("h1", {}, t("screen.check.title")),
  el("form", { role: "search", on: { submit: ask } },
    el("label", { for: "code" }, t("screen.check.code")), input, el("button", { type: "submit" }, t("screen.check.ask"))),
  answer))
addEventListener("popstate", () => show(codeOfAddress()))
show(codeOfAddress())

function codeOfAddress() {
  const parts = location.pathname.split("/").filter(Boolean)
  return parts.length > 1 ? decodeURIComponent(parts[1]) : ""
}

/** @param {Event} event */
function ask(event) {
  event.preventDefault()
  const code = input.value.trim()
  if (!code) return
  history.pushState(null, "", `/check/${encodeURIComponent(code)}`)
  show(code)
}

/** @param {string} code */
async function show(code) {
  input.value = code
  if (!code) {
    put(answer, el("p", {}, t("screen.check.teach")))
    input.focus()
    return
  }
  put(answer, el("p", {}, t("screen.check.looking")))
  try {
    const record = /** @type {PublicRecord} */ (await get(`/api/certificates/${encodeURIComponent(code)}`))
    input.value = record.code
    put(answer, ...drawn(record))
  } catch (failure) {
    put(answer, el("p", { class: "refusal", role: "alert" }, failure instanceof Problem ? failure.message
      : failure instanceof Offline ? t("screen.check.offline") : t("screen.failed.title")))
  }
}

/** @param {PublicRecord} record */
function drawn(record) {
  const passed = record.verdict === "PASS"
  return [
    el("section", { class: `says state-${record.verdict.toLowerCase()}` }, shape(record.verdict),
      el("div", {}, el("p", { class: "verdict" }, record.facts.verdict), el("p", {}, t(passed ? "screen.check.passed" : "screen.check.failed")))),
    el("p", { class: "compare" }, t(passed ? "screen.check.compare" : "screen.check.noCertificate")),
    el("dl", { class: "facts" }, FACTS.filter(([place]) => record.facts[place]).map(([place, label]) =>
      el("div", {}, el("dt", {}, t(label)), el("dd", {}, record.facts[place]))),
      record.facts.tuning ? el("div", {}, el("dt", {}, t("screen.check.tuning")), el("dd", {}, record.facts.tuning)) : null),
    record.facts.statement ? el("p", {}, record.facts.statement) : null,
    record.rows.length ? table(record.rows) : null,
    record.plot ? recordPlots(record.plot) : null,
    record.plot ? el("p", { class: "caption" }, record.facts.caption) : null,
    record.plot ? numbers(record.plot) : null,
  ].filter((part) => part !== null)
}

/** The certificate's table, with the certificate's own texts. @param {Record<string, string>[]} rows */
function table(rows) {
  const heads = ["value", "at", "limit", "margin"]
  return el("div", { class: "wide" }, el("table", { class: "regions" },
    el("caption", {}, t("screen.check.table")),
    el("thead", {},
      el("tr", {}, el("td", { rowspan: 2, colspan: 2 }), GROUPS.map((group) => el("th", { colspan: 4, scope: "colgroup" }, t(`paper.table.${group}`)))),
      el("tr", {}, GROUPS.flatMap(() => heads.map((head) => el("th", { scope: "col" }, t(`paper.table.${head}`)))))),
    el("tbody", {}, rows.map((row) => el("tr", {}, el("th", { scope: "row" }, row.name), el("td", {}, row.span ?? ""),
      GROUPS.flatMap((group) => row[`${group}Note`] ? [el("td", { colspan: 4, class: "note" }, row[`${group}Note`])]
        : ["Value", "At", "Limit", "Margin"].map((field) => el("td", {}, row[group + field] ?? ""))))))))
}

/** The plots in numbers, at the frequencies that the axis names. @param {RecordPlot} plot */
function numbers(plot) {
  const places = NUMBERED_HZ.map((hz) => plot.frequencyHz.reduce((best, grid, i) =>
    Math.abs(Math.log(grid / hz)) < Math.abs(Math.log(plot.frequencyHz[best] / hz)) ? i : best, 0))
  const rows = /** @type {const} */ ([["left", "screen.check.left", db], ["right", "screen.check.right", db], ["golden", "screen.check.golden", db],
    ["difference", "screen.check.difference", signedDb]])
  return el("div", { class: "wide" }, el("table", { class: "plot-numbers" },
    el("caption", {}, t("screen.check.numbers")),
    el("thead", {}, el("tr", {}, el("td", {}), places.map((i) => el("th", { scope: "col" }, frequency(plot.frequencyHz[i]))))),
    el("tbody", {}, rows.map(([curve, label, form]) => el("tr", {}, el("th", { scope: "row" }, t(label)),
      places.map((i) => el("td", {}, form(plot[curve][i]))))))))
}

// Whether the stations of the batch read alike: sentences for what differs, and the whole table behind them.
import { el } from "../dom.js"
import { isNumber } from "../format.js"
import { t } from "../texts.js"
import { two } from "./capability-panel.js"
import { methodNote, missingNote, panel } from "./panel.js"

/** @param {import("./panel.js").Source} source @returns {HTMLElement} */
export function stationPanel(source) {
  return panel("stations", t("screen.compare.title"), source, "stations", () => ({}), (/** @type {Api.StationComparison} */ figures) => {
    if (figures.missing) return [missingNote(figures.missing), methodNote(figures.method, figures.notes)]
    const clear = figures.rows.flatMap((row) => row.differences).filter((difference) => difference.clear)
      .sort((a, b) => Math.abs(b.differenceDb) - Math.abs(a.differenceDb))
    const stations = figures.rows[0].stations
    return [
      clear.length ? el("ul", { class: "differences" }, clear.map((difference) => el("li", {}, difference.text))) : el("p", { class: "quiet" }, t("screen.compare.alike")),
      el("div", { class: "wide" }, el("table", {}, el("thead", {}, el("tr", {}, el("th", { scope: "col" }, t("screen.compare.quantity")),
        stations.map((station) => el("th", { scope: "col", class: "number" }, station.station, el("span", { class: "more" }, t("screen.cloud.n", { n: station.n })))),
        el("th", { scope: "col", class: "number" }, t("screen.compare.f")), el("th", { scope: "col", class: "number" }, t("screen.compare.p")))),
      el("tbody", {}, figures.rows.map((row) => el("tr", { class: row.differences.some((difference) => difference.clear) ? "differs" : null }, el("th", { scope: "row" }, row.name),
        row.stations.map((station) => el("td", { class: "number" }, two(station.meanDb), el("span", { class: "more" }, isNumber(station.sdDb) ? `\u00b1\u2009${station.sdDb.toFixed(2)}` : ""))),
        el("td", { class: "number" }, isNumber(row.f) ? row.f.toFixed(1) : row.missing?.text ?? ""), el("td", { class: "number" }, isNumber(row.p) ? pWords(row.p) : "")))))),
      methodNote(figures.method, figures.notes),
    ]
  }).element
}

/** @param {number} p */
function pWords(p) {
  return p < 0.0001 ? t("screen.compare.tiny") : p.toFixed(p < 0.01 ? 4 : 2)
}

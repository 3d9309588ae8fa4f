// How the curves vary together: each component as a curve for both channels, and T² of every unit over production order.
import { el } from "../dom.js"
import { isNumber, percent } from "../format.js"
import { buildChart } from "../plot/chart.js"
import { PlotRoom } from "../plot/room.js"
import { halfSpan } from "../plot/scales.js"
import { t } from "../texts.js"
import { two } from "./capability-panel.js"
import { BASELINES, baselineWords, label } from "./chart-panel.js"
import { OrderChart } from "./order-chart.js"
import { methodNote, missingNote, panel } from "./panel.js"

/** @param {import("./panel.js").Source} source @param {Api.Region[]} regions @returns {HTMLElement} */
export function componentPanel(source, regions) {
  let baseline = ""
  const { element, load } = panel("components", t("screen.components.title"), source, "components", () => Object.fromEntries(baseline ? [["baseline", baseline]] : []), (/** @type {Api.Components} */ figures) => {
    if (figures.missing) return [missingNote(figures.missing), methodNote(figures.method, figures.notes)]
    return [el("p", { class: "plot-note" }, t("screen.components.axis")), el("div", { class: "component-grid" }, figures.components.map((component, i) => componentBlock(figures, component, i, regions))), tSquaredChart(figures, source).element, signalList(figures), methodNote(figures.method, figures.notes)]
  })
  const select = el("select", { id: "components-baseline" }, BASELINES.filter((value) => value !== "20").map((value) => el("option", { value }, baselineWords(value))))
  select.addEventListener("change", () => {
    baseline = /** @type {HTMLSelectElement} */ (select).value
    load()
  })
  element.querySelector("h2")?.after(el("div", { class: "figures-choice" }, label("components-baseline", t("screen.components.from"), select)))
  return element
}

/** A component is tenths of a decibel: drawn ten times as high as a response, with its own scale. @type {number} */
const ENLARGED = 10

/** @param {Api.Components} figures @param {Api.Component} component @param {number} place @param {Api.Region[]} regions */
function componentBlock(figures, component, place, regions) {
  const tenths = (/** @type {number[]} */ values) => values.map((value) => ENLARGED * value)
  const left = tenths(component.leftDb), right = tenths(component.rightDb)
  const half = halfSpan(3, 120, left, right)
  const room = new PlotRoom("component-room", (host, width, height) => buildChart(host, { hz: figures.frequencyHz, width, height, low: -half, high: half, caption: "dB", bands: [], specified: null, marks: [],
    levelLabel: (value) => two(value / ENLARGED).slice(0, -1),
    lines: [{ name: t("screen.components.left"), values: left, colour: "left", width: 2, label: true }, { name: t("screen.components.right"), values: right, colour: "right", width: 2, dash: [7, 4], label: true }],
    regions: regions.map((region) => ({ ...region, failed: false })) }, () => {}))
  return el("section", { class: "component" }, el("h3", {}, t("screen.components.name", { n: place + 1 }), el("span", { class: "more" }, t("screen.components.share", { share: percent(component.share) }))), room.element, el("p", { class: "plot-note" }, component.text))
}

/** @param {Api.Components} figures @param {import("./panel.js").Source} source */
function tSquaredChart(figures, source) {
  const limits = figures.tSquared
  const out = figures.units.map((unit, i) => (unit.signals ? i : -1)).filter((i) => i >= 0)
  return new OrderChart({
    label: t("screen.components.label", { n: figures.units.length, out: out.length }), say: (value) => value.toFixed(1), onOpen: source.open,
    panels: [{ title: t("screen.components.tSquared"), lines: [figures.units.map((unit) => unit.tSquared)], lower: null, upper: figures.units.map((unit) => (unit.member ? limits.memberLimit : limits.otherLimit)) }],
    points: figures.units.map((unit) => ({ at: unit.at, units: [unit] })),
    signals: out.length ? [{ panel: 0, text: t("screen.components.signal"), points: out }] : [],
    more: (i) => partOf(figures.units[i]),
  })
}

/** Which component a unit's T² is made of. @param {Api.ScoredUnit} unit */
function partOf(unit) {
  if (!isNumber(unit.mostBy) || !isNumber(unit.mostShare)) return ""
  return t("screen.components.part", { n: unit.mostBy + 1, share: percent(unit.mostShare), rest: unit.restDb })
}

/** @param {Api.Components} figures */
function signalList(figures) {
  const out = figures.units.filter((unit) => unit.signals)
  return el("p", { class: out.length ? "" : "quiet" }, out.length ? t("screen.components.out", { n: out.length, of: figures.units.length }) : t("screen.components.none"))
}

// One place on the screen that says of every quantity its unit and its method: a disclosure with the words of the table.
import { el } from "./dom.js"
import { t } from "./texts.js"

/** Quantities in the order they are explained. */
const QUANTITIES = {
  level: () => [t("screen.how.level"), t("screen.how.level.unit"), t("screen.how.level.method")],
  deviation: () => [t("screen.how.deviation"), t("screen.how.deviation.unit"), t("screen.how.deviation.method")],
  difference: () => [t("screen.how.difference"), t("screen.how.difference.unit"), t("screen.how.difference.method")],
  polarity: () => [t("screen.how.polarity"), t("screen.how.polarity.unit"), t("screen.how.polarity.method")],
  thd: () => [t("screen.how.thd"), t("screen.how.thd.unit"), t("screen.how.thd.method")],
  highOrder: () => [t("screen.how.highOrder"), t("screen.how.highOrder.unit"), t("screen.how.highOrder.method")],
  idleNoise: () => [t("screen.how.idleNoise"), t("screen.how.idleNoise.unit"), t("screen.how.idleNoise.method")],
  margin: () => [t("screen.how.margin"), t("screen.how.margin.unit"), t("screen.how.margin.method")],
  conditional: () => [t("screen.how.conditional"), t("screen.how.conditional.unit"), t("screen.how.conditional.method")],
  microphone: () => [t("screen.how.microphone"), t("screen.how.microphone.unit"), t("screen.how.microphone.method")],
  output: () => [t("screen.how.output"), t("screen.how.output.unit"), t("screen.how.output.method")],
  correction: () => [t("screen.how.correction"), t("screen.how.correction.unit"), t("screen.how.correction.method")],
  verification: () => [t("screen.how.verification"), t("screen.how.verification.unit"), t("screen.how.verification.method")],
  control: () => [t("screen.how.control"), t("screen.how.control.unit"), t("screen.how.control.method")],
  gauge: () => [t("screen.how.gauge"), t("screen.how.gauge.unit"), t("screen.how.gauge.method")],
  uncertainty: () => [t("screen.how.uncertainty"), t("screen.how.uncertainty.unit"), t("screen.how.uncertainty.method")],
  golden: () => [t("screen.how.golden"), t("screen.how.golden.unit"), t("screen.how.golden.method")],
  distance: () => [t("screen.how.distance"), t("screen.how.distance.unit"), t("screen.how.distance.method")],
}

/** @typedef {keyof typeof QUANTITIES} Quantity */

/** What a pair's inspection measures. @type {Quantity[]} */
export const OF_A_PAIR = ["level", "deviation", "difference", "polarity", "thd", "highOrder", "idleNoise", "margin", "conditional"]

/** @param {Quantity[]} names @returns {HTMLElement} */
export function howMeasured(names) {
  return el("details", { class: "how" }, el("summary", {}, t("screen.how.title")),
    el("table", {}, el("thead", {}, el("tr", {}, [t("screen.how.quantity"), t("screen.how.unit"), t("screen.how.method")].map((title) => el("th", { scope: "col" }, title)))),
      el("tbody", {}, names.map((name) => {
        const [title, unit, method] = QUANTITIES[name]()
        return el("tr", {}, el("th", { scope: "row" }, title), el("td", {}, unit), el("td", {}, method))
      }))))
}

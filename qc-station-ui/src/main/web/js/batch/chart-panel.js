// Control charts over production order: what, which kind, and which units set the limits are chosen; rules that signal are listed.
import { el } from "../dom.js"
import { percent } from "../format.js"
import { t, tOf } from "../texts.js"
import { two } from "./capability-panel.js"
import { OrderChart } from "./order-chart.js"
import { methodNote, missingNote, panel } from "./panel.js"

const KINDS = ["individuals", "ewma", "cusum", "xbar-s", "p"]
export const BASELINES = ["", "20", "25", "50", "100"]
const RULES = ["nelson", "western-electric"]
const NAMED_POINTS = 6

/** @param {import("./panel.js").Source} source @returns {HTMLElement} */
export function chartPanel(source) {
  const asked = { quantity: "", region: "", channel: "", kind: "individuals", baseline: "", rules: "nelson" }
  const quantities = el("select", { id: "chart-quantity" })
  let offered = ""
  const { element, load } = panel("charts", t("screen.charts.title"), source, "charts", () => Object.fromEntries(Object.entries(asked).filter(([, value]) => value)), (/** @type {Api.Charts} */ figures) => {
    offer(figures)
    const chosen = [figures.quantity, figures.region ?? "", figures.channel ?? ""].join("|")
    if (figures.kind !== "p") /** @type {HTMLSelectElement} */ (quantities).value = chosen
    if (figures.missing) return [missingNote(figures.missing), methodNote(figures.method, figures.notes)]
    const say = figures.unit === "1" ? (/** @type {number} */ value) => percent(value) : two
    const chart = new OrderChart({ label: t("screen.charts.label", { name: figures.name, n: figures.points.length, out: figures.signals.length }), panels: figures.panels, points: figures.points,
      signals: figures.signals, say, onOpen: source.open })
    return [chart.element, signalsOf(figures, chart), methodNote(figures.method, figures.notes)]
  })

  /** Fills the choice once. @param {Api.Charts} figures */
  function offer(figures) {
    const key = JSON.stringify(figures.choices)
    if (key === offered) return
    offered = key
    quantities.replaceChildren(...figures.choices.map((choice) => el("option", { value: [choice.quantity, choice.region ?? "", choice.channel ?? ""].join("|") }, choice.name)))
  }

  quantities.addEventListener("change", () => {
    [asked.quantity, asked.region, asked.channel] = /** @type {HTMLSelectElement} */ (quantities).value.split("|")
    load()
  })
  const choose = (/** @type {"kind" | "baseline" | "rules"} */ name, /** @type {string[]} */ values, /** @type {(value: string) => string} */ word) => {
    const select = el("select", { id: `chart-${name}` }, values.map((value) => el("option", { value }, word(value))))
    select.addEventListener("change", () => {
      asked[name] = /** @type {HTMLSelectElement} */ (select).value
      load()
    })
    return label(`chart-${name}`, tOf("screen.charts.", name), select)
  }
  element.querySelector("h2")?.after(el("div", { class: "figures-choice" },
    label("chart-quantity", t("screen.charts.quantity"), quantities),
    choose("kind", KINDS, (kind) => tOf("screen.charts.kind.", kind)),
    choose("baseline", BASELINES, baselineWords),
    choose("rules", RULES, (rules) => tOf("screen.charts.rules.", rules))))
  return element
}

/** @param {string} baseline */
export function baselineWords(baseline) {
  return baseline ? t("screen.charts.first", { n: baseline }) : t("screen.charts.all")
}

/** @param {string} id @param {string} text @param {HTMLElement} field */
export function label(id, text, field) {
  return el("label", { class: "field", for: id }, el("span", {}, text), field)
}

/** Each rule in plain words, with the units that complete it. @param {Api.Charts} figures @param {OrderChart} chart */
function signalsOf(figures, chart) {
  if (!figures.signals.length) return el("p", { class: "quiet" }, t("screen.charts.steady"))
  return el("ul", { class: "signals" }, figures.signals.map((signal) => el("li", {}, el("span", { class: "signal-words" }, figures.panels.length > 1 ? `${figures.panels[signal.panel].title}: ${signal.text}` : signal.text),
    signal.points.slice(0, NAMED_POINTS).map((point) => el("button", { type: "button", class: "button view", on: { click: () => chart.stand(point) } }, figures.points[point].units[0].serial)),
    signal.points.length > NAMED_POINTS ? el("span", { class: "more" }, t("screen.charts.more", { n: signal.points.length - NAMED_POINTS })) : null)))
}

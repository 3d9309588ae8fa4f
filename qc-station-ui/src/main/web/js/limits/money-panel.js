// Risk and money: what escapes, what is thrown away, and yield (or cost) against the tightness of the set.
import { el, put, svg } from "../dom.js"
import { DASH, percent } from "../format.js"
import { t } from "../texts.js"
import { nameOf } from "./figures.js"
import { labelled } from "./proposal-panel.js"

const PRICES = /** @type {const} */ (["scrap", "rework", "escape"])

export class MoneyPanel {
  #onChange
  #result = el("div", { class: "money-result" })
  #fields = Object.fromEntries([...PRICES, "u", "reworkShare"].map((name) => [name, /** @type {HTMLInputElement} */ (el("input", { type: "text", inputmode: "decimal", id: `money-${name}` }))]))

  /** @param {() => void} onChange */
  constructor(onChange) {
    this.#onChange = onChange
    for (const field of Object.values(this.#fields)) field.addEventListener("change", () => this.#onChange())
    this.element = el("section", { class: "money" }, el("h2", {}, t("screen.limits.money.title")), el("p", { class: "quiet" }, t("screen.limits.money.what")),
      el("div", { class: "panel-fields" }, [...PRICES, "reworkShare", "u"].map((name) => labelled(this.#fields[name], t(`screen.limits.money.${name}`)))),
      this.#result)
  }

  /** @returns {Record<string, string>} of a trial; only what was given */
  query() {
    const query = /** @type {Record<string, string>} */ ({})
    for (const [name, field] of Object.entries(this.#fields)) {
      const value = field.value.replace(",", ".").replace("%", "").trim()
      if (value !== "" && Number.isFinite(Number(value))) query[name] = name === "reworkShare" ? String(Number(value) / 100) : value
    }
    if (query.scrap !== undefined && query.rework !== undefined && query.reworkShare === undefined) {
      query.reworkShare = "0.5"
      this.#fields.reworkShare.value = "50"
    }
    return query
  }

  /** @param {Api.Trial} trial */
  show(trial) {
    const risks = trial.risks
    const inMoney = trial.tightness.some((point) => point.costAtLeast !== null)
    put(this.#result,
      el("div", { class: "tightness-plots" }, tightnessPlot(trial.tightness, "share"), inMoney ? tightnessPlot(trial.tightness, "costAtLeast") : null),
      el("dl", { class: "facts-list" },
        fact(t("screen.limits.money.consumers"), risks.consumers ? t("screen.limits.money.at", { risk: percent(risks.consumers.risk), check: nameOf(risks.consumers) }) : t("screen.limits.money.unknown")),
        fact(t("screen.limits.money.producers"), risks.producers ? t("screen.limits.money.at", { risk: percent(risks.producers.risk), check: nameOf(risks.producers) }) : t("screen.limits.money.unknown")),
        fact(t("screen.limits.money.escapes"), risks.escapedAtLeast === null ? t("screen.limits.money.unknown") : t("screen.limits.money.between", { least: percent(risks.escapedAtLeast), most: percent(risks.escapedAtMost) })),
        trial.cost ? fact(t("screen.limits.money.cost"), costWords(trial.cost.predicted)) : null,
        trial.cost ? fact(t("screen.limits.money.costNow"), t("screen.limits.money.rejects", { scrapped: money(trial.cost.recorded.scrapped), reworked: money(trial.cost.recorded.reworked) })) : null),
      el("details", {}, el("summary", {}, t("screen.limits.money.method")), [risks.method, ...risks.notes, ...trial.notes].map((line) => el("p", { class: "plot-note" }, line))))
  }
}

/** @param {Api.TrialCost} cost */
function costWords(cost) {
  const rejects = t("screen.limits.money.rejects", { scrapped: money(cost.scrapped), reworked: money(cost.reworked) })
  return cost.totalAtLeast === null ? rejects : `${rejects} ${t("screen.limits.money.total", { least: money(cost.totalAtLeast), most: money(cost.totalAtMost) })}`
}

/** @param {number | null} value */
function money(value) {
  return value === null ? DASH : new Intl.NumberFormat("en-GB", { maximumFractionDigits: value < 100 ? 1 : 0 }).format(value)
}

/** @param {string} name @param {string} value */
function fact(name, value) {
  return el("div", {}, el("dt", {}, name), el("dd", {}, value))
}

const WIDTH = 420, HEIGHT = 210, LEFT = 56, RIGHT = 12, TOP = 12, BOTTOM = 34

/** Scale of windows and match limits across, yield or cost upwards. @param {Api.TightnessPoint[]} points @param {"share" | "costAtLeast"} what */
export function tightnessPlot(points, what) {
  const values = points.map((point) => point[what]).filter((value) => value !== null)
  const low = what === "share" ? Math.min(...values) : 0, high = Math.max(...values)
  const span = Math.max(high - low, what === "share" ? 0.05 : 1)
  const bottom = what === "share" ? Math.max(0, low - span * 0.1) : 0, top = what === "share" ? Math.min(1, bottom + span * 1.2) : high * 1.1 || 1
  const x = (/** @type {number} */ scale) => LEFT + (scale - 0.5) * (WIDTH - LEFT - RIGHT)
  const y = (/** @type {number} */ value) => TOP + (1 - (value - bottom) / (top - bottom || 1)) * (HEIGHT - TOP - BOTTOM)
  const written = (/** @type {number} */ value) => (what === "share" ? percent(value) : money(value))
  const path = points.filter((point) => point[what] !== null).map((point, i) => `${i ? "L" : "M"}${x(point.scale).toFixed(1)} ${y(/** @type {number} */ (point[what])).toFixed(1)}`).join("")
  const best = what === "share" ? null : points.reduce((a, b) => ((b[what] ?? Infinity) < (a[what] ?? Infinity) ? b : a))
  return el("figure", { class: "tightness" },
    svg("svg", { viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "img", "aria-label": t(`screen.limits.money.plot.${what}`) },
      svg("rect", { class: "control-ground", x: LEFT, y: TOP, width: WIDTH - LEFT - RIGHT, height: HEIGHT - TOP - BOTTOM }),
      [bottom, (bottom + top) / 2, top].map((value) => svg("text", { class: "control-words", x: LEFT - 6, y: y(value) + 4, "text-anchor": "end" }, written(value))),
      [0.5, 0.75, 1, 1.25, 1.5].flatMap((scale) => [svg("line", { class: scale === 1 ? "control-centre" : "tightness-grid", x1: x(scale), x2: x(scale), y1: TOP, y2: HEIGHT - BOTTOM }),
        svg("text", { class: "control-words", x: x(scale), y: HEIGHT - BOTTOM + 16, "text-anchor": scale === 1.5 ? "end" : "middle" }, `\u00d7${scale}`)]),
      svg("path", { class: `tightness-line ${what}`, d: path }),
      best ? [svg("circle", { class: "tightness-best", cx: x(best.scale), cy: y(/** @type {number} */ (best[what])), r: 5 }),
        svg("text", { class: "control-words", x: x(best.scale), y: y(/** @type {number} */ (best[what])) - 10, "text-anchor": best.scale > 1.2 ? "end" : "start" }, `${written(/** @type {number} */ (best[what]))} \u00b7 \u00d7${best.scale}`)] : null),
    el("figcaption", { class: "plot-note" }, t(`screen.limits.money.plot.${what}`)))
}

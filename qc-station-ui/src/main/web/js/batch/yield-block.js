// The batch in numbers: yield with its interval, and the reasons ranked.
import { el, svg } from "../dom.js"
import { percent } from "../format.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { t } from "../texts.js"

/** @param {Api.Statistics} statistics */
export function yieldBlock(statistics) {
  const { yield: result, units } = statistics
  const wilson = result.wilson ?? []
  return el("section", { class: "yield", "aria-label": t("screen.yield.title") },
    el("h2", {}, t("screen.yield.title")),
    el("p", { class: "yield-share" }, percent(result.share)),
    wilson.length === 2 ? intervalBar(result.share, wilson[0], wilson[1]) : null,
    el("p", { class: "yield-words" }, wilson.length === 2
      ? t("screen.yield.interval", { confidence: percent(result.confidence).replace(".0", ""), low: percent(wilson[0]), high: percent(wilson[1]), n: result.of })
      : t("screen.yield.n", { n: result.of })),
    finalLine(statistics),
    el("p", { class: "counts" },
      el("span", { class: "count" }, shape("PASS"), t("screen.yield.passed", { n: units.passed })),
      el("span", { class: "count" }, shape("FAIL"), t("screen.yield.failed", { n: units.failed }))))
}

/** What went out after rework; both intervals and the method one press away. @param {Api.Statistics} statistics */
function finalLine(statistics) {
  const last = statistics.finalYield, first = statistics.yield
  if (!last) return null
  const line = (/** @type {Api.Yield} */ y, /** @type {string} */ key) => el("p", {}, t(key, { passed: y.passed, of: y.of, wilson: ends(y.wilson), exact: ends(y.clopperPearson) }))
  return el("div", {}, el("p", { class: "yield-final" }, t("screen.yield.final", { share: percent(last.share), passed: last.passed, of: last.of })),
    el("details", { class: "how" }, el("summary", {}, t("screen.yield.both")), line(first, "screen.yield.firstBoth"), line(last, "screen.yield.finalBoth"),
      [first.method, last.method].filter(Boolean).map((method) => el("p", {}, method))))
}

/** @param {[number, number] | null | undefined} interval */
function ends(interval) {
  return interval ? `${percent(interval[0])} \u2026 ${percent(interval[1])}` : ""
}

/** The share as a tick inside its interval, on a line from 0 to 100 %. @param {number} share @param {number} low @param {number} high */
function intervalBar(share, low, high) {
  const x = (/** @type {number} */ value) => 1 + value * 198
  return svg("svg", { class: "interval", viewBox: "0 0 200 20", "aria-hidden": "true", preserveAspectRatio: "none" },
    svg("path", { class: "interval-line", d: `M1 10H199` }),
    svg("rect", { class: "interval-span", x: x(low), y: 5, width: x(high) - x(low), height: 10, rx: 2 }),
    svg("path", { class: "interval-tick", d: `M${x(share)} 1V19` }))
}

/** Reasons shown at once; the others are one press away. */
const FIRST_REASONS = 4

/** @param {Api.RankedReason[]} reasons most frequent first */
export function reasonBars(reasons) {
  const most = Math.max(1, ...reasons.map((reason) => reason.units))
  const list = (/** @type {Api.RankedReason[]} */ some) => el("ol", {}, some.map((reason) => reasonRow(reason, most)))
  const rest = reasons.slice(FIRST_REASONS)
  return el("section", { class: "reasons", "aria-label": t("screen.reasons.title") },
    el("h2", {}, t("screen.reasons.title")),
    reasons.length ? list(reasons.slice(0, FIRST_REASONS)) : el("p", { class: "quiet" }, t("screen.reasons.none")),
    rest.length ? el("details", {}, el("summary", {}, t("screen.reasons.more", { n: rest.length })), list(rest)) : null)
}

/** @param {Api.RankedReason} reason @param {number} most units of the most frequent reason */
function reasonRow(reason, most) {
  return el("li", {},
    el("span", { class: "reason-count" }, reason.units),
    el("div", { class: "reason-body" },
      el("span", { class: "reason-words" }, reason.text ?? [reason.channel, reason.region, reason.kind].filter(Boolean).join(" ")),
      svg("svg", { class: "bar", viewBox: "0 0 100 6", preserveAspectRatio: "none", "aria-hidden": "true" },
        svg("rect", { class: "bar-fill", x: 0, y: 0, width: (100 * reason.units) / most, height: 6 })), unitsBehind(reason)),
    el("span", { class: "reason-share" }, percent(reason.share)))
}

/** @param {Api.RankedReason} reason */
function unitsBehind(reason) {
  if (!reason.failed?.length) return null
  const rest = reason.units - reason.failed.length
  return el("details", { class: "reason-units" }, el("summary", {}, t("screen.reasons.units")),
    el("p", {}, reason.failed.map((unit) => el("a", { class: "serial", href: hashOf("unit", unit.serial, { inspection: unit.inspection }) }, unit.serial)), rest > 0 ? t("screen.reasons.more", { n: rest }) : null))
}

// What would become of the units: recorded, the set on the workbench (A), and the one beside it (B).
import { el, put } from "../dom.js"
import { percent } from "../format.js"
import { hashOf } from "../router.js"
import { t } from "../texts.js"
import { wilson } from "./replay.js"

/** @typedef {import("./replay.js").Outcome} Outcome */

export class Figures {
  constructor() {
    this.element = el("section", { class: "figures", "aria-live": "polite" })
  }

  /**
   * @param {{ passed: number, of: number }} recorded @param {Outcome | null} a @param {Outcome | null} b
   * @param {"local" | "asking" | "confirmed" | "service" | "failed"} state of the numbers of A
   * @param {number} changedFrom the version that A began as @param {string} otherName of B
   */
  show(recorded, a, b, state, changedFrom, otherName) {
    if (!a) return put(this.element, el("p", { class: "quiet" }, t("screen.limits.figures.waiting")))
    const judged = a.passed + a.failed
    const [low, high] = wilson(a.passed, judged)
    put(this.element,
      el("h2", {}, t("screen.limits.figures.title")),
      el("p", { class: "yield-share predicted", data: { passed: a.passed, of: judged } }, percent(judged ? a.passed / judged : null)),
      el("p", { class: "yield-words" }, t("screen.limits.figures.words", { passed: a.passed, of: judged, low: percent(low), high: percent(high) })),
      el("p", { class: `confirmation ${state}`, data: { state } }, t(`screen.limits.confirm.${state}`)),
      el("table", { class: "sides" },
        el("thead", {}, el("tr", {}, el("td"), el("th", { scope: "col", class: "number" }, t("screen.limits.figures.recorded")), el("th", { scope: "col", class: "number" }, t("screen.limits.figures.a")),
          b ? el("th", { scope: "col", class: "number", title: otherName }, t("screen.limits.figures.b")) : null)),
        el("tbody", {},
          row(t("screen.limits.figures.yield"), percent(recorded.of ? recorded.passed / recorded.of : null), share(a), b && share(b)),
          row(t("screen.limits.figures.toPass"), "", a.toPass, b && b.toPass),
          row(t("screen.limits.figures.toFail"), "", a.toFail, b && b.toFail),
          a.undecided || b?.undecided ? row(t("screen.limits.figures.undecided"), "", a.undecided, b && b.undecided) : null)),
      b ? el("p", { class: "quiet" }, t("screen.limits.figures.bIs", { name: otherName })) : null,
      el("h3", {}, t("screen.limits.figures.checks")),
      el("table", { class: "check-shares" },
        el("thead", {}, el("tr", {}, el("th", { scope: "col" }, t("screen.limits.figures.check")), el("th", { scope: "col", class: "number" }, t("screen.limits.figures.a")), b ? el("th", { scope: "col", class: "number" }, t("screen.limits.figures.b")) : null,
          el("th", { scope: "col", class: "number" }, t("screen.limits.figures.sole")))),
        el("tbody", {}, a.checks.map((check) => {
          const beside = b?.checks.find((one) => one.check === check.check && one.region === check.region && one.channel === check.channel)
          return el("tr", { class: check.units ? "bad" : "kept", data: { check: [check.check, check.region, check.channel].filter(Boolean).join(" ") } },
            el("th", { scope: "row" }, nameOf(check)), el("td", { class: "number" }, check.units), b ? el("td", { class: "number" }, beside?.units ?? "") : null, el("td", { class: "number" }, check.sole))
        }))),
      el("p", { class: "quiet" }, t("screen.limits.figures.from", { version: changedFrom })))
  }
}

/** @param {string} name @param {string | number} recorded @param {string | number} a @param {string | number | null} b */
function row(name, recorded, a, b) {
  return el("tr", {}, el("th", { scope: "row" }, name), el("td", { class: "number" }, recorded), el("td", { class: "number" }, a), b === null ? null : el("td", { class: "number" }, b))
}

/** @param {Outcome} outcome */
function share(outcome) {
  const judged = outcome.passed + outcome.failed
  return percent(judged ? outcome.passed / judged : null)
}

/** @param {{ check: string, region: string | null, channel: string | null }} check */
export function nameOf(check) {
  const channel = check.channel ? t(`word.${check.channel}`) : ""
  return t(`screen.limits.check.${check.check}`, { region: check.region ?? "", channel: check.region ? channel.toLowerCase() : channel })
}

/** Who flips, and why; as the service told. @param {Api.TrialFlips} flips */
export function flipList(flips) {
  const all = flips.toPass + flips.toFail + flips.toUndecided
  if (!all) return el("section", { class: "flips" }, el("h2", {}, t("screen.limits.flips.title")), el("p", { class: "quiet" }, t("screen.limits.flips.none")))
  return el("section", { class: "flips" }, el("h2", {}, t("screen.limits.flips.title")),
    el("p", { class: "quiet" }, t("screen.limits.flips.count", { toPass: flips.toPass, toFail: flips.toFail, shown: flips.shown.length })),
    el("table", { class: "list flip-list" },
      el("thead", {}, el("tr", {}, [t("screen.limits.flips.unit"), t("screen.limits.flips.change"), t("screen.limits.flips.why")].map((title) => el("th", { scope: "col" }, title)))),
      el("tbody", {}, flips.shown.map((flip) => el("tr", {},
        el("th", { scope: "row" }, el("a", { class: "row-link", href: hashOf("unit", flip.serial, { inspection: flip.inspection }) }, flip.serial)),
        el("td", {}, t("screen.limits.flips.fromTo", { from: flip.recorded, to: flip.predicted })),
        el("td", {}, (flip.predicted === "PASS" ? flip.recordedReasons : flip.reasons).map((line) => el("p", {}, line))))))))
}

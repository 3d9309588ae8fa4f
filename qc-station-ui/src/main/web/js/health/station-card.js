// One station: whether it may judge, what it found last, and what will need somebody soon.
import { el } from "../dom.js"
import { clock, percent } from "../format.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"
import { ago, span } from "./spans.js"

/** Below these a span of time is due soon, in seconds. */
const SOON = 4 * 3600

/** @type {Record<string, string>} */
const DRAWING = { ready: "VALID", problem: "PROBLEM", blocked: "BLOCKED" }

/** @param {Api.HealthStation} station @param {string} now the service's time @returns {HTMLElement[]} */
export function stationCard(station, now) {
  return [
    el("h2", { class: `state-${DRAWING[station.state].toLowerCase()}` }, shape(DRAWING[station.state]),
      el("a", { class: "row-link", href: hashOf("station", station.station) }, station.station), el("span", { class: "word" }, tOf("screen.stationState.", station.state))),
    station.block ? el("p", { class: "health-block" }, station.block.text) : null,
    lastVerdicts(station),
    firstPass(station.firstPass),
    facts(station, now),
  ].filter((part) => part !== null)
}

/** @param {Api.HealthStation} station */
function lastVerdicts(station) {
  if (!station.verdicts.length) return el("p", { class: "quiet" }, t("screen.health.noVerdicts"))
  return el("ol", { class: "last-verdicts", "aria-label": t("screen.health.lastVerdicts") }, station.verdicts.map((verdict) => {
    const words = t("screen.health.verdict", { serial: verdict.serial, tuning: verdict.tuning, verdict: tOf("screen.word.", verdict.verdict), at: clock(verdict.at) })
    return el("li", {}, el("a", { href: hashOf("unit", verdict.serial, { inspection: verdict.inspection }), title: words, "aria-label": words }, shape(verdict.verdict)))
  }))
}

/** @param {Api.HealthStation["firstPass"]} pass */
function firstPass(pass) {
  return el("div", { class: "health-yield" },
    el("span", { class: "health-figure" }, percent(pass.share)),
    el("span", { class: "more" }, pass.wilson
      ? t("screen.health.firstPass", { passed: pass.passed, of: pass.of, low: percent(pass.wilson[0]), high: percent(pass.wilson[1]), minutes: pass.minutes })
      : t("screen.health.noUnits", { minutes: pass.minutes })))
}

/** @param {Api.HealthStation} station @param {string} now */
function facts(station, now) {
  const { mountings, held } = station
  return el("dl", { class: "health-facts" },
    fact(t("screen.health.reseats"), t("screen.health.reseatsOf", { reseats: mountings.reseats, attempts: mountings.attempts, hours: mountings.minutes / 60 }), "",
      mountings.operators?.length ? operators(mountings.operators) : null),
    station.calibrations.map((left) => due(tOf("screen.health.kind.", left.kind), left.secondsLeft)),
    station.verifications.map((one) => verification(one, now)),
    held ? fact(t("screen.health.held"), held.count ? t("screen.health.heldSince", { n: held.count, since: held.oldestAt ? ago(held.oldestAt, now) : "" }) : t("screen.health.heldNone"), held.count ? "warn" : "") : null,
    fact(t("screen.health.heard"), station.heardAt ? ago(station.heardAt, now) : t("screen.health.never")))
}

/** @param {string} name @param {number | null} seconds */
function due(name, seconds) {
  if (seconds === null) return fact(name, t("screen.health.neverMade"), "bad")
  if (seconds <= 0) return fact(name, t("screen.health.expired"), "bad")
  return fact(name, t("screen.health.left", { span: span(seconds) }), seconds < SOON ? "warn" : "")
}

/** @param {Api.HealthStation["verifications"][number]} one @param {string} now */
function verification(one, now) {
  const name = t("screen.health.verification", { tuning: one.tuning })
  if (one.state === "passed" && one.validUntil) return due(name, (Date.parse(one.validUntil) - Date.parse(now)) / 1000)
  return fact(name, tOf("screen.health.verificationState.", one.state), one.state === "expired" ? "warn" : "bad")
}

/** @param {{ operator: string | null, attempts: number, reseats: number }[]} all */
function operators(all) {
  return el("details", {}, el("summary", {}, t("screen.health.byOperator")),
    el("ul", {}, all.map((one) => el("li", {}, t("screen.health.operator", { operator: one.operator ?? t("screen.health.erased"), reseats: one.reseats, attempts: one.attempts })))))
}

/** @param {string} name @param {string} value @param {string} [kind] warn or bad, then said by a shape too @param {HTMLElement | null} [more] */
export function fact(name, value, kind = "", more = null) {
  return el("div", { class: kind ? `health-${kind}` : null }, el("dt", {}, name), el("dd", {}, kind ? shape(kind === "bad" ? "FAIL" : "PROBLEM") : null, value, more))
}

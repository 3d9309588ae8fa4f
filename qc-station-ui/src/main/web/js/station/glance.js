// The station at a glance: a card for each thing it must have, with its state; a card chosen opens its steps.
import { el } from "../dom.js"
import { db, shortTime, signedDb } from "../format.js"
import { shape } from "../shapes.js"
import { t } from "../texts.js"

/** @typedef {"left" | "right" | "output" | "correction" | "verification" | "idle" | "gauge"} Part */
/** @typedef {{ part: Part, name: string, state: "VALID" | "PROBLEM" | "BLOCKED" | "INCOMPLETE", value: string, when: string }} Card */

/** @param {Api.Station} station @param {Api.GaugeStudy[]} studies @returns {Card[]} */
export function cardsOf(station, studies) {
  const blocked = (/** @type {(block: Api.Block) => boolean} */ of) => (station.blocks ?? []).some(of)
  const moved = (/** @type {string} */ cause, /** @type {string | null} */ channel) => blocked((block) => block.cause === cause && (block.channel ?? null) === channel)
  const left = station.microphones?.left, right = station.microphones?.right
  return [
    card("left", t("screen.part.left"), left, moved("microphone-changed", "left"), left ? `${db(left.fullScaleLevelDb)} dB` : ""),
    card("right", t("screen.part.right"), right, moved("microphone-changed", "right"), right ? `${db(right.fullScaleLevelDb)} dB` : ""),
    card("output", t("screen.part.output"), station.output, moved("output-changed", null), station.output ? `${station.output.fullScaleVoltsRms.toFixed(3)} V` : ""),
    card("correction", t("screen.part.correction"), station.correction, false, station.correction ? `${signedDb(station.correction.meanDb)} dB` : ""),
    verificationCard(station, blocked((block) => (block.cause ?? "").startsWith("verification"))),
    { ...card("idle", t("screen.part.idle"), station.idleFloor, false, station.idleFloor ? `${db(Math.max(station.idleFloor.leftDba, station.idleFloor.rightDba))} dB(A)` : ""), ...(station.idleFloor ? {} : { state: "INCOMPLETE" }) },
    gaugeCard(studies),
  ]
}

/** @param {Part} part @param {string} name @param {{ valid: boolean, validUntil: string } | null | undefined} row @param {boolean} blocked @param {string} value @returns {Card} */
function card(part, name, row, blocked, value) {
  return { part, name, value: value || t("screen.part.none"), state: blocked ? "BLOCKED" : row?.valid ? "VALID" : "PROBLEM",
    when: !row ? "" : row.valid ? t("screen.part.until", { when: shortTime(row.validUntil) }) : t("screen.part.expired", { when: shortTime(row.validUntil) }) }
}

/** @param {Api.Station} station @param {boolean} blocked @returns {Card} */
function verificationCard(station, blocked) {
  const rows = station.verifications ?? []
  const good = rows.filter((row) => row.valid && row.passed)
  const newest = [...rows].sort((a, b) => (a.measuredAt < b.measuredAt ? 1 : -1))[0]
  return { part: "verification", name: t("screen.part.verification"), state: blocked ? "BLOCKED" : !rows.length ? "INCOMPLETE" : good.length === rows.length ? "VALID" : "PROBLEM",
    value: rows.length ? t("screen.part.verified", { good: good.length, of: rows.length }) : t("screen.part.none"),
    when: newest ? t("screen.part.at", { when: shortTime(newest.measuredAt) }) : "" }
}

/** @param {Api.GaugeStudy[]} studies @returns {Card} */
function gaugeCard(studies) {
  const open = studies.find((study) => study.state !== "complete"), done = studies.find((study) => study.state === "complete")
  return { part: "gauge", name: t("screen.part.gauge"), state: done ? "VALID" : "INCOMPLETE",
    value: done ? `${done.product} ${done.tuning}` : open ? t("screen.part.collecting") : t("screen.part.none"),
    when: open ? t("screen.part.open", { n: open.measured, of: open.wanted, tuning: open.tuning }) : done?.validUntil ? t("screen.part.until", { when: shortTime(done.validUntil) }) : "" }
}

/** @param {Card[]} cards @param {Part} chosen @param {(part: Part) => void} choose */
export function glance(cards, chosen, choose) {
  return el("nav", { class: "glance", "aria-label": t("screen.glance.label") }, cards.map((card) => el("button", {
    type: "button", class: `card state-${card.state.toLowerCase()}`, data: { part: card.part }, "aria-current": String(card.part === chosen), on: { click: () => choose(card.part) },
  }, shape(card.state), el("span", { class: "card-name" }, card.name), el("span", { class: "card-value" }, card.value), el("span", { class: "more" }, card.when))))
}

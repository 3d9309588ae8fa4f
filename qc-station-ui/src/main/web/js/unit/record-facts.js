// What the record of an inspection says besides its verdict: attempts with their captures, and who, what, under which limits.
import { el } from "../dom.js"
import { localTime, size } from "../format.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

/** @param {Api.Inspection} inspection */
export function attemptsTable(inspection) {
  const attempts = inspection.attempts ?? []
  if (!attempts.length) return null
  return el("table", { class: "attempts" }, el("caption", {}, t("screen.attempts.caption")),
    el("thead", {}, el("tr", {}, [t("screen.attempts.number"), t("screen.attempts.outcome"), t("screen.attempts.when"), t("screen.attempts.captures")]
      .map((title) => el("th", { scope: "col" }, title)))),
    el("tbody", {}, attempts.map((attempt) => el("tr", {}, el("th", { scope: "row" }, attempt.number),
      el("td", {}, el("span", { class: `outcome state-${attempt.outcome.toLowerCase()}` }, shape(attempt.outcome), tOf("screen.word.", attempt.outcome))),
      el("td", {}, localTime(attempt.measuredAt)),
      el("td", { class: "downloads" }, captureLink(inspection, attempt, "left"), captureLink(inspection, attempt, "right"))))))
}

/** @param {Api.Inspection} inspection @param {Api.Attempt} attempt @param {"left" | "right"} side */
function captureLink(inspection, attempt, side) {
  const capture = attempt[side]
  if (!capture) return null
  return el("a", { class: `download ${side}`, href: `/api/inspections/${inspection.id}/captures/${attempt.number}/${side}`, download: "",
    title: capture.sha256 }, side === "left" ? t("screen.bench.left") : t("screen.bench.right"), capture.bytes ? el("span", { class: "more" }, size(capture.bytes)) : null)
}

/** @param {Api.Inspection} inspection */
export function factsList(inspection) {
  const facts = [
    [t("screen.facts.station"), inspection.station],
    [t("screen.facts.simulator"), inspection.earSimulator],
    [t("screen.facts.limitSet"), inspection.limitSet ? t("screen.facts.version", { version: inspection.limitSet.version, digest: (inspection.limitSet.digest ?? "").slice(0, 12) }) : null],
    [t("screen.facts.occasion"), tOf("screen.occasion.", inspection.occasion)],
    [t("screen.facts.started"), localTime(inspection.startedAt)],
    [t("screen.facts.closed"), inspection.closedAt ? localTime(inspection.closedAt) : null],
    [t("screen.facts.software"), inspection.softwareVersion],
    [t("screen.facts.record"), inspection.id],
  ]
  return el("dl", { class: "facts-list" }, facts.filter(([, value]) => value)
    .map(([label, value]) => el("div", {}, el("dt", {}, label), el("dd", {}, value))))
}

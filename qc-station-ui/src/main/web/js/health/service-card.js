// The service itself: database, disk, ledger, events, watched folders.
import { el } from "../dom.js"
import { shape } from "../shapes.js"
import { t } from "../texts.js"
import { ago, gigabytes } from "./spans.js"
import { fact } from "./station-card.js"

/** Entries wait one second for their block; after this many milliseconds somebody should look. */
const LATE_MS = 2 * 60_000

/** @param {Api.HealthService} service @param {string} now the service's time @returns {HTMLElement[]} */
export function serviceCard(service, now) {
  const well = service.database !== null && service.disk !== null && !service.disk.low && !service.dropFolders.some((folder) => folder.problem)
  return [
    el("h2", { class: well ? "state-valid" : "state-problem" }, shape(well ? "VALID" : "PROBLEM"), t("screen.health.service"), el("span", { class: "more" }, service.version)),
    el("dl", { class: "health-facts health-wide" },
      database(service.database), disk(service.disk), ledger(service.database, now), events(service.database, now),
      service.database?.oneRole ? fact(t("screen.health.roles"), t("screen.health.oneRole"), "warn") : null,
      service.hearsOtherProcesses ? null : fact(t("screen.health.others"), t("screen.health.othersAway"), "warn"),
      service.dropFolders.map((folder) => dropFolder(folder, now))),
  ]
}

/** @param {Api.HealthService["database"]} found */
function database(found) {
  return found ? fact(t("screen.health.database"), t("screen.health.latency", { ms: found.latencyMs.toFixed(1) }))
    : fact(t("screen.health.database"), t("screen.health.databaseAway"), "bad")
}

/** @param {Api.HealthService["disk"]} found */
function disk(found) {
  if (!found) return fact(t("screen.health.disk"), t("screen.health.diskAway"), "bad")
  const words = t("screen.health.free", { free: gigabytes(found.freeBytes), total: gigabytes(found.totalBytes) })
  return fact(t("screen.health.disk"), found.low ? t("screen.health.low", { words, below: gigabytes(found.warnBelowBytes) }) : words, found.low ? "warn" : "")
}

/** @param {Api.HealthService["database"]} found @param {string} now */
function ledger(found, now) {
  if (!found) return null
  const { unsealed, oldestUnsealedAt, lastBlockAt } = found.ledger
  const late = oldestUnsealedAt !== null && Date.parse(now) - Date.parse(oldestUnsealedAt) > LATE_MS
  return fact(t("screen.health.ledger"), t("screen.health.unsealed", { n: unsealed, last: lastBlockAt ? ago(lastBlockAt, now) : t("screen.health.never") }), late ? "warn" : "")
}

/** @param {Api.HealthService["database"]} found @param {string} now */
function events(found, now) {
  if (!found) return null
  const { unfinished, oldestAt } = found.events
  const late = oldestAt !== null && Date.parse(now) - Date.parse(oldestAt) > LATE_MS
  return fact(t("screen.health.events"), oldestAt && late ? t("screen.health.unfinishedSince", { n: unfinished, since: ago(oldestAt, now) }) : t("screen.health.unfinished", { n: unfinished }), late ? "warn" : "")
}

/** @param {Api.HealthService["dropFolders"][number]} folder @param {string} now */
function dropFolder(folder, now) {
  const name = t("screen.health.dropFolder", { station: folder.station })
  if (folder.problem) return fact(name, folder.problem, "warn")
  if (!folder.watching) return fact(name, t("screen.health.watchedElsewhere"))
  return fact(name, t("screen.health.drops", { taken: folder.taken, refused: folder.refused, waiting: folder.waiting, last: folder.lastTakenAt ? ago(folder.lastTakenAt, now) : t("screen.health.never") }))
}

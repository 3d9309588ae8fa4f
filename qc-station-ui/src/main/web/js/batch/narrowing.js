// Narrows a batch's figures by station and by day; what is chosen stands in the address.
import { el } from "../dom.js"
import { go } from "../router.js"
import { t } from "../texts.js"
import { label } from "./chart-panel.js"

/** @param {string} batch @param {Record<string, string>} query @param {string[]} stations that measured it @returns {HTMLElement} */
export function narrowing(batch, query, stations) {
  const station = el("select", { id: "narrow-station" }, el("option", { value: "" }, t("screen.narrow.every")),
    [...new Set([...stations, ...(query.station ? [query.station] : [])])].sort().map((name) => el("option", { value: name, selected: name === query.station }, name)))
  const from = el("input", { id: "narrow-from", type: "date", value: dayOf(query.from, 0) })
  const to = el("input", { id: "narrow-to", type: "date", value: dayOf(query.to, -1) })
  const value = (/** @type {HTMLElement} */ field) => /** @type {HTMLInputElement | HTMLSelectElement} */ (field).value
  const apply = () => go("batch", batch, { ...query, station: value(station), from: startOf(value(from), 0), to: startOf(value(to), 1) })
  for (const field of [station, from, to]) field.addEventListener("change", apply)
  return el("form", { class: "narrowing", "aria-label": t("screen.narrow.title"), on: { submit: (/** @type {Event} */ event) => event.preventDefault() } },
    label("narrow-station", t("screen.narrow.station"), station), label("narrow-from", t("screen.narrow.from"), from), label("narrow-to", t("screen.narrow.to"), to),
    query.station || query.from || query.to ? el("button", { type: "button", class: "button quiet", on: { click: () => go("batch", batch, { ...query, station: null, from: null, to: null }) } }, t("screen.narrow.whole")) : null)
}

/** The instant at which a local day begins. @param {string} day as a date field has it; empty for none @param {number} later days @returns {string | null} */
export function startOf(day, later) {
  const [year, month, date] = day.split("-").map(Number)
  return date ? new Date(year, month - 1, date + later).toISOString() : null
}

/** The local day of an instant, as a date field wants it. @param {string | undefined} instant @param {number} later days @returns {string} */
export function dayOf(instant, later) {
  if (!instant || Number.isNaN(Date.parse(instant))) return ""
  const at = new Date(instant)
  at.setDate(at.getDate() + later)
  return [at.getFullYear(), String(at.getMonth() + 1).padStart(2, "0"), String(at.getDate()).padStart(2, "0")].join("-")
}

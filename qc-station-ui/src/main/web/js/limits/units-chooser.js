// Which recorded units the limits are tried on: batches of the tuning, stations, a span of time.
import { el, put } from "../dom.js"
import { t } from "../texts.js"
import { labelled } from "./proposal-panel.js"

/** @typedef {{ batches: string[], stations: string[], from: string, to: string }} Chosen dates as the fields give them, empty without */

export class UnitsChooser {
  #onChange
  #known
  /** @type {Chosen} */
  chosen
  #stations = el("div", { class: "chips" })
  #count = el("span", { class: "quiet" })
  #from = /** @type {HTMLInputElement} */ (el("input", { type: "date", id: "units-from" }))
  #to = /** @type {HTMLInputElement} */ (el("input", { type: "date", id: "units-to" }))

  /** @param {Api.BatchSummary[]} batches of the product and tuning @param {Chosen} chosen @param {() => void} onChange */
  constructor(batches, chosen, onChange) {
    this.#known = batches.map((batch) => ({ name: batch.batch, units: batch.units }))
    this.chosen = chosen
    this.#onChange = onChange
    for (const field of [this.#from, this.#to]) field.addEventListener("change", () => this.#dates())
    this.element = el("section", { class: "units-chooser" })
    this.#draw()
  }

  #draw() {
    put(this.element,
      el("div", { class: "chooser-row" }, el("span", { class: "quiet" }, t("screen.limits.units.batches")),
        el("div", { class: "chips" }, this.#known.map((batch) => this.#toggled("batches", batch.name, `${batch.name} \u00b7 ${batch.units}`))), this.#count),
      el("details", { class: "chooser-more" }, el("summary", {}, t("screen.limits.units.narrow")),
        el("div", { class: "chooser-row" }, el("span", { class: "quiet" }, t("screen.limits.units.stations")), this.#stations),
        el("div", { class: "chooser-row" }, labelled(this.#from, t("screen.limits.units.from")), labelled(this.#to, t("screen.limits.units.to")))))
  }

  /** What was read. @param {string} words @param {string[]} stations that measured them */
  tell(words, stations) {
    put(this.#count, words)
    if (!this.chosen.stations.length) put(this.#stations, stations.map((name) => this.#toggled("stations", name, name)))
  }

  /** @param {"batches" | "stations"} list @param {string} name @param {string} label */
  #toggled(list, name, label) {
    const chip = el("button", { type: "button", class: "chip", "aria-pressed": this.chosen[list].includes(name) ? "true" : "false", on: { click: () => this.#toggle(list, name, chip) } }, label)
    return chip
  }

  /** @param {"batches" | "stations"} list @param {string} name @param {HTMLElement} chip */
  #toggle(list, name, chip) {
    const had = this.chosen[list].includes(name)
    if (had && list === "batches" && this.chosen.batches.length === 1) return   // one at least
    this.chosen[list] = had ? this.chosen[list].filter((one) => one !== name) : [...this.chosen[list], name]
    chip.setAttribute("aria-pressed", had ? "false" : "true")
    this.#onChange()
  }

  #dates() {
    this.chosen.from = this.#from.value
    this.chosen.to = this.#to.value
    this.#onChange()
  }

  /** As a query of the service; the last day counts to its end. @returns {URLSearchParams} */
  query() {
    const query = new URLSearchParams()
    for (const batch of this.chosen.batches.slice(1)) query.append("also", batch)
    for (const station of this.chosen.stations) query.append("station", station)
    if (this.chosen.from) query.set("from", new Date(`${this.chosen.from}T00:00`).toISOString())
    if (this.chosen.to) {
      const end = new Date(`${this.chosen.to}T00:00`)
      end.setDate(end.getDate() + 1)
      query.set("to", end.toISOString())
    }
    return query
  }
}

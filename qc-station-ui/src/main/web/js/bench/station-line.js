// Which bench this is, whether news reach it, and what the station itself lacks before a pair is measured on it.
import { el, put } from "../dom.js"
import { remember } from "../memory.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { needLines } from "../station/needs.js"
import { t } from "../texts.js"

export class StationLine {
  #station
  #live = el("span", { class: "live", role: "status" })
  #needs = el("a", { class: "station-needs", hidden: true })

  /** @param {string} station */
  constructor(station) {
    this.#station = station
    this.element = el("header", { class: "station" }, el("h1", {}, station),
      el("a", { class: "quiet-link", href: "#/bench", on: { click: () => remember("station", null) } }, t("screen.bench.otherStation")), this.#live)
    this.needs = this.#needs
  }

  /** @param {import("../live.js").LiveState} state */
  showLive(state) {
    const words = { connecting: t("screen.live.connecting"), live: t("screen.live.live"), polling: t("screen.live.polling"), offline: t("screen.live.offline") }
    if (this.#live.dataset.state === state) return
    this.#live.dataset.state = state
    put(this.#live, words[state])
  }

  /** @param {Api.Station} station */
  showStation(station) {
    const lines = needLines(station)
    this.#needs.hidden = lines.length === 0
    this.#needs.setAttribute("href", hashOf("station", this.#station))
    this.#needs.className = `station-needs state-${station.state === "blocked" ? "blocked" : "reseat"}`
    put(this.#needs, shape(station.state === "blocked" ? "BLOCKED" : "PROBLEM"), el("span", {}, el("span", { class: "first-need", title: lines[0] ?? "" }, lines[0] ?? ""),
      lines.length > 1 ? el("span", { class: "more" }, t("screen.bench.moreNeeds", { n: lines.length - 1 })) : null))
  }
}

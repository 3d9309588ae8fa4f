// Health: every station and the service on one page, kept up to date while somebody looks.
import { get } from "../api.js"
import { walkLinks } from "../bench/choose-station.js"
import { coalesced } from "../coalesce.js"
import { el, put } from "../dom.js"
import { arrange, keepPlace } from "../keep-place.js"
import { listen } from "../live.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"
import { serviceCard } from "./service-card.js"
import { stationCard } from "./station-card.js"

/** Not asked more often than that, however fast the line is. */
const LEAST_MS = 1000
/** Spans of time run on without news. */
const RENEW_MS = 15_000

/** @type {import("../screens.js").StartScreen} */
export function startHealth(host) {
  return new HealthScreen(host)
}

class HealthScreen {
  #host
  #closed = new AbortController()
  #soon = coalesced(() => this.#renew(), LEAST_MS)
  #live
  #timer
  #state = el("p", { class: "live quiet", role: "status" })
  #service = el("section", { class: "health-card health-service" })
  #grid = el("div", { class: "health-grid" })
  /** @type {Map<string, HTMLElement>} */
  #cards = new Map()
  #page = el("section", { class: "health" }, el("header", { class: "health-head" }, el("h1", {}, t("screen.health.title")), this.#state), this.#service, this.#grid, el("p", { class: "more" }, t("screen.health.method")))

  /** @param {HTMLElement} host */
  constructor(host) {
    this.#host = host
    this.#live = listen({
      onNews: () => this.#soon.ask(), onStation: () => this.#soon.ask(), poll: () => this.#renew(),
      onState: (state) => {
        const words = { connecting: t("screen.live.connecting"), live: t("screen.live.live"), polling: t("screen.live.polling"), offline: t("screen.live.offline") }
        this.#state.dataset.state = state
        put(this.#state, words[state])
      },
    })
    this.#timer = window.setInterval(() => this.#soon.ask(), RENEW_MS)
    this.#load()
  }

  close() {
    this.#closed.abort()
    this.#soon.close()
    this.#live.close()
    clearInterval(this.#timer)
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    return walkLinks(this.#page, event)
  }

  async #load() {
    put(this.#host, busy(t("screen.health.loading")))
    try {
      this.#draw(await this.#read())
      put(this.#host, this.#page)
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#host, failed(failure, () => this.#load()))
    }
  }

  /** @returns {Promise<Api.PlantHealth>} */
  #read() {
    return get("/api/health/stations", this.#closed.signal)
  }

  async #renew() {
    const health = await this.#read()
    this.#draw(health)
    if (!this.#page.isConnected) put(this.#host, this.#page)
  }

  /** @param {Api.PlantHealth} health */
  #draw(health) {
    keepPlace(this.#service, () => put(this.#service, serviceCard(health.service, health.at)))
    for (const station of health.stations) {
      const card = this.#cards.get(station.station) ?? el("section", { class: "health-card", "aria-label": station.station })
      this.#cards.set(station.station, card)
      card.dataset.state = station.state
      keepPlace(card, () => put(card, stationCard(station, health.at)))
    }
    if (health.stations.length) arrange(this.#grid, health.stations.map((station) => /** @type {HTMLElement} */ (this.#cards.get(station.station))))
    else if (health.service.database) put(this.#grid, stateOf("WAITING", t("screen.health.empty.title"), t("screen.health.empty.mend")))
  }
}

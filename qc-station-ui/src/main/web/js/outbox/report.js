// Tells the service how many captures this browser holds for a station: when the number changes, and now and then, which says that it is heard of.
import { ownRequest } from "../api.js"

const AGAIN_MS = 60_000

export class HeldReport {
  #station
  #told = ""
  #toldAt = -Infinity

  /** @param {string} station */
  constructor(station) {
    this.#station = station
  }

  /** @param {import("./store.js").Held[]} held of every station, the oldest first @param {number} [now] ms of a steady clock */
  tell(held, now = performance.now()) {
    const own = held.filter((item) => item.attempt.station === this.#station)
    const body = JSON.stringify({ count: own.length, oldestAt: own[0]?.heldAt ?? null })
    if (body === this.#told && now - this.#toldAt < AGAIN_MS) return
    this.#told = body
    this.#toldAt = now
    fetch(`/api/stations/${encodeURIComponent(this.#station)}/held`, { method: "PUT", body, headers: { "Content-Type": "application/json", ...ownRequest() } })
      .then((answer) => { if (!answer.ok) this.#toldAt = -Infinity }, () => { this.#toldAt = -Infinity })
  }
}

// Badges at a bench that is enrolled: a scan that is no serial signs its operator in; while the service is away, those who signed in here lately
// are known by slow digests.
import { askWho } from "../access/session.js"
import { get, Offline, post, Problem } from "../api.js"
import { recall, remember } from "../memory.js"
import { fitsPattern } from "./history.js"

/**
 * @typedef {{ kdf: string, hash: string, iterations: number, salt: string, items: { derived: string, person: string, name: string, expiresAt: string }[] }} Known
 * @typedef {{ name: string, known: "service" | "bench" } | { refused: Api.ProblemDocument } | null} Found null: nobody's badge
 */

export class Badges {
  #station
  #enrolled = false

  /** @param {string} station */
  constructor(station) {
    this.#station = station
    this.#enrolled = this.#kept() !== null
  }

  /** Asks the service whether this browser belongs to the station, and whom it knows there. @param {AbortSignal} signal */
  async refresh(signal) {
    const session = /** @type {{ station: string | null }} */ (await get("/api/session", signal))
    this.#enrolled = session.station === this.#station
    if (this.#enrolled) remember(this.#key(), await get(`/api/stations/${encodeURIComponent(this.#station)}/known-badges`, signal))
  }

  /** @param {string} scanned @param {(string | null | undefined)[]} patterns of serials @returns {boolean} whether to ask whose badge it is */
  mayBe(scanned, patterns) {
    return this.#enrolled && mayBeBadge(scanned, patterns)
  }

  /** @param {string} badge @param {Date} now by the service's clock @returns {Promise<Found>} */
  async signIn(badge, now) {
    try {
      const session = /** @type {{ person: { name: string } }} */ (await post("/api/session/badge", { badge }))
      askWho().catch(() => {})   // the top bar shows who stands here now
      return { name: session.person.name, known: "service" }
    } catch (failure) {
      if (failure instanceof Offline) return this.#knownHere(badge, now)
      if (failure instanceof Problem && failure.document.status === 401) return null
      if (failure instanceof Problem) return { refused: failure.document }
      throw failure
    }
  }

  /** @param {string} badge @param {Date} now @returns {Promise<Found>} */
  async #knownHere(badge, now) {
    const known = this.#kept()
    const name = known && await nameOf(badge, known, now)
    return name ? { name, known: "bench" } : null
  }

  /** @returns {Known | null} */
  #kept() {
    return recall(this.#key())
  }

  #key() {
    return `badges.${this.#station}`
  }
}

/** Neither a serial nor a misread one: it has no beginning that serials have. @param {string} scanned @param {(string | null | undefined)[]} patterns @returns {boolean} */
export function mayBeBadge(scanned, patterns) {
  return patterns.every((pattern) => {
    if (!pattern || fitsPattern(scanned, pattern)) return false
    const beginning = /^[\p{L}\p{N}_-]{2,}/u.exec(pattern)?.[0]
    return !beginning || !scanned.startsWith(beginning)
  })
}

/** @param {string} badge @param {Known} known @param {Date} now @returns {Promise<string | null>} the name of whose it is, if the bench may still know */
export async function nameOf(badge, { iterations, salt, items }, now) {
  const still = items.filter((item) => Date.parse(item.expiresAt) > now.getTime())
  if (!still.length) return null
  const key = await crypto.subtle.importKey("raw", new TextEncoder().encode(badge.trim().normalize("NFC")), "PBKDF2", false, ["deriveBits"])
  const bits = await crypto.subtle.deriveBits({ name: "PBKDF2", hash: "SHA-256", iterations, salt: Uint8Array.from(atob(salt), (c) => c.charCodeAt(0)) }, key, 256)
  const derived = btoa(String.fromCharCode(...new Uint8Array(bits)))
  return still.find((item) => item.derived === derived)?.name ?? null
}

// The outbox of this browser: keeps captures, sends them in order as soon as the service takes them, tells what becomes of each.
import { newKey, Offline, Problem, sendCapture } from "../api.js"
import { courseOf, fateOf, mustComeBack, roomFor, seatingAfter, waitAfter } from "./policy.js"
import { OutboxStore } from "./store.js"

/**
 * @typedef {import("./store.js").Held} Held
 * @typedef {import("./store.js").Shelved} Shelved
 * @typedef {import("./store.js").ComeBack} ComeBack
 * @typedef {"idle" | "sending" | "away" | "sign-in"} SenderState
 * @typedef {{ held: Held[], shelf: Shelved[], again: ComeBack[], sender: SenderState, kept: boolean | null }} OutboxState `kept`: whether the browser
 *     promised not to clear it; null where it was not asked
 * @typedef {{ what: "answered", key: string, inspection: Api.Inspection } | { what: "refused", key: string, document: Api.ProblemDocument }
 *     | { what: "waiting", key: string, sender: SenderState } | { what: "changed" }} News
 */

const LOCK = "evenpair-outbox"
const LOOK_MS = 15_000

export class Outbox {
  #store
  #send
  #channel = "BroadcastChannel" in self ? new BroadcastChannel(LOCK) : null
  /** @type {Set<(news: News) => void>} */
  #listeners = new Set()
  /** @type {SenderState} */
  #sender = "idle"
  /** @type {boolean | null} */
  #kept = null
  #tries = 0
  #timer = 0
  #draining = false
  #wanted = false

  /** @param {OutboxStore} [store] @param {typeof sendCapture} [send] */
  constructor(store = new OutboxStore(), send = sendCapture) {
    this.#store = store
    this.#send = send
    this.#channel?.addEventListener("message", (event) => this.#hear(event.data))
  }

  /** Sends what an earlier page left, and again whenever the service may be back. */
  start() {
    addEventListener("online", () => this.wake())
    setInterval(() => { if (this.#sender === "idle") this.wake() }, LOOK_MS)   // what another tab left behind when it was closed
    navigator.storage?.persist?.().then((kept) => { this.#kept = kept; this.#tell({ what: "changed" }) }, () => {})
    this.wake()
  }

  /** @param {(news: News) => void} listener @returns {() => void} stops listening */
  listen(listener) {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** @returns {Promise<OutboxState>} */
  async state() {
    const [held, shelf, again] = await Promise.all([this.#store.held(), this.#store.shelf(), this.#store.again()])
    return { held, shelf, again, sender: this.#sender, kept: this.#kept }
  }

  /** @param {number} captureBytes of a pair @returns {Promise<boolean>} whether the browser has room for another */
  async hasRoom(captureBytes) {
    return roomFor(await (navigator.storage?.estimate?.() ?? Promise.resolve(null)).catch(() => null), captureBytes)
  }

  /**
   * Keeps a capture and sends it as soon as it can be.
   * @param {string} key new and its own @param {Api.NewAttempt} attempt @param {import("./store.js").Part[]} parts
   * @returns {Promise<void>} once it is on the disk
   */
  async add(key, attempt, parts) {
    const waiting = (await this.#store.held()).some((item) => courseOf(item.attempt) === courseOf(attempt))
    const item = {
      key, capture: key, size: parts.reduce((sum, part) => sum + part.bytes.byteLength, 0), failures: 0, counted: false,
      attempt: waiting ? { ...attempt, seating: 0 } : attempt, heldAt: new Date().toISOString(),
    }
    await this.#store.hold(item, parts)
    this.#announce({ what: "changed" })
    this.wake()
  }

  /** Sends a refused capture once more, as it was corrected. @param {Shelved} shelved @param {Partial<Api.NewAttempt>} corrected */
  async sendAgain(shelved, corrected) {
    const { seq, shelvedAt, document, ...item } = shelved
    await this.#store.takeUp(shelved.key, { ...item, key: newKey(), failures: 0, counted: false, attempt: { ...item.attempt, ...corrected, seating: 0 } })
    this.#announce({ what: "changed" })
    this.wake()
  }

  /** The files of a capture, to be saved elsewhere. @param {Held} item */
  parts(item) {
    return this.#store.parts(item)
  }

  /** @param {Shelved} shelved */
  async discard(shelved) {
    await this.#store.discard(shelved)
    this.#announce({ what: "changed" })
  }

  /** @param {ComeBack} unit */
  async forget(unit) {
    await this.#store.forget(unit)
    this.#announce({ what: "changed" })
  }

  /** Tries at once. */
  wake() {
    clearTimeout(this.#timer)
    this.#wanted = true
    if (!this.#draining) this.#drain()
  }

  async #drain() {
    this.#draining = true
    try {
      while (this.#wanted) {
        this.#wanted = false
        await oneAtATime(() => this.#sendAll())
      }
    } catch {
      this.#later()   // the browser's own storage failed: what is in it stays
    } finally {
      this.#draining = false
    }
  }

  async #sendAll() {
    for (let item = await this.#store.oldest(); item; item = await this.#store.oldest()) {
      if (!await this.#one(item)) return
      this.#tries = 0
    }
    this.#become("idle")
  }

  /** @param {Held} item @returns {Promise<boolean>} whether to go on with the queue */
  async #one(item) {
    if (item.attempt.seating === 0) {
      item.attempt = { ...item.attempt, seating: await this.#store.seating(courseOf(item.attempt)) }
      await this.#store.amend(item)   // every try of one key has the same body
    }
    if (this.#sender === "idle") this.#become("sending")
    try {
      await this.#taken(item, await this.#send(item, await this.#store.parts(item)))
      return true
    } catch (failure) {
      if (failure instanceof Problem) return this.#refused(item, failure)
      if (!(failure instanceof Offline)) throw failure
      this.#wait(item, "away")
      return false
    }
  }

  /** @param {Held} item @param {Api.Inspection} inspection */
  async #taken(item, inspection) {
    const course = courseOf(item.attempt)
    const others = (await this.#store.held()).filter((other) => other.seq !== item.seq)
    const comeBack = mustComeBack(inspection, others) ? {
      course, serial: inspection.serial, product: inspection.product, tuning: inspection.tuning, occasion: inspection.occasion,
      station: item.attempt.station, word: inspection.lastAttempt ?? "INVALID", at: item.heldAt, inspection: inspection.id,
    } : null
    await this.#store.taken(item, course, seatingAfter(inspection), comeBack)
    this.#announce({ what: "answered", key: item.key, inspection })
  }

  /** @param {Held} item @param {Problem} problem @returns {Promise<boolean>} whether to go on with the queue */
  async #refused(item, problem) {
    const { status, type, expected } = problem.document
    if (isType(type, "unexpected-seating") && !item.counted && Number.isInteger(expected)) {
      // what was measured while nobody could count: the service counts, nothing of the refused try was kept
      await this.#store.amend({ ...item, counted: true, attempt: { ...item.attempt, seating: Number(expected) } })
      return true
    }
    const failures = item.failures + (status === 500 ? 1 : 0)
    const fate = fateOf(status, type, failures)
    if (fate === "refused") {
      await this.#store.shelve(item, problem.document, new Date().toISOString())
      this.#announce({ what: "refused", key: item.key, document: problem.document })
      return true
    }
    if (failures !== item.failures) await this.#store.amend({ ...item, failures })
    this.#wait(item, fate === "sign-in" ? "sign-in" : "away")
    return false
  }

  /** @param {Held} item @param {SenderState} sender */
  #wait(item, sender) {
    this.#become(sender)
    this.#announce({ what: "waiting", key: item.key, sender })
    this.#later()
  }

  #later() {
    this.#tries++
    clearTimeout(this.#timer)
    this.#timer = window.setTimeout(() => this.wake(), waitAfter(this.#tries, Math.random()))
  }

  /** @param {SenderState} sender */
  #become(sender) {
    if (this.#sender === sender) return
    this.#sender = sender
    this.#announce({ what: "changed" })
  }

  /** To every tab. @param {News} news */
  #announce(news) {
    this.#channel?.postMessage({ news, sender: this.#sender })
    this.#tell(news)
  }

  /** @param {{ news: News, sender: SenderState }} message of another tab */
  #hear({ news, sender }) {
    this.#sender = sender === "sending" ? "idle" : sender
    this.#tell(news)
  }

  /** @param {News} news */
  #tell(news) {
    for (const listener of this.#listeners) listener(news)
  }
}

/** @param {string | undefined} type of a problem document @param {string} word */
function isType(type, word) {
  return (type ?? "").split("/").pop() === word
}

/** One sender across the tabs of a browser, so that the order holds. @param {() => Promise<void>} work */
function oneAtATime(work) {
  return navigator.locks ? navigator.locks.request(LOCK, work) : work()
}

export const outbox = new Outbox()

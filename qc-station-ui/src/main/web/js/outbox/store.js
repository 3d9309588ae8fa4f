// Where captures lie until the service has acknowledged them: IndexedDB, each write on the disk before it counts as done.
import { openDB } from "../vendor.js"
import { courseOf } from "./policy.js"

/**
 * @typedef {{ name: string, file: string, type: string, bytes: ArrayBuffer }} Part one file of a capture
 * @typedef {{
 *   seq?: number, key: string, capture: string, size: number, attempt: Api.NewAttempt, heldAt: string, failures: number, counted: boolean
 * }} Held `key` is the Idempotency-Key of every try, `capture` names the files; `attempt.seating` 0 means: told when its turn comes;
 *     `counted`: the service has told the seating once already
 * @typedef {Held & { shelvedAt: string, document: Api.ProblemDocument }} Shelved
 * @typedef {{ course: string, serial: string, product: string, tuning: string, occasion: string, station: string, word: string, at: string, inspection: string }} ComeBack
 */

const NAME = "evenpair-outbox"
const STRICT = /** @type {{ durability: "strict" }} */ ({ durability: "strict" })

/** The browser has no room left. */
export class Full extends Error {}

export class OutboxStore {
  /** @type {Promise<import("/webjars/idb/7.0.1/build/index.js").Database> | null} */
  #open = null

  /** Keeps a capture. @param {Held} item @param {Part[]} parts @returns {Promise<void>} once it is on the disk; rejects with Full where there is no room */
  async hold(item, parts) {
    await this.#write(["held", "files", "again"], async (stores) => {
      await stores("files").add(parts, item.capture)
      await stores("held").add(item)
      await stores("again").delete(courseOf(item.attempt))
    })
  }

  /** @returns {Promise<Held | null>} the one whose turn it is */
  async oldest() {
    const cursor = await this.#read("held").then((store) => store.openCursor())
    return cursor ? cursor.value : null
  }

  /** @returns {Promise<Held[]>} in the order of measuring */
  async held() {
    return (await this.#read("held")).getAll()
  }

  /** @param {Held} item @returns {Promise<Part[]>} its files */
  async parts(item) {
    return (await this.#read("files")).get(item.capture)
  }

  /** @returns {Promise<Shelved[]>} */
  async shelf() {
    return (await this.#read("shelf")).getAll()
  }

  /** @returns {Promise<ComeBack[]>} units to measure again */
  async again() {
    return (await this.#read("again")).getAll()
  }

  /** Changes what is known of a held capture, before it is sent. @param {Held} item */
  async amend(item) {
    await this.#write(["held"], (stores) => stores("held").put(item))
  }

  /** @param {string} course @returns {Promise<number>} the next seating as the last answer gave it; 1 if there was none */
  async seating(course) {
    return (await (await this.#read("seatings")).get(course)) ?? 1
  }

  /**
   * The service has acknowledged a capture: it goes, and what follows from the answer stays, in one step.
   * @param {Held} item @param {string} course @param {number} seating @param {ComeBack | null} comeBack
   */
  async taken(item, course, seating, comeBack) {
    await this.#write(["held", "files", "again", "seatings"], async (stores) => {
      await stores("held").delete(Number(item.seq))
      await stores("files").delete(item.capture)
      if (seating > 1) await stores("seatings").put(seating, course)
      else await stores("seatings").delete(course)
      if (comeBack) await stores("again").put(comeBack)
      else await stores("again").delete(courseOf(item.attempt))
    })
  }

  /** The service has refused a capture: out of the queue, onto the shelf. @param {Held} item @param {Api.ProblemDocument} document @param {string} shelvedAt */
  async shelve(item, document, shelvedAt) {
    await this.#write(["held", "shelf"], async (stores) => {
      await stores("shelf").put({ ...item, document, shelvedAt })
      await stores("held").delete(Number(item.seq))
    })
  }

  /** From the shelf to the end of the queue. @param {string} key on the shelf @param {Held} item with a key of its own */
  async takeUp(key, item) {
    await this.#write(["held", "shelf"], async (stores) => {
      await stores("held").add(item)
      await stores("shelf").delete(key)
    })
  }

  /** @param {Shelved} item on the shelf */
  async discard(item) {
    await this.#write(["shelf", "files"], async (stores) => {
      await stores("shelf").delete(item.key)
      await stores("files").delete(item.capture)
    })
  }

  /** A unit that need not come back, for an engineer says so. @param {ComeBack} unit */
  async forget(unit) {
    await this.#write(["again"], (stores) => stores("again").delete(unit.course))
  }

  /** @returns {Promise<import("/webjars/idb/7.0.1/build/index.js").Database>} */
  #database() {
    this.#open ??= openDB(NAME, 1, {
      upgrade(database) {
        database.createObjectStore("held", { keyPath: "seq", autoIncrement: true })
        database.createObjectStore("files")
        database.createObjectStore("shelf", { keyPath: "key" })
        database.createObjectStore("again", { keyPath: "course" })
        database.createObjectStore("seatings")
      },
      blocking: () => this.#close(),
      terminated: () => this.#close(),
    })
    this.#open.catch(() => { this.#open = null })
    return this.#open
  }

  #close() {
    this.#open?.then((database) => database.close(), () => {})
    this.#open = null
  }

  /** @param {string} name */
  async #read(name) {
    return (await this.#database()).transaction(name).objectStore(name)
  }

  /** @param {string[]} names @param {(stores: (name: string) => import("/webjars/idb/7.0.1/build/index.js").Store) => Promise<unknown>} work */
  async #write(names, work) {
    try {
      const transaction = (await this.#database()).transaction(names, "readwrite", STRICT)
      await Promise.all([work((name) => transaction.objectStore(name)), transaction.done])
    } catch (failure) {
      throw failure instanceof DOMException && failure.name === "QuotaExceededError" ? new Full() : failure
    }
  }
}

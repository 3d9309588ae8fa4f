// Captures from the station's own sound devices: the level meter, the caution about loud signals, and the sweep.
import { el, put } from "../dom.js"
import { db } from "../format.js"
import { hashOf } from "../router.js"
import { confirmCaution, confirmedCaution } from "../sound/caution.js"
import { SoundProblem } from "../sound/problem.js"
import { hasChoice, openRecorder, OVERLOAD_DBFS } from "../sound/recorder.js"
import { t } from "../texts.js"

/**
 * @typedef {import("./flow.js").Notice} Notice
 * @typedef {import("../sound/checks.js").Flaw} Flaw
 * @typedef {{ parts: import("../outbox/store.js").Part[], flaws: Flaw[] } | { notice: Notice }} Taken
 */

/** The bottom of the meter. */
const LOWEST_DB = -72

/** @param {string} station @returns {boolean} whether this browser knows the station's sound devices */
export function hasDevices(station) {
  return hasChoice(station)
}

export class DeviceCapture {
  #station
  #told
  /** @type {import("../sound/recorder.js").Recorder | null} */
  #recorder = null
  #used = false
  /** @type {AbortController | null} */
  #abort = null
  #said = el("p", { class: "device-state", role: "status" })
  #meters = { left: meter("left"), right: meter("right") }

  /** @param {string} station @param {{ changed: () => void, lost: (notice: Notice) => void, progress: (share: number | null) => void }} told */
  constructor(station, told) {
    this.#station = station
    this.#told = told
    this.element = el("div", { class: "device-capture" }, this.#meters.left.element, this.#meters.right.element, this.#said,
      el("a", { class: "quiet-link devices-link", href: hashOf("sound", station) }, t("screen.bench.devices")))
  }

  /** Opens the devices once they are to be used. @param {boolean} used */
  use(used) {
    this.#used = used
    if (!used) return void this.#shut()
    if (!this.#recorder) this.#open().catch((failure) => this.#say(failure))
  }

  /** @returns {boolean} whether the caution still has to be confirmed in this shift */
  needsCaution() {
    return confirmedCaution(this.#station) === null
  }

  /** Shows the caution; Enter confirms it. @param {string} operator @returns {Promise<boolean>} whether it was confirmed */
  askCaution(operator) {
    const confirm = el("button", { type: "button", class: "button primary", on: { click: () => dialog.close("confirmed") } }, t("screen.bench.cautionConfirm"))
    const dialog = /** @type {HTMLDialogElement} */ (el("dialog", { class: "keys caution", "aria-labelledby": "caution-title" },
      el("h2", { id: "caution-title" }, t("screen.bench.cautionTitle")), el("p", {}, t("stimulus.caution")), confirm))
    document.body.append(dialog)
    dialog.showModal()
    confirm.focus()
    return new Promise((resolve) => dialog.addEventListener("close", () => {
      const confirmed = dialog.returnValue === "confirmed"
      if (confirmed) confirmCaution(this.#station, operator)
      dialog.remove()
      document.dispatchEvent(new CustomEvent("evenpair-dialog-closed"))
      resolve(confirmed)
    }))
  }

  /** @param {string | undefined} outputCalibration changes when the output is calibrated @returns {Promise<Taken | null>} null if it was aborted */
  async sweep(outputCalibration) {
    const abort = this.#abort = new AbortController()
    try {
      if (!this.#recorder) await this.#open()
      if (!this.#recorder) return null
      const capture = await this.#recorder.sweep(null, { outputCalibration, signal: abort.signal, onProgress: (what) => this.#told.progress(what === "quiet" ? 0.05 : what === "sweep" ? null : 1) })
      const parts = await Promise.all(/** @type {const} */ (["left", "right"]).map(async (side) => (
        { name: side, file: `${side}.wav`, type: "audio/wav", bytes: await capture[side].arrayBuffer() })))
      return { parts, flaws: capture.flaws }
    } catch (failure) {
      if (abort.signal.aborted) return null
      this.#say(failure)
      return { notice: noticeOf(failure) }
    } finally {
      if (this.#abort === abort) this.#abort = null
    }
  }

  abort() {
    this.#abort?.abort()
  }

  close() {
    this.abort()
    this.#shut()
  }

  async #open() {
    const recorder = await openRecorder(this.#station)
    if (!this.#used) return recorder.close()
    this.#recorder = recorder
    put(this.#said)
    recorder.meter((levels) => {
      this.#meters.left.show(levels.left)
      this.#meters.right.show(levels.right)
    })
    recorder.onLost((problem) => {
      this.#say(problem)
      if (this.#abort) this.#told.lost(noticeOf(problem))
    })
    recorder.onBack(() => put(this.#said))
    this.#told.changed()
  }

  #shut() {
    this.#recorder?.close().catch(() => {})
    this.#recorder = null
  }

  /** @param {unknown} failure */
  #say(failure) {
    const notice = noticeOf(failure)
    put(this.#said, t(notice.key, notice.values))
  }
}

/** @param {unknown} failure @returns {Notice} */
function noticeOf(failure) {
  if (failure instanceof SoundProblem) return { key: failure.key, values: failure.values }
  return { key: "screen.bench.soundFailed", values: { why: failure instanceof Error ? failure.message : String(failure) } }
}

/** One channel's level: peak as a bar, the held peak as a number; warns in words, not in colour alone. @param {"left" | "right"} side */
function meter(side) {
  const bar = /** @type {HTMLMeterElement} */ (el("meter", { min: LOWEST_DB, max: 0, low: LOWEST_DB, high: OVERLOAD_DBFS, optimum: -12, value: LOWEST_DB }))
  const number = el("span", { class: "level-number" })
  const element = el("p", { class: `level ${side}` }, el("span", { class: "side" }, side === "left" ? t("screen.bench.left") : t("screen.bench.right")), bar, number)
  let shown = ""
  return {
    element,
    /** @param {import("../sound/levels.js").Level} level */
    show(level) {
      bar.value = Math.max(LOWEST_DB, level.peakDb)
      const text = level.holdDb > OVERLOAD_DBFS ? t("screen.bench.overload") : level.holdDb === -Infinity ? t("screen.bench.silent") : t("screen.bench.dbfs", { level: db(level.holdDb) })
      if (text === shown) return
      shown = text
      put(number, text)
    },
  }
}

// Captures from files: left and right, or one two-channel file; for sets that judge idle noise the idle unit's recordings beside them.
import { el, put } from "../dom.js"
import { size } from "../format.js"
import { recall, remember } from "../memory.js"
import { t } from "../texts.js"

const KEPT = "captureFiles"
/** @typedef {"left" | "right" | "both" | "idleLeft" | "idleRight"} PartName the parts of the HTTP contract */

/** What each picker is called; the text keys are written out so that a search finds them. */
const LABELS = /** @type {Record<PartName, () => string>} */ ({
  left: () => t("screen.bench.left"), right: () => t("screen.bench.right"), both: () => t("screen.bench.both"),
  idleLeft: () => t("screen.bench.idleLeft"), idleRight: () => t("screen.bench.idleRight"),
})

export class FileCapture {
  #pickers = /** @type {Record<PartName, Picker>} */ ({})
  #changed
  #kept = { both: false, idle: false, ...recall(KEPT) }
  #both = check("files-both", this.#kept.both, () => this.#drawn())
  #idle = check("files-idle", this.#kept.idle, () => this.#drawn())
  #room = el("div", { class: "captures" })

  /** @param {() => void} changed */
  constructor(changed) {
    this.#changed = changed
    for (const name of /** @type {PartName[]} */ (Object.keys(LABELS))) this.#pickers[name] = new Picker(name, () => this.#picked(name))
    this.element = el("div", { class: "file-capture" }, this.#room,
      el("div", { class: "file-options" }, labelledCheck(this.#both, t("screen.bench.oneFile")), labelledCheck(this.#idle, t("screen.bench.withIdle"))))
    this.#draw()
  }

  /** @returns {HTMLElement | null} the first picker that has no file yet */
  missing() {
    return this.#wanted().find((picker) => !picker.file)?.button ?? null
  }

  /** @returns {boolean} whether no file has been chosen */
  isEmpty() {
    return this.#wanted().every((picker) => !picker.file)
  }

  /** @returns {number} bytes of what is chosen */
  get size() {
    return this.#wanted().reduce((sum, picker) => sum + (picker.file?.size ?? 0), 0)
  }

  /** @returns {Promise<import("../outbox/store.js").Part[]>} the files as they are now */
  read() {
    return Promise.all(this.#wanted().map(async ({ name, file }) => {
      if (!file) throw new RangeError(`no file for ${name}`)
      return { name, file: file.name, type: typeOf(file.name), bytes: await file.arrayBuffer() }
    }))
  }

  clear() {
    for (const picker of Object.values(this.#pickers)) picker.clear()
  }

  #wanted() {
    const parts = /** @type {PartName[]} */ (this.#both.checked ? ["both"] : ["left", "right"])
    if (this.#idle.checked) parts.push("idleLeft", "idleRight")
    return parts.map((name) => this.#pickers[name])
  }

  #drawn() {
    remember(KEPT, { both: this.#both.checked, idle: this.#idle.checked })
    this.#draw()
    this.#changed()
  }

  #draw() {
    put(this.#room, this.#wanted().map((picker) => picker.element))
    this.#room.classList.toggle("one", this.#both.checked)
  }

  /** @param {PartName} name */
  #picked(name) {
    this.#changed()
    const missing = this.missing()
    if (missing && missing !== this.#pickers[name].button) missing.focus()
    else if (!missing) this.element.dispatchEvent(new CustomEvent("evenpair-files-ready", { bubbles: true }))
  }
}

/** One capture's file, chosen with the browser's own dialog behind a button of ours. */
class Picker {
  /** @type {File | null} */
  file = null
  #label = el("span", { class: "file-name" })

  /** @param {PartName} name @param {() => void} onPick */
  constructor(name, onPick) {
    this.name = name
    const side = name.toLowerCase().includes("left") ? "left" : name === "both" ? "both" : "right"
    this.input = /** @type {HTMLInputElement} */ (el("input", { type: "file", id: `${name}-file`, class: "file-input", accept: ".wav,.csv,audio/wav,text/csv", tabindex: -1, "aria-hidden": "true" }))
    this.button = el("button", { type: "button", class: `button capture ${side}`, on: { click: () => this.input.click() } }, el("span", { class: "side" }, LABELS[name]()), this.#label)
    this.input.addEventListener("change", () => {
      this.file = this.input.files?.[0] ?? null
      this.#draw()
      if (this.file) onPick()
    })
    this.element = el("div", { class: "capture-picker" }, this.button, this.input)
    this.#draw()
  }

  clear() {
    this.file = null
    this.input.value = ""
    this.#draw()
  }

  #draw() {
    this.button.classList.toggle("chosen", this.file !== null)
    put(this.#label, this.file ? `${this.file.name} \u00b7 ${size(this.file.size)}` : t("screen.bench.chooseFile"))
  }
}

/** Browsers disagree on the type of a .wav; the contract does not. @param {string} name @returns {string} */
export function typeOf(name) {
  return /\.(csv|txt)$/i.test(name) ? "text/csv" : "audio/wav"
}

/** @param {string} id @param {boolean} checked @param {() => void} changed */
export function check(id, checked, changed) {
  return /** @type {HTMLInputElement} */ (el("input", { type: "checkbox", id, checked, on: { change: changed } }))
}

/** @param {HTMLInputElement} box @param {string} text */
export function labelledCheck(box, text) {
  return el("label", { class: "checked", for: box.id }, box, text)
}

// What is being measured: the serial under the scanner, the two captures, and what stays the same all shift.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { size } from "../format.js"
import { recall, remember } from "../memory.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { needLines } from "../station/needs.js"
import { t } from "../texts.js"

const SHIFT = "shift"

export class AttemptForm {
  #station
  #send
  /** @type {Api.Product[]} */
  #products = []
  #kept = recall(SHIFT) ?? {}
  #live = el("span", { class: "live", role: "status" })
  #needs = el("a", { class: "station-needs", hidden: true })
  #hint = el("p", { class: "hint", role: "status" })
  #left = new CapturePicker("left", () => this.#picked("left"))
  #right = new CapturePicker("right", () => this.#picked("right"))
  #submit = /** @type {HTMLButtonElement} */ (el("button", { type: "submit", class: "button primary" }, t("screen.bench.send")))
  #batch = field("batch", { value: this.#kept.batch ?? "" })
  #operator = field("operator", { value: this.#kept.operator ?? "" })
  #product = /** @type {HTMLSelectElement} */ (el("select", { id: "product", name: "product" }))
  #tuning = /** @type {HTMLSelectElement} */ (el("select", { id: "tuning", name: "tuning" }))
  #seating = 1

  /** @param {string} station @param {() => void} send */
  constructor(station, send) {
    this.#station = station
    this.#send = send
    this.serial = field("serial", { class: "serial-field", maxlength: 64, enterkeyhint: "next" })
    this.element = el("form", { class: "attempt", novalidate: true, on: { submit: (/** @type {Event} */ e) => this.#submitted(e), change: () => this.#changed() } },
      el("header", { class: "station" }, el("h1", {}, station),
        el("a", { class: "quiet-link", href: "#/bench", on: { click: () => remember("station", null) } }, t("screen.bench.otherStation")), this.#live),
      this.#needs,
      labelled("serial", t("screen.bench.serial"), this.serial),
      el("div", { class: "captures" }, this.#left.element, this.#right.element),
      this.#submit, this.#hint,
      el("fieldset", { class: "shift" }, el("legend", {}, t("screen.bench.shift")),
        labelled("batch", t("screen.bench.batch"), this.#batch), labelled("operator", t("screen.bench.operator"), this.#operator),
        labelled("product", t("screen.bench.product"), this.#product), labelled("tuning", t("screen.bench.tuning"), this.#tuning)))
    this.#loadProducts()
    this.#tell()
  }

  focusSerial() {
    this.serial.focus()
    this.serial.select()
  }

  /** Esc: an empty form again. */
  clear() {
    this.serial.value = ""
    this.#left.clear()
    this.#right.clear()
    this.#seating = 1
    this.#tell()
    this.focusSerial()
  }

  /** @returns {{ attempt: Api.NewAttempt, left: File, right: File } | null} null if something is missing; the hint says what */
  attempt() {
    const serial = this.serial.value.trim().normalize("NFC")
    const left = this.#left.file, right = this.#right.file
    if (!serial || !left || !right) return null
    const attempt = {
      serial, batch: this.#batch.value.trim(), product: this.#product.value, tuning: this.#tuning.value,
      station: this.#station, operator: this.#operator.value.trim(), seating: this.#seating,
    }
    return { attempt, left, right }
  }

  /** The attempt is stored: what was chosen for it goes. @param {Api.Inspection} inspection */
  taken(inspection) {
    this.#left.clear()
    this.#right.clear()
    this.#seating = inspection.next === "another-seating" ? (inspection.seatings?.valid ?? this.#seating) + 1 : inspection.next === "reseat" ? this.#seating : 1
    if (inspection.next === "done") this.serial.value = ""
    else this.serial.value = inspection.serial
    this.#tell()
  }

  /** At a browser that remembers no shift, what this bench measured last is the best guess; never under the hand of someone who types. @param {Api.Inspection} newest */
  suggest(newest) {
    if (this.#batch === document.activeElement) return
    if (this.#kept.batch || this.#batch.value || this.#kept.product) return
    this.#batch.value = newest.batch
    this.#kept = { ...this.#kept, product: newest.product, tuning: newest.tuning }
    this.#drawProducts()
    this.#tell()
  }

  /** @param {boolean} busy */
  setBusy(busy) {
    this.#submit.disabled = busy
    this.element.classList.toggle("busy", busy)
  }

  /** @param {import("../live.js").LiveState} state */
  showLive(state) {
    const words = { connecting: t("screen.live.connecting"), live: t("screen.live.live"), polling: t("screen.live.polling"), offline: t("screen.live.offline") }
    if (this.#live.dataset.state === state) return
    this.#live.dataset.state = state
    put(this.#live, words[state])
  }

  /** What the station itself lacks, before a pair is measured on it. @param {Api.Station} station */
  showStation(station) {
    const lines = needLines(station)
    this.#needs.hidden = lines.length === 0
    this.#needs.setAttribute("href", hashOf("station", this.#station))
    this.#needs.className = `station-needs state-${station.state === "blocked" ? "blocked" : "reseat"}`
    put(this.#needs, shape(station.state === "blocked" ? "BLOCKED" : "PROBLEM"), el("span", {}, el("span", { class: "first-need", title: lines[0] ?? "" }, lines[0] ?? ""),
      lines.length > 1 ? el("span", { class: "more" }, t("screen.bench.moreNeeds", { n: lines.length - 1 })) : null))
  }

  /** Enter does the obvious next thing: the next thing that is missing, or send. @param {Event} event */
  #submitted(event) {
    event.preventDefault()
    const missing = [
      { gone: !this.serial.value.trim(), at: this.serial },
      { gone: !this.#left.file, at: this.#left.button },
      { gone: !this.#right.file, at: this.#right.button },
      { gone: !this.#batch.value.trim(), at: this.#batch },
      { gone: !this.#product.value, at: this.#product },
      { gone: !this.#tuning.value, at: this.#tuning },
      { gone: !this.#operator.value.trim(), at: this.#operator },
    ].find((part) => part.gone)
    this.#tell()
    if (missing) missing.at.focus()
    else this.#send()
  }

  /** @param {"left" | "right"} side */
  #picked(side) {
    this.#tell()
    if (side === "left" && !this.#right.file) this.#right.button.focus()
    else if (this.#left.file && this.#right.file) this.#submit.focus()
  }

  #tell() {
    const serial = this.serial.value.trim()
    put(this.#hint, !serial ? t("screen.hint.serial") : !this.#left.file ? t("screen.hint.left") : !this.#right.file ? t("screen.hint.right")
      : !this.#batch.value.trim() || !this.#product.value || !this.#tuning.value || !this.#operator.value.trim() ? t("screen.hint.shift") : t("screen.hint.send"))
  }

  #changed() {
    this.#kept = { batch: this.#batch.value.trim(), operator: this.#operator.value.trim(), product: this.#product.value, tuning: this.#tuning.value }
    this.#drawTunings()
    this.#kept.tuning = this.#tuning.value
    remember(SHIFT, this.#kept)
    this.#tell()
  }

  async #loadProducts() {
    try {
      const page = /** @type {Api.Page<Api.Product>} */ (await get("/api/products"))
      this.#products = page.items
      remember("products", page.items)
    } catch {
      this.#products = recall("products") ?? []   // the live state already says that the service is away
    }
    this.#drawProducts()
    this.#tell()
  }

  #drawProducts() {
    put(this.#product, this.#products.map((product) => option(product.product, product.name, this.#kept.product)))
    this.#drawTunings()
  }

  #drawTunings() {
    const product = this.#products.find((candidate) => candidate.product === this.#product.value)
    put(this.#tuning, (product?.tunings ?? []).map((tuning) => option(tuning.tuning, tuning.tuning, this.#kept.tuning)))
  }
}

/** One capture's file, chosen with the browser's own dialog behind a button of ours. */
class CapturePicker {
  /** @type {File | null} */
  file = null
  #name = el("span", { class: "file-name" })
  #side

  /** @param {"left" | "right"} side @param {() => void} onPick */
  constructor(side, onPick) {
    this.#side = side
    this.input = /** @type {HTMLInputElement} */ (el("input", { type: "file", id: `${side}-file`, class: "file-input", accept: ".wav,.csv,audio/wav,text/csv", tabindex: -1, "aria-hidden": "true" }))
    this.button = el("button", { type: "button", class: `button capture ${side}`, on: { click: () => this.input.click() } },
      el("span", { class: "side" }, side === "left" ? t("screen.bench.left") : t("screen.bench.right")), this.#name)
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
    put(this.#name, this.file ? `${this.file.name} \u00b7 ${size(this.file.size)}` : this.#side === "left" ? t("screen.bench.chooseLeft") : t("screen.bench.chooseRight"))
  }
}

/** @param {string} name @param {Record<string, any>} props */
function field(name, props) {
  return /** @type {HTMLInputElement} */ (el("input", { id: name, name, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", ...props }))
}

/** @param {string} id @param {string} label @param {HTMLElement} control */
function labelled(id, label, control) {
  return el("div", { class: "labelled" }, el("label", { for: id }, label), control)
}

/** @param {string} value @param {string} label @param {string | undefined} chosen */
function option(value, label, chosen) {
  return el("option", { value, selected: value === chosen }, label)
}

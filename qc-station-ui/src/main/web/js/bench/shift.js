// What stays for a shift: batch, product, tunings, operator. Asked at its start, kept, shown in one line.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { recall, remember } from "../memory.js"
import { t } from "../texts.js"
import { tuningsOf } from "./history.js"

const KEPT = "shift"
/** A shift that began longer ago has ended: what it was is asked anew, filled in as it was. */
export const SHIFT_MS = 12 * 3600 * 1000

export class ShiftForm {
  /** @type {Api.Product[]} */
  #products = []
  #kept = recall(KEPT) ?? {}
  #changed
  /** Somebody has typed or pressed a key in the batch. */
  #touched = false
  #batch = field("batch", { value: this.#kept.batch ?? "" })
  #operator = field("operator", { value: this.#kept.operator ?? "" })
  #product = /** @type {HTMLSelectElement} */ (el("select", { id: "product", name: "product" }))
  #tuning = /** @type {HTMLSelectElement} */ (el("select", { id: "tuning", name: "tuning" }))
  #line = el("span", { class: "shift-line" })
  #change = el("button", { type: "button", class: "button quiet shift-change", on: { click: () => this.open() } }, t("screen.bench.shiftChange"))
  #fields = el("fieldset", { class: "shift" }, el("legend", {}, t("screen.bench.shift")),
    labelled("batch", t("screen.bench.batch"), this.#batch), labelled("operator", t("screen.bench.operator"), this.#operator),
    labelled("product", t("screen.bench.product"), this.#product), labelled("tuning", t("screen.bench.tuning"), this.#tuning))
  #summary = el("div", { class: "shift-summary" }, this.#line, this.#change)

  /** @param {() => void} changed */
  constructor(changed) {
    this.#changed = changed
    this.element = el("div", { class: "shift-part", on: { change: () => this.#edited(), input: () => this.#changed() } }, this.#summary, this.#fields)
    this.#batch.addEventListener("keydown", () => { this.#touched = true })
    this.#show(!this.isReady() || !isOfToday(this.#kept.at, Date.now()))
    this.#load()
  }

  /** @returns {boolean} whether everything is known that a shift needs */
  isReady() {
    return this.missing() === null
  }

  /** @returns {HTMLElement | null} the first field without an entry */
  missing() {
    if (!this.#batch.value.trim()) return this.#batch
    if (!this.#operator.value.trim()) return this.#operator
    return this.#productKey() ? null : this.#product
  }

  /** @returns {boolean} */
  isOpen() {
    return !this.#fields.hidden
  }

  /** Shows the fields; the keys go to the first without an entry. */
  open() {
    this.#show(true)
    const first = /** @type {HTMLInputElement} */ (this.missing() ?? this.#batch)
    first.focus()
    first.select?.()
  }

  /** The shift begins: one line from now on. */
  begin() {
    if (!this.isOpen()) return
    remember(KEPT, { ...this.values(), at: new Date().toISOString() })
    this.#show(false)
  }

  /** @returns {import("./history.js").Shift} */
  values() {
    return { batch: this.#batch.value.trim(), operator: this.#operator.value.trim(), product: this.#productKey(), tuning: this.#tuning.value }
  }

  /** @returns {import("./flow.js").Plan | null} null while the products are not known */
  plan() {
    const product = this.#products.find((each) => each.product === this.#productKey())
    if (!product) return null
    return { product: product.product, name: product.name, pattern: product.serialPattern ?? null, tunings: tuningsOf(product, this.values()) }
  }

  /** Of every product that is known. @returns {(string | null | undefined)[]} */
  patterns() {
    return this.#products.map((product) => product.serialPattern)
  }

  /** Whoever scanned a badge measures from now on. @param {string} operator */
  setOperator(operator) {
    this.#operator.value = operator
    this.#edited()
  }

  /** At a browser that remembers no shift, what this bench measured last is the best guess; never under the hand of someone who types. @param {Api.Inspection} newest */
  suggest(newest) {
    if (this.#batch === document.activeElement && this.#touched) return
    if (this.#kept.batch || this.#batch.value || this.#kept.product) return
    this.#batch.value = newest.batch
    this.#kept = { ...this.#kept, product: newest.product }
    this.#drawProducts()
  }

  /** @param {boolean} open */
  #show(open) {
    this.#fields.hidden = !open
    this.#summary.hidden = open
    this.#drawLine()
  }

  #edited() {
    this.#kept = { ...this.#kept, ...this.values() }
    this.#drawTunings()
    this.#kept.tuning = this.#tuning.value
    remember(KEPT, this.#kept)
    this.#drawLine()
    this.#changed()
  }

  #drawLine() {
    const { batch, operator, tuning } = this.values()
    const plan = this.plan()
    put(this.#line, [batch, plan?.name ?? this.#productKey(), tuning || plan?.tunings.join(" + "), operator].filter(Boolean).join(" \u00b7 "))
  }

  async #load() {
    try {
      const page = /** @type {Api.Page<Api.Product>} */ (await get("/api/products"))
      this.#products = page.items
      remember("products", page.items)
    } catch {
      this.#products = recall("products") ?? []   // the live state already says that the service is away
    }
    this.#drawProducts()
    this.#changed()
  }

  /** Known from memory before the list has come. */
  #productKey() {
    return this.#product.value || (this.#products.length ? "" : this.#kept.product ?? "")
  }

  #drawProducts() {
    put(this.#product, this.#products.map((product) => option(product.product, product.name, this.#kept.product)))
    this.#drawTunings()
    this.#drawLine()
  }

  #drawTunings() {
    const product = this.#products.find((candidate) => candidate.product === this.#product.value)
    if (!product) return put(this.#tuning)
    const all = tuningsOf(product, { ...this.values(), tuning: "" })
    put(this.#tuning, all.length > 1 ? option("", t("screen.bench.allTunings", { tunings: all.join(", ") }), this.#kept.tuning) : null,
      product.tunings.map((tuning) => option(tuning.tuning, tuning.tuning, this.#kept.tuning)))
  }
}

/** @param {string | undefined} at when it began @param {number} now ms since 1970 @returns {boolean} whether that shift may still go on */
export function isOfToday(at, now) {
  const age = at ? now - Date.parse(at) : NaN
  return age >= 0 && age < SHIFT_MS
}

/** @param {string} name @param {Record<string, any>} props */
export function field(name, props) {
  return /** @type {HTMLInputElement} */ (el("input", { id: name, name, type: "text", autocomplete: "off", autocapitalize: "off", spellcheck: "false", ...props }))
}

/** @param {string} id @param {string} label @param {HTMLElement} control */
export function labelled(id, label, control) {
  return el("div", { class: "labelled" }, el("label", { for: id }, label), control)
}

/** @param {string} value @param {string} label @param {string | undefined} chosen */
function option(value, label, chosen) {
  return el("option", { value, selected: value === chosen }, label)
}

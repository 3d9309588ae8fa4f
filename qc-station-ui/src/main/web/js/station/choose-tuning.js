// Product and tuning for what a station does with one of them.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { recall, remember } from "../memory.js"
import { t } from "../texts.js"

const KEPT = "station-tuning"

export class ChooseTuning {
  product = ""
  tuning = ""
  element = el("nav", { class: "chips", "aria-label": t("screen.bench.tuning") })
  /** @type {{ product: string, name: string, tuning: string }[]} */
  #all = []
  #chosen
  #likely

  /** @param {AbortSignal} signal @param {{ product: string, tuning: string }[]} likely those that the station has something of @param {() => void} chosen also called once the first is known */
  constructor(signal, likely, chosen) {
    this.#likely = likely
    this.#chosen = chosen
    this.#load(signal).catch(() => {})
  }

  /** @param {AbortSignal} signal */
  async #load(signal) {
    const page = /** @type {Api.Page<Api.Product>} */ (await get("/api/products", signal))
    this.#all = page.items.flatMap((product) => product.tunings.map((tuning) => ({ product: product.product, name: product.name, tuning: tuning.tuning })))
    const kept = recall(KEPT)
    const first = this.#all.find((one) => one.product === kept?.product && one.tuning === kept?.tuning) ?? this.#all.find((one) => one.product === this.#likely[0]?.product && one.tuning === this.#likely[0]?.tuning) ?? this.#all[0]
    if (first) this.#choose(first)
  }

  /** @param {{ product: string, tuning: string }} one chosen by hand: remembered */
  #keep(one) {
    remember(KEPT, { product: one.product, tuning: one.tuning })
    this.#choose(one)
  }

  /** @param {{ product: string, tuning: string }} one */
  #choose(one) {
    this.product = one.product
    this.tuning = one.tuning
    put(this.element, this.#all.map((other) => el("button", { type: "button", class: "chip", "aria-current": other.product === one.product && other.tuning === one.tuning ? "true" : null,
      on: { click: () => this.#keep(other) } }, `${other.name} \u00b7 ${other.tuning}`)))
    this.#chosen()
  }
}

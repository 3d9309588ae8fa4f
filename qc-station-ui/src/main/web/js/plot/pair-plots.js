// What is plotted of one pair: response and difference, or one kind of distortion; a row of choices switches.
import { el, put } from "../dom.js"
import { t } from "../texts.js"
import { DistortionPanel, hasDistortion } from "./distortion-panel.js"
import { ResponsePanel } from "./response-panel.js"

/** @typedef {"curves" | "thd" | "high-order"} View */

export class PairPlots {
  #response = new ResponsePanel()
  #distortion = new DistortionPanel()
  /** @type {View} */
  #view = "curves"
  /** @type {{ curves: Api.Curves, inspection: Api.Inspection } | null} */
  #shown = null

  constructor() {
    this.choices = el("div", { class: "views", role: "group", "aria-label": t("screen.views.label") })
    this.element = el("div", { class: "pair-plots" }, this.#response.element)
    this.#draw()
  }

  /** @param {string} sentence why there is no plot */
  clear(sentence) {
    this.#shown = null
    this.#view = "curves"
    this.#response.clear(sentence)
    this.#draw()
  }

  /** Opens on the plot that holds the first reason. @param {Api.Curves} curves @param {Api.Inspection} inspection */
  show(curves, inspection) {
    this.#shown = { curves, inspection }
    const first = inspection.reasons[0]?.kind
    this.#view = first === "thd" ? "thd" : first === "high-order-distortion" ? "high-order" : "curves"
    if (!this.#offered().includes(this.#view)) this.#view = "curves"
    this.#draw()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    return this.#view === "curves" ? this.#response.key(event) : this.#distortion.key(event)
  }

  /** @returns {View[]} */
  #offered() {
    const curves = this.#shown?.curves
    const kinds = /** @type {("thd" | "high-order")[]} */ (["thd", "high-order"])
    return ["curves", ...(curves ? kinds.filter((kind) => hasDistortion(curves, kind)) : [])]
  }

  #draw() {
    const names = { curves: t("screen.views.curves"), thd: t("screen.views.thd"), "high-order": t("screen.views.highOrder") }
    const offered = this.#offered()
    put(this.choices, /** @type {View[]} */ (["curves", "thd", "high-order"]).map((view) => el("button", {
      type: "button", class: "button view", disabled: !offered.includes(view), "aria-pressed": String(view === this.#view),
      on: { click: () => { this.#view = view; this.#draw() } },
    }, names[view])))
    put(this.element, this.#view === "curves" ? this.#response.element : this.#distortion.element)
    if (!this.#shown) return
    if (this.#view === "curves") this.#response.show(this.#shown.curves, this.#shown.inspection.reasons)
    else this.#distortion.show(this.#shown.curves, this.#shown.inspection, this.#view)
  }
}

// What is known of how somebody else measured. Everything may stay open: it is then assumed, and asked for.
import { el } from "../dom.js"
import { t } from "../texts.js"

export class RigFacts {
  #tuning
  #simulator = choice("rig-simulator", [["", t("screen.outside.unknown")], ["IEC 60318-4", "IEC 60318-4"], ["IEC 60318-5", "IEC 60318-5"], ["other", t("screen.outside.otherSimulator")]])
  #levelled = choice("rig-levelled", [["", t("screen.outside.unknown")], ["false", t("screen.outside.no")], ["true", t("screen.outside.yes")]])
  #uncertainty = /** @type {HTMLInputElement} */ (el("input", { id: "rig-uncertainty", type: "number", min: 0.05, max: 20, step: "any", inputmode: "decimal" }))
  #name = /** @type {HTMLInputElement} */ (el("input", { id: "source-name", type: "text", maxlength: 200, autocomplete: "off" }))
  #date = /** @type {HTMLInputElement} */ (el("input", { id: "source-date", type: "date" }))

  /** @param {string[]} tunings measured @param {() => void} changed */
  constructor(tunings, changed) {
    this.#tuning = choice("rig-tuning", tunings.map((tuning) => [tuning, tuning]))
    this.element = el("fieldset", { class: "rig-facts", on: { change: changed } }, el("legend", {}, t("screen.outside.known")),
      labelled(this.#tuning, t("screen.outside.tuning")), labelled(this.#simulator, t("screen.outside.simulator")),
      labelled(this.#uncertainty, t("screen.outside.uncertainty")), labelled(this.#levelled, t("screen.outside.levelled")),
      labelled(this.#name, t("screen.outside.name")), labelled(this.#date, t("screen.outside.date")))
  }

  facts() {
    const uncertainty = this.#uncertainty.valueAsNumber
    return {
      tuning: this.#tuning.value || null,
      rig: {
        earSimulator: this.#simulator.value || null, uncertaintyDb: Number.isFinite(uncertainty) ? uncertainty : null,
        levelled: this.#levelled.value === "" ? null : this.#levelled.value === "true",
      },
      source: this.#name.value.trim() || this.#date.value ? { name: this.#name.value.trim() || null, publishedOn: this.#date.value || null } : null,
    }
  }
}

/** @param {string} id @param {[string, string][]} options */
function choice(id, options) {
  return /** @type {HTMLSelectElement} */ (el("select", { id }, options.map(([value, label]) => el("option", { value }, label))))
}

/** @param {HTMLElement} control @param {string} label */
function labelled(control, label) {
  return el("div", { class: "labelled" }, el("label", { for: control.id }, label), control)
}

// Which devices a station plays to and records from, as a form.
import { el, put } from "../dom.js"
import { t } from "../texts.js"
import { findAgain } from "./devices.js"

/** @typedef {import("./devices.js").Device} Device @typedef {import("./devices.js").Choice} Choice */

export class ChooseDevices {
  #output = select("sound-output")
  #first = select("sound-first")
  #second = select("sound-second")
  #firstLabel = el("label", { for: "sound-first" })
  #secondRow
  #clocks = el("p", { class: "more" }, t("screen.sound.devices.clocks"))
  #stereo = radio("stereo")
  #mono = radio("mono")
  #swapped = /** @type {HTMLInputElement} */ (el("input", { type: "checkbox", id: "sound-swapped" }))
  /** @type {{ inputs: Device[], outputs: Device[] }} */
  #there = { inputs: [], outputs: [] }

  /** @param {(choice: Choice) => void} use */
  constructor(use) {
    this.#secondRow = el("div", { class: "labelled" }, el("label", { for: "sound-second" }, t("screen.sound.devices.right")), this.#second)
    this.element = el("form", { class: "sound-devices", on: {
      submit: (/** @type {Event} */ event) => { event.preventDefault(); use(this.choice()) }, change: () => this.#draw() } },
      el("h2", {}, t("screen.sound.devices.title")),
      el("div", { class: "labelled" }, el("label", { for: "sound-output" }, t("screen.sound.devices.output")), this.#output),
      el("fieldset", { class: "input-kind" }, el("legend", {}, t("screen.sound.devices.inputs")),
        el("label", { class: "tick" }, this.#stereo, t("screen.sound.devices.stereo")), el("label", { class: "tick" }, this.#mono, t("screen.sound.devices.mono"))),
      el("div", { class: "labelled" }, this.#firstLabel, this.#first), this.#secondRow, this.#clocks,
      el("label", { class: "tick" }, this.#swapped, t("screen.sound.devices.swapped")),
      el("button", { type: "submit", class: "button primary" }, t("screen.sound.devices.use")))
  }

  /** @param {{ inputs: Device[], outputs: Device[] }} there @param {Choice | null} kept */
  offer(there, kept) {
    this.#there = there
    fill(this.#output, there.outputs, kept?.output)
    fill(this.#first, there.inputs, kept?.inputs[0])
    fill(this.#second, there.inputs, kept?.inputs[1] ?? there.inputs[1])
    this.#mono.checked = kept?.inputs.length === 2
    this.#stereo.checked = !this.#mono.checked
    this.#swapped.checked = kept?.swapped ?? false
    this.#draw()
  }

  focus() {
    this.#output.focus()
  }

  /** @returns {Choice} */
  choice() {
    const input = (/** @type {HTMLSelectElement} */ from) => this.#there.inputs[from.selectedIndex]
    return { output: this.#there.outputs[this.#output.selectedIndex], inputs: this.#mono.checked ? [input(this.#first), input(this.#second)] : [input(this.#first)], swapped: this.#swapped.checked }
  }

  #draw() {
    const two = this.#mono.checked
    this.#secondRow.hidden = !two
    this.#clocks.hidden = !two
    put(this.#firstLabel, two ? t("screen.sound.devices.left") : t("screen.sound.devices.both"))
  }
}

/** @param {string} id */
function select(id) {
  return /** @type {HTMLSelectElement} */ (el("select", { id }))
}

/** @param {string} value */
function radio(value) {
  return /** @type {HTMLInputElement} */ (el("input", { type: "radio", name: "sound-inputs", value }))
}

/** @param {HTMLSelectElement} into @param {Device[]} devices @param {Device | undefined} chosen */
function fill(into, devices, chosen) {
  put(into, devices.map((device, i) => el("option", { value: i }, device.label || t("screen.sound.devices.system"))))
  const again = chosen ? findAgain(chosen, devices) : null
  if (again) into.selectedIndex = devices.indexOf(again)
}

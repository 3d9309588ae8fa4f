// The curve files of an outside report: dropped or chosen, each told what it holds.
import { el, put } from "../dom.js"
import { size } from "../format.js"
import { t } from "../texts.js"

/** @typedef {"left" | "right" | "both" | "average"} Holds */

/** What a file's name says of what it holds; left, where it says nothing. Pure. @param {string} name @returns {Holds} */
export function guess(name) {
  const words = name.toLowerCase().replace(/\.[a-z]+$/, "").split(/[^a-z]+/)
  if (words.some((word) => ["avg", "average", "mean"].includes(word))) return "average"
  if (words.some((word) => ["both", "lr", "stereo"].includes(word))) return "both"
  return words.some((word) => word === "r" || word.startsWith("right")) ? "right" : "left"
}

export class CurveFiles {
  /** @type {{ file: File, holds: Holds }[]} */
  #chosen = []
  #changed
  #list = el("ul", { class: "outside-files" })
  #input = /** @type {HTMLInputElement} */ (el("input", { type: "file", id: "outside-files", class: "file-input", multiple: true, accept: ".csv,.txt,.frd,text/plain,text/csv", tabindex: -1, "aria-hidden": "true" }))
  #button = el("button", { type: "button", class: "button drop", on: { click: () => this.#input.click() } }, t("screen.outside.drop"))

  /** @param {() => void} changed */
  constructor(changed) {
    this.#changed = changed
    this.#input.addEventListener("change", () => {
      this.#add([...(this.#input.files ?? [])])
      this.#input.value = ""
    })
    this.element = el("section", { class: "outside-drop", on: {
      dragover: (/** @type {DragEvent} */ event) => { event.preventDefault(); this.element.classList.add("over") },
      dragleave: () => this.element.classList.remove("over"),
      drop: (/** @type {DragEvent} */ event) => {
        event.preventDefault()
        this.element.classList.remove("over")
        this.#add([...(event.dataTransfer?.files ?? [])])
      },
    } }, el("h2", {}, t("screen.outside.curves")), el("p", { class: "quiet" }, t("screen.outside.dialects")), this.#button, this.#input, this.#list)
  }

  focus() {
    this.#button.focus()
  }

  /** Whether there is something to compare: as many left as right, or both, or an average. */
  get ready() {
    const count = (/** @type {Holds} */ holds) => this.#chosen.filter((one) => one.holds === holds).length
    return this.#chosen.length > 0 && count("left") === count("right")
  }

  /** @returns {[string, File][]} in the order left, right, both, average */
  parts() {
    const order = ["left", "right", "both", "average"]
    return [...this.#chosen].sort((a, b) => order.indexOf(a.holds) - order.indexOf(b.holds)).map(({ file, holds }) => [holds, asText(file)])
  }

  /** @param {File[]} files */
  #add(files) {
    for (const file of files) this.#chosen.push({ file, holds: guess(file.name) })
    this.#draw()
    this.#changed()
  }

  #draw() {
    const names = /** @type {[Holds, string][]} */ ([["left", t("screen.outside.left")], ["right", t("screen.outside.right")], ["both", t("screen.outside.both")], ["average", t("screen.outside.average")]])
    put(this.#list, this.#chosen.map((one, place) => {
      const holds = /** @type {HTMLSelectElement} */ (el("select", { id: `holds-${place}`, "aria-label": t("screen.outside.holds", { file: one.file.name }), on: { change: () => {
        one.holds = /** @type {Holds} */ (holds.value)
        this.#changed()
      } } }, names.map(([value, label]) => el("option", { value, selected: value === one.holds }, label))))
      return el("li", {}, el("span", { class: "file-name" }, `${one.file.name} \u00b7 ${size(one.file.size)}`), holds,
        el("button", { type: "button", class: "button quiet", on: { click: () => {
          this.#chosen.splice(place, 1)
          this.#draw()
          this.#changed()
        } } }, t("screen.outside.remove")))
    }))
  }
}

/** Reviewers' files end in anything; they are text all the same. @param {File} file */
function asText(file) {
  return /\.(csv|txt)$/i.test(file.name) ? file : new File([file], `${file.name}.txt`, { type: "text/plain" })
}

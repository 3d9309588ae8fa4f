// A YAML file put on the page, by dropping or by choosing: on the workbench if it can be read, else every problem with its place.
import { Problem } from "../api.js"
import { el, put } from "../dom.js"
import { failed, stateOf } from "../states.js"
import { t } from "../texts.js"

export class YamlDrop {
  #take
  #told = el("div", { class: "yaml-told", "aria-live": "polite" })

  /** @param {HTMLElement} page the whole of it takes drops @param {(text: string, name: string) => Promise<void>} take rejects with what is wrong */
  constructor(page, take) {
    this.#take = take
    const input = /** @type {HTMLInputElement} */ (el("input", { type: "file", accept: ".yaml,.yml,.json", id: "yaml-file", class: "visually-hidden" }))
    input.addEventListener("change", () => {
      const file = input.files?.[0]
      if (file) this.#read(file)
      input.value = ""
    })
    this.element = el("div", { class: "yaml-drop" }, input, el("label", { for: "yaml-file", class: "button yaml-button" }, t("screen.limits.yaml.choose")), el("span", { class: "quiet" }, t("screen.limits.yaml.drop")), this.#told)
    page.addEventListener("dragover", (event) => {
      event.preventDefault()
      page.classList.add("dropping")
    })
    page.addEventListener("dragleave", () => page.classList.remove("dropping"))
    page.addEventListener("drop", (event) => {
      event.preventDefault()
      page.classList.remove("dropping")
      const file = event.dataTransfer?.files[0]
      if (file) this.#read(file)
    })
  }

  /** @param {File} file */
  async #read(file) {
    put(this.#told)
    try {
      await this.#take(await file.text(), file.name)
      put(this.#told, el("p", {}, t("screen.limits.yaml.taken", { name: file.name })))
    } catch (failure) {
      put(this.#told, failure instanceof Problem && Array.isArray(failure.document.problems) ? problems(failure.document, file.name) : failed(failure))
    }
  }
}

/** @param {Api.ProblemDocument} document @param {string} name */
function problems(document, name) {
  return stateOf("PROBLEM", t("screen.limits.yaml.problems", { name }), el("ol", { class: "yaml-problems" }, (document.problems ?? []).map((problem) =>
    el("li", {}, t("screen.limits.yaml.problem", { line: problem.line, column: problem.column, path: problem.path, found: problem.found, expected: problem.expected })))))
}

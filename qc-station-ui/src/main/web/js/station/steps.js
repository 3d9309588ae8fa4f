// Guided steps: what to do, one thing after the other, each with its entries; Enter goes to the next thing that is missing, then sends.
import { Offline, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { size } from "../format.js"
import { recall, remember } from "../memory.js"
import { shape } from "../shapes.js"
import { problemLines } from "../states.js"
import { t } from "../texts.js"

/**
 * @typedef {"text" | "number" | "select" | "file" | "files"} FieldKind
 * @typedef {{ name: string, label: string, kind: FieldKind, value?: string | number | null, options?: [string, string][], optional?: boolean, kept?: boolean, least?: number, side?: "left" | "right", accept?: string }} Field
 *     `kept` is remembered by the browser; `least` is how many files are needed
 * @typedef {{ text: string, more?: string, fields: Field[] }} Step
 * @typedef {Record<string, any>} Values by field: a string, a number or null, a file, or files in order
 * @typedef {{ state: string, words: string[] }} Outcome `state` names the shape
 * @typedef {object} Task
 * @property {string} title
 * @property {string} [why]
 * @property {Step[]} steps
 * @property {string} action words of the button
 * @property {(values: Values) => Promise<Outcome>} send
 */

const AUDIO = ".wav,audio/wav"

export class Steps {
  #task
  /** @type {Entry[][]} */
  #entries
  #result = el("div", { class: "steps-result", role: "status", "aria-live": "polite" })
  #submit
  #items
  #busy = false

  /** @param {Task} task @param {(outcome: Outcome) => void} [done] after what was sent has been stored */
  constructor(task, done) {
    this.#task = task
    this.done = done
    this.#entries = task.steps.map((step) => step.fields.map((field) => entryOf(field, () => this.#changed(field))))
    this.#submit = /** @type {HTMLButtonElement} */ (el("button", { type: "submit", class: "button primary" }, task.action))
    this.#items = task.steps.map((step, i) => el("li", { class: "step" },
      el("div", { class: "step-body" }, el("p", { class: "step-text" }, step.text), step.more ? el("p", { class: "more" }, step.more) : null,
        this.#entries[i].length ? el("div", { class: "step-fields" }, this.#entries[i].map((entry) => entry.element)) : null)))
    this.element = el("form", { class: "steps", novalidate: true, on: { submit: (/** @type {Event} */ event) => this.#submitted(event) } },
      el("h2", {}, task.title), task.why ? el("p", { class: "quiet" }, task.why) : null,
      el("ol", {}, this.#items), this.#submit, this.#result)
    this.#mark()
  }

  /** The next thing that is missing takes the focus. */
  focus() {
    const next = this.#missing()
    ;(next ? next.control : this.#submit).focus()
  }

  /** @returns {Values} */
  values() {
    return Object.fromEntries(this.#entries.flat().map((entry) => [entry.field.name, entry.value()]))
  }

  #missing() {
    return this.#entries.flat().find((entry) => !entry.filled())
  }

  /** @param {Field} field */
  #changed(field) {
    this.#mark()
    const entry = this.#entries.flat().find((candidate) => candidate.field === field)
    if (field.kept && entry) remember(`kept.${field.name}`, entry.value())
    if (entry && (field.kind === "file" || field.kind === "files") && entry.filled()) this.focus()
  }

  #mark() {
    let current = true
    this.#items.forEach((item, i) => {
      const filled = this.#entries[i].every((entry) => entry.filled())
      item.classList.toggle("done", filled && this.#entries[i].length > 0)
      item.classList.toggle("current", current && !filled)
      if (!filled) current = false
    })
  }

  /** @param {Event} event */
  async #submitted(event) {
    event.preventDefault()
    if (this.#busy) return
    if (this.#missing()) return this.focus()
    this.#busy = true
    this.#submit.disabled = true
    this.#tell("BUSY", [t("screen.steps.sending")])
    try {
      const outcome = await this.#task.send(this.values())
      for (const entry of this.#entries.flat()) entry.sent()
      this.#mark()
      this.#tell(outcome.state, outcome.words)
      this.done?.(outcome)
    } catch (failure) {
      this.#tell(failure instanceof Offline ? "OFFLINE" : "PROBLEM", failureWords(failure))
    } finally {
      this.#busy = false
      this.#submit.disabled = false
    }
  }

  /** @param {string} state @param {(string | HTMLElement)[]} words */
  #tell(state, words) {
    this.#result.className = `steps-result told state-${state.toLowerCase()}`
    put(this.#result, shape(state), el("div", {}, words.map((line) => (typeof line === "string" ? el("p", {}, line) : line))))
    this.#result.scrollIntoView({ block: "nearest" })
  }
}

/** What went wrong, as lines. @param {unknown} failure @returns {(string | HTMLElement)[]} */
export function failureWords(failure) {
  if (failure instanceof Offline) return [t("screen.offline.title"), t("screen.offline.mend")]
  if (failure instanceof Problem) return [el("strong", {}, failure.document.title ?? t("screen.failed.title")), ...problemLines(failure.document)]
  return [t("screen.failed.title"), String(failure)]
}

/** @typedef {{ field: Field, element: HTMLElement, control: HTMLElement, value: () => any, filled: () => boolean, sent: () => void }} Entry */

/** @param {Field} field @param {() => void} changed @returns {Entry} */
function entryOf(field, changed) {
  return field.kind === "file" || field.kind === "files" ? fileEntry(field, changed) : typedEntry(field, changed)
}

/** @param {Field} field @param {() => void} changed @returns {Entry} */
function typedEntry(field, changed) {
  const id = `field-${field.name}`
  const start = field.value ?? (field.kept ? recall(`kept.${field.name}`) : null) ?? ""
  const on = { input: changed, change: changed }
  const control = /** @type {HTMLInputElement | HTMLSelectElement} */ (field.kind === "select"
    ? el("select", { id, name: field.name, on }, (field.options ?? []).map(([value, label]) => el("option", { value, selected: value === start }, label)))
    : el("input", { id, name: field.name, type: "text", value: start, inputmode: field.kind === "number" ? "decimal" : null, autocomplete: "off", spellcheck: "false", on }))
  const number = () => Number(control.value.trim().replace(",", ".").replace("\u2212", "-"))
  return {
    field, control,
    element: el("div", { class: "labelled" }, el("label", { for: id }, field.label), control),
    value: () => field.kind === "number" ? (control.value.trim() === "" ? null : number()) : control.value.trim().normalize("NFC") || null,
    filled: () => control.value.trim() === "" ? field.optional === true : field.kind !== "number" || Number.isFinite(number()),
    sent: () => {},
  }
}

/** @param {Field} field @param {() => void} changed @returns {Entry} */
function fileEntry(field, changed) {
  /** @type {File[]} */
  let files = []
  const many = field.kind === "files"
  const names = el("ol", { class: "file-names" })
  const input = /** @type {HTMLInputElement} */ (el("input", { type: "file", class: "file-input", id: `field-${field.name}`, multiple: many, accept: field.accept ?? AUDIO, tabindex: -1, "aria-hidden": "true" }))
  const control = el("button", { type: "button", class: `button capture ${field.side ?? ""}`, on: { click: () => input.click() } }, el("span", { class: "side" }, field.label), names)
  const draw = () => {
    control.classList.toggle("chosen", files.length > 0)
    put(names, files.length ? files.map((file) => el("li", { class: "file-name" }, `${file.name} \u00b7 ${size(file.size)}`))
      : el("li", { class: "file-name" }, many ? t("screen.steps.chooseFiles", { n: field.least ?? 1 }) : t("screen.steps.chooseFile")))
  }
  input.addEventListener("change", () => {
    files = [...(input.files ?? [])].sort((a, b) => a.name.localeCompare(b.name, "en", { numeric: true }))
    draw()
    changed()
  })
  draw()
  return {
    field, control, element: el("div", { class: "capture-picker" }, control, input),
    value: () => (many ? files : files[0] ?? null),
    filled: () => field.optional === true || files.length >= (field.least ?? 1),
    sent: () => {
      files = []
      input.value = ""
      draw()
    },
  }
}

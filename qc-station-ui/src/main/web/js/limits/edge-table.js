// Every limit as a number: type it, or step it by a tenth of a decibel with the arrow keys.
import { el, put } from "../dom.js"
import { frequency } from "../format.js"
import { t } from "../texts.js"
import { edgesOf, moved, sameEdge, valueOf } from "./limit-set.js"

/** @typedef {import("./limit-set.js").LimitSet} LimitSet @typedef {import("./limit-set.js").Edge} Edge */

export class EdgeTable {
  #handlers
  /** @type {{ edge: Edge, field: HTMLInputElement }[]} */
  #fields = []
  /** @type {LimitSet | null} */
  #set = null
  #form = ""

  /** @param {{ onChoose: (edge: Edge) => void, onMove: (edge: Edge, db: number) => void }} handlers */
  constructor(handlers) {
    this.#handlers = handlers
    this.element = el("section", { class: "edge-table" })
  }

  /** @param {LimitSet} set @param {Edge | null} chosen */
  show(set, chosen) {
    this.#set = set
    const form = JSON.stringify(edgesOf(set).map((edge) => [edge, set.regions.find((region) => region.name === edge.region)?.hz]))
    if (form !== this.#form) this.#build(set)
    this.#form = form
    for (const { edge, field } of this.#fields) {
      if (document.activeElement !== field || Number(field.value.replace("\u2212", "-")) !== valueOf(set, edge)) field.value = text(valueOf(set, edge))
      field.classList.toggle("chosen", sameEdge(edge, chosen))
    }
  }

  /** @param {LimitSet} set */
  #build(set) {
    this.#fields = []
    const edges = edgesOf(set)
    const field = (/** @type {Edge} */ edge) => this.#field(edge)
    const cell = (/** @type {string | null} */ region, /** @type {string[]} */ kinds) => el("td", {}, el("div", { class: "edge-pair" }, edges
      .filter((edge) => edge.region === region && kinds.includes(edge.kind)).sort((a, b) => (a.end ?? 0) - (b.end ?? 0) || kinds.indexOf(a.kind) - kinds.indexOf(b.kind)).map(field)))
    put(this.element, el("h2", {}, t("screen.limits.edges.title")), el("p", { class: "quiet" }, t("screen.limits.edges.keys")),
      el("table", { class: "edges" },
        el("thead", {}, el("tr", {}, [t("screen.limits.edges.region"), t("screen.limits.edges.window"), t("screen.limits.edges.match")].map((title) => el("th", { scope: "col" }, title)))),
        el("tbody", {},
          el("tr", {}, el("th", { scope: "row" }, t("screen.limits.edges.level")), cell(null, ["lowest", "highest"]), cell(null, ["balance"])),
          set.regions.map((region) => el("tr", {},
            el("th", { scope: "row" }, region.name, el("span", { class: "at" }, `${frequency(region.hz[0])}\u2013${frequency(region.hz[1])}`)),
            cell(region.name, ["lower", "upper"]), cell(region.name, ["match"]))))))
  }

  /** @param {Edge} edge */
  #field(edge) {
    const name = [edge.region, t(`screen.limits.edge.${edge.kind}`), edge.end === null ? null : t(edge.end === 0 ? "screen.limits.edge.start" : "screen.limits.edge.end")].filter(Boolean).join(", ")
    const field = /** @type {HTMLInputElement} */ (el("input", { type: "text", inputmode: "decimal", class: "edge-field", "aria-label": name, title: name, data: { edge: `${edge.region ?? ""}:${edge.kind}:${edge.end ?? ""}` } }))
    field.addEventListener("focus", () => this.#handlers.onChoose(edge))
    field.addEventListener("change", () => this.#typed(edge, field))
    field.addEventListener("keydown", (event) => {
      if (!this.#set || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) {
        if (event.key === "Enter") this.#typed(edge, field)
        return
      }
      event.preventDefault()
      const step = (event.shiftKey ? 1 : 0.1) * (event.key === "ArrowUp" ? 1 : -1)
      this.#handlers.onMove(edge, valueOf(this.#set, edge) + step)
    })
    this.#fields.push({ edge, field })
    return field
  }

  /** @param {Edge} edge @param {HTMLInputElement} field */
  #typed(edge, field) {
    if (!this.#set) return
    const value = Number(field.value.trim().replace("\u2212", "-").replace(",", ".").replace("+", ""))
    if (field.value.trim() !== "" && Number.isFinite(value)) this.#handlers.onMove(edge, value)
    else field.value = text(valueOf(this.#set, edge))
    const now = valueOf(moved(this.#set, edge, Number.isFinite(value) ? value : valueOf(this.#set, edge)), edge)
    field.value = text(now)
  }
}

/** @param {number} value */
function text(value) {
  return `${value > 0 ? "" : value < 0 ? "\u2212" : ""}${Math.abs(value).toFixed(1)}`
}

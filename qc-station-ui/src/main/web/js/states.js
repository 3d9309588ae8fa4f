// Pages that have nothing to show yet, and say so: empty (teaches), busy, failed, offline.
import { el } from "./dom.js"
import { Offline, Problem } from "./api.js"
import { shape } from "./shapes.js"
import { t } from "./texts.js"

/**
 * @param {string} kind WAITING, BUSY, PROBLEM, OFFLINE
 * @param {string} title
 * @param {...import("./dom.js").Child} more
 */
export function stateOf(kind, title, ...more) {
  return el("section", { class: `state-page ${kind.toLowerCase()}`, role: kind === "PROBLEM" || kind === "OFFLINE" ? "alert" : "status" },
    shape(kind), el("div", {}, el("h2", {}, title), ...more.map((child) => (typeof child === "string" ? el("p", {}, child) : child))))
}

/** @param {string} what the sentence that names what is waited for */
export function busy(what) {
  return stateOf("BUSY", what)
}

/** @param {unknown} failure @param {() => void} [again] tries once more */
export function failed(failure, again) {
  const retry = again ? el("button", { type: "button", class: "button", on: { click: again } }, t("screen.again")) : null
  if (failure instanceof Offline) return stateOf("OFFLINE", t("screen.offline.title"), t("screen.offline.mend"), retry)
  if (failure instanceof Problem) return stateOf("PROBLEM", failure.document.title || t("screen.failed.title"), ...problemLines(failure.document), retry)
  return stateOf("PROBLEM", t("screen.failed.title"), String(failure instanceof Error ? failure.message : failure), retry)
}

/** A problem document as lines: what is wrong, where, and what would be right. @param {Api.ProblemDocument} document @returns {(string | HTMLElement)[]} */
export function problemLines(document) {
  const lines = /** @type {(string | HTMLElement)[]} */ ([])
  if (document.detail) lines.push(document.detail)
  const where = document.part ?? document.field
  if (where) lines.push(fact(t("screen.problem.part"), where))
  if (document.place !== undefined && document.place !== null) lines.push(fact(t("screen.problem.place"), plain(document.place)))
  if (document.expected !== undefined && document.expected !== null) lines.push(fact(t("screen.problem.expected"), plain(document.expected)))
  return lines
}

/** @param {string} label @param {string} value */
function fact(label, value) {
  return el("p", { class: "fact" }, el("span", { class: "fact-label" }, label), " ", value)
}

/** @param {unknown} value */
function plain(value) {
  return Array.isArray(value) ? value.join(", ") : typeof value === "object" ? JSON.stringify(value) : String(value)
}

// Seal: whether the record holds, as a whole and head by head, and whether stored captures still give the recorded verdicts.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { takesText } from "../keys.js"
import { go } from "../router.js"
import { shape } from "../shapes.js"
import { busy, failed } from "../states.js"
import { t } from "../texts.js"
import { JudgeAgain } from "./judge-again.js"

/** @type {import("../screens.js").StartScreen} */
export function startSeal(host) {
  return new SealScreen(host)
}

class SealScreen {
  #closed = new AbortController()
  #again = new JudgeAgain(this.#closed.signal)
  #head = /** @type {HTMLInputElement} */ (el("input", { id: "seal-head", type: "text", autocomplete: "off", spellcheck: "false", placeholder: "12:3f9a0c11d2e45b67" }))
  #result = el("div", { class: "seal-result", "aria-live": "polite" })
  #check = /** @type {HTMLButtonElement} */ (el("button", { type: "submit", class: "button primary" }, t("screen.seal.check")))

  /** @param {HTMLElement} host */
  constructor(host) {
    put(host, el("div", { class: "page seal" },
      el("h1", {}, t("screen.seal.title")),
      el("p", { class: "lead" }, t("screen.seal.lead")),
      el("form", { class: "seal-check", on: { submit: (/** @type {Event} */ event) => this.#submitted(event) } },
        el("div", { class: "labelled" }, el("label", { for: "seal-head" }, t("screen.seal.head")), this.#head), this.#check),
      this.#result,
      this.#again.element))
    this.#check.focus()
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key !== "Escape" || takesText(event.target)) return false
    go("batch")
    return true
  }

  /** @param {Event} event */
  #submitted(event) {
    event.preventDefault()
    this.#walk()
  }

  async #walk() {
    const head = this.#head.value.trim()
    put(this.#result, busy(t("screen.seal.walking")))
    this.#check.disabled = true
    try {
      const report = /** @type {Api.SealReport} */ (await get(`/api/ledger/check${head ? `?head=${encodeURIComponent(head)}` : ""}`, this.#closed.signal))
      put(this.#result, ...reportOf(report))
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#result, failed(failure, () => this.#walk()))
    } finally {
      this.#check.disabled = false
    }
  }
}

/** @param {Api.SealReport} report */
function reportOf(report) {
  const kind = report.intact ? "PASS" : "FAIL"
  const sentence = report.intact ? t("screen.seal.holdsMore") : `${report.firstFailure?.problem ?? ""}.`
  return [
    el("div", { class: `seal-word ${kind.toLowerCase()}`, role: report.intact ? "status" : "alert" }, shape(kind),
      el("div", {}, el("h2", {}, report.intact ? t("screen.seal.holds") : t("screen.seal.broken")), el("p", {}, sentence))),
    el("dl", { class: "seal-facts" },
      fact(t("screen.seal.blocks"), report.blocks), fact(t("screen.seal.entries"), report.entries), fact(t("screen.seal.rows"), report.rows),
      fact(t("screen.seal.files"), report.files), fact(t("screen.seal.heads"), report.witnessedHeads), fact(t("screen.seal.waiting"), report.waiting),
      report.entriesWithoutEvidence ? fact(t("screen.seal.without"), report.entriesWithoutEvidence) : null,
      fact(t("screen.seal.key"), report.keyId)),
    el("p", {}, t("screen.seal.keepHead")),
    report.head ? el("code", { class: "seal-head-now", tabindex: 0 }, report.head) : null,
    el("p", { class: "note" }, t("screen.seal.limits")),
  ]
}

/** @param {string} label @param {string | number} value */
function fact(label, value) {
  return el("div", {}, el("dt", {}, label), el("dd", {}, value))
}

// The one loud thing: the verdict's word with its shape, the reasons as sentences, and what to do next.
import { el, put } from "../dom.js"
import { clock, size } from "../format.js"
import { hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { Offline, Problem } from "../api.js"
import { problemLines } from "../states.js"
import { conditionalWords } from "../quality-words.js"
import { t, tOf } from "../texts.js"

export class VerdictPanel {
  #shape = el("div", { class: "verdict-shape" })
  #word = el("p", { class: "verdict-word", "data-testid": "verdict" })
  #about = el("div", { class: "verdict-about" })
  #next = el("p", { class: "verdict-next" })
  #reasons = el("ol", { class: "verdict-reasons" })
  #bar = /** @type {HTMLProgressElement} */ (el("progress", { class: "verdict-bar", max: 1, value: 0 }))

  constructor() {
    this.element = el("section", { class: "verdict", "aria-live": "assertive" },
      el("div", { class: "verdict-head" }, this.#shape, this.#word, el("div", { class: "verdict-side" }, this.#about, this.#next)),
      this.#bar, this.#reasons)
  }

  /** @returns {boolean} whether nothing has been shown yet */
  isWaiting() {
    return this.element.dataset.state === "waiting"
  }

  /** Nothing measured yet: teaches the three steps. */
  waiting() {
    this.#set("waiting", "WAITING", t("screen.verdict.waiting"))
    put(this.#about)
    put(this.#next)
    put(this.#reasons, [t("screen.bench.step1"), t("screen.bench.step2"), t("screen.bench.step3")].map((step) => el("li", {}, step)))
  }

  /** @param {string} serial @param {number} sent @param {number} total bytes */
  sending(serial, sent, total) {
    const gone = total > 0 && sent >= total
    if (this.element.dataset.state !== "sending") {
      this.#set("sending", "BUSY", t("screen.verdict.sending"))
      put(this.#reasons)
    }
    put(this.#about, el("p", { class: "serial" }, serial))
    put(this.#next, gone ? t("screen.verdict.judging") : t("screen.verdict.sent", { sent: size(sent), total: size(total) }))
    if (gone) this.#bar.removeAttribute("value")
    else this.#bar.value = total ? sent / total : 0
    if (gone) put(this.#word, t("screen.verdict.judgingWord"))
  }

  /** @param {unknown} failure */
  failed(failure) {
    const offline = failure instanceof Offline
    this.#set("failed", offline ? "OFFLINE" : "PROBLEM", offline ? t("screen.verdict.offline") : t("screen.verdict.refused"))
    put(this.#about)
    put(this.#next, offline ? t("screen.verdict.offlineNext") : t("screen.verdict.refusedNext"))
    const lines = offline ? [t("screen.offline.mend")]
      : failure instanceof Problem ? problemLines(failure.document) : [String(failure)]
    put(this.#reasons, (lines.length ? lines : [t("screen.failed.title")]).map((line) => el("li", {}, line)))
  }

  /** @param {Api.Inspection} inspection */
  show(inspection) {
    const word = inspection.verdict ?? inspection.lastAttempt ?? "INCOMPLETE"
    this.#set(word.toLowerCase(), word, tOf("screen.word.", word))
    put(this.#about,
      el("p", { class: "serial" }, el("a", { href: hashOf("unit", inspection.serial, { inspection: inspection.id }) }, inspection.serial)),
      el("p", {}, [inspection.tuning, inspection.occasion === "production" ? null : tOf("screen.occasion.", inspection.occasion),
        clock(inspection.closedAt ?? inspection.startedAt)].filter(Boolean).join(" \u00b7 ")))
    const conditional = conditionalWords(inspection)
    put(this.#next, conditional ? el("span", { class: "conditional" }, conditional) : null, this.#nextOf(inspection),
      inspection.verdict === "PASS" ? el("a", { class: "paper", href: inspection.links?.certificate ?? `/api/inspections/${inspection.id}/certificate`,
        target: "_blank", rel: "noopener" }, t("screen.certificate.open")) : null)
    put(this.#reasons, inspection.reasons.map((reason) => el("li", {}, reason.text)))
    if (!inspection.reasons.length) put(this.#reasons, el("li", { class: "quiet" }, inspection.verdict === "PASS" ? t("screen.verdict.allInside") : ""))
  }

  /** @param {Api.Inspection} inspection */
  #nextOf(inspection) {
    if (inspection.next === "reseat" && inspection.lastAttempt === "RESEAT" && inspection.seatings) {
      const { tries, allowed } = inspection.seatings
      return el("span", {}, el("strong", { class: "try" }, t("screen.next.try", { next: tries + 1, allowed })), " ", t("screen.next.reseatPlain"))
    }
    const seatings = inspection.seatings
    const tries = seatings ? { tries: seatings.tries, allowed: seatings.allowed, valid: seatings.valid, wanted: seatings.wanted } : {}
    if (inspection.next === "another-seating") return t("screen.next.anotherSeating", tries)
    if (inspection.lastAttempt === "INVALID" && inspection.verdict === null) return t("screen.next.mend")
    if (inspection.next === "reseat") return seatings ? t("screen.next.reseat", tries) : t("screen.next.reseatPlain")
    const missing = inspection.unit?.missing ?? []
    if (inspection.verdict === "PASS" && missing.length) return t("screen.next.otherTunings", { tunings: missing.join(", ") })
    return inspection.verdict === "FAIL" ? t("screen.next.sort") : t("screen.next.done")
  }

  /** @param {string} state @param {string} drawing @param {string} word */
  #set(state, drawing, word) {
    this.element.dataset.state = state
    put(this.#shape, shape(drawing))
    put(this.#word, word)
    this.#bar.hidden = state !== "sending"
  }
}

// The one loud thing: the verdict's word with its shape, the reasons as sentences, and what to do next.
import { el, put } from "../dom.js"
import { clock } from "../format.js"
import { hashOf } from "../router.js"
import { PrintButton } from "../print/print-button.js"
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
  #paper = el("div", { class: "verdict-paper" })
  /** @type {PrintButton | null} of the verdict that stands here */
  #print = null
  #bar = /** @type {HTMLProgressElement} */ (el("progress", { class: "verdict-bar", max: 1, value: 0 }))

  constructor() {
    this.element = el("section", { class: "verdict", "aria-live": "assertive" },
      el("div", { class: "verdict-head" }, this.#shape, this.#word, el("div", { class: "verdict-side" }, this.#about, this.#next, this.#paper)),
      this.#bar, this.#reasons)
  }

  /** @param {KeyboardEvent} event @returns {boolean} whether it printed the paper of the verdict that stands here */
  printKey(event) {
    return this.#print?.key(event) ?? false
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

  /**
   * A step before the verdict: what to do now, in large words.
   * @param {"mount" | "sweeping" | "sending" | "repeated" | "stopped"} step @param {string} drawing @param {string} word
   * @param {import("./flow.js").State} state @param {string} next what Enter does @param {import("../dom.js").Child[]} [lines]
   */
  step(step, drawing, word, state, next, lines = []) {
    this.#set(step, drawing, word)
    put(this.#about, el("p", { class: "serial" }, state.serial), el("p", {}, this.#courseOf(state)))
    put(this.#next, next)
    put(this.#reasons, lines.map((line) => el("li", {}, line)))
    this.progress(step === "sending" ? null : 0)
  }

  /** Answers to choose from by the arrows. @param {string[]} words @param {number} chosen */
  choices(words, chosen) {
    this.#reasons.append(...words.map((word, at) => el("li", { class: "occasion", "aria-current": String(at === chosen) }, word)))
  }

  /** @param {number | null} share 0 to 1; null where it cannot be told */
  progress(share) {
    if (share === null) this.#bar.removeAttribute("value")
    else this.#bar.value = share
  }

  /**
   * The browser keeps the capture, and the service has not judged it yet.
   * @param {import("./flow.js").State} state @param {string} why @param {string[]} flaws that the browser itself found, as sentences
   */
  held(state, why, flaws) {
    if (flaws.length) this.#set("invalid", "INVALID", t("screen.bench.flawedWord"))
    else this.#set("held", "HELD", t("screen.bench.heldWord"))
    put(this.#about, el("p", { class: "serial" }, state.serial), el("p", {}, this.#courseOf(state)))
    put(this.#next, flaws.length ? t("screen.bench.flawedNext") : state.then === "tuning" ? this.nextTuning(state) : t("screen.bench.heldNext"))
    put(this.#reasons, [...flaws, why].map((line) => el("li", {}, line)))
  }

  /** @param {import("./flow.js").State} state @param {Api.ProblemDocument} document */
  refused(state, document) {
    this.#set("failed", "PROBLEM", t("screen.verdict.refused"))
    put(this.#about, el("p", { class: "serial" }, state.serial))
    put(this.#next, t("screen.bench.refusedNext"))
    put(this.#reasons, problemLines(document).map((line) => el("li", {}, line)))
  }

  /** A record could not be read. @param {unknown} failure */
  failed(failure) {
    const offline = failure instanceof Offline
    this.#set("failed", offline ? "OFFLINE" : "PROBLEM", offline ? t("screen.verdict.offline") : t("screen.failed.title"))
    put(this.#about)
    put(this.#next)
    const lines = offline ? [t("screen.offline.mend")]
      : failure instanceof Problem ? problemLines(failure.document) : [String(failure)]
    put(this.#reasons, (lines.length ? lines : [t("screen.failed.title")]).map((line) => el("li", {}, line)))
  }

  /** @param {string} word @param {string} sentence of what stands in the way at the very first step */
  stopped(word, sentence) {
    this.#set("failed", "PROBLEM", word)
    put(this.#about)
    put(this.#next)
    put(this.#reasons, el("li", {}, sentence))
  }

  /** @param {import("./flow.js").State} state @returns {string} */
  nextTuning(state) {
    return t("screen.bench.nextTuning", { tuning: state.todo[1] })
  }

  /** @param {import("./flow.js").State} state */
  #courseOf(state) {
    return [state.todo[0], state.occasion === "production" ? null : tOf("screen.occasion.", state.occasion),
      state.seating > 1 ? t("screen.bench.seating", { n: state.seating }) : null].filter(Boolean).join(" \u00b7 ")
  }

  /** @param {Api.Inspection} inspection @param {import("./flow.js").State | null} [state] of the course that it answers, if it is the bench's own */
  show(inspection, state = null) {
    const word = inspection.verdict ?? inspection.lastAttempt ?? "INCOMPLETE"
    this.#set(word.toLowerCase(), word, tOf("screen.word.", word))
    put(this.#about,
      el("p", { class: "serial" }, el("a", { href: hashOf("unit", inspection.serial, { inspection: inspection.id }) }, inspection.serial)),
      el("p", {}, [inspection.tuning, inspection.occasion === "production" ? null : tOf("screen.occasion.", inspection.occasion),
        clock(inspection.closedAt ?? inspection.startedAt)].filter(Boolean).join(" \u00b7 ")))
    this.#print = new PrintButton(inspection)
    put(this.#paper, this.#print.element)
    const conditional = conditionalWords(inspection)
    put(this.#next, conditional ? el("span", { class: "conditional" }, conditional) : null, this.#nextOf(inspection, state),
      inspection.verdict === "PASS" ? el("a", { class: "paper", href: inspection.links?.certificate ?? `/api/inspections/${inspection.id}/certificate`,
        target: "_blank", rel: "noopener" }, t("screen.certificate.open")) : null)
    put(this.#reasons, inspection.reasons.map((reason) => el("li", {}, reason.text)))
    if (!inspection.reasons.length) put(this.#reasons, el("li", { class: "quiet" }, inspection.verdict === "PASS" ? t("screen.verdict.allInside") : ""))
  }

  /** @param {Api.Inspection} inspection @param {import("./flow.js").State | null} state */
  #nextOf(inspection, state) {
    if (state?.then === "tuning") return el("strong", { class: "try" }, this.nextTuning(state))
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
    this.#print = null
    put(this.#paper)
    put(this.#shape, shape(drawing))
    put(this.#word, word)
    this.#bar.hidden = state !== "sending" && state !== "sweeping"
  }
}

// Limits for a wanted yield: what is asked, what is promised, and what would be needed for it.
import { post } from "../api.js"
import { el, put } from "../dom.js"
import { percent } from "../format.js"
import { busy, failed } from "../states.js"
import { t } from "../texts.js"

export class ProposalPanel {
  #ask
  #onTake
  #result = el("div", { class: "proposal-result", "aria-live": "polite" })
  #yield = field("proposal-yield", "98")
  #confidence = field("proposal-confidence", "95")
  #of = /** @type {HTMLSelectElement} */ (el("select", { id: "proposal-of" }, el("option", { value: "all" }, t("screen.limits.proposal.ofAll")), el("option", { value: "passed" }, t("screen.limits.proposal.ofPassed"))))
  #neverWider = /** @type {HTMLInputElement} */ (el("input", { type: "checkbox", id: "proposal-never-wider" }))

  /** @param {() => string} ask address of the proposal for the units that are chosen @param {(set: import("./limit-set.js").LimitSet) => void} onTake */
  constructor(ask, onTake) {
    this.#ask = ask
    this.#onTake = onTake
    const go = el("button", { type: "submit", class: "button" }, t("screen.limits.proposal.ask"))
    this.element = el("section", { class: "proposal" }, el("h2", {}, t("screen.limits.proposal.title")), el("p", { class: "quiet" }, t("screen.limits.proposal.what")),
      el("form", { class: "panel-fields", on: { submit: (/** @type {Event} */ event) => { event.preventDefault(); this.#send() } } },
        labelled(this.#yield, t("screen.limits.proposal.yield")), labelled(this.#confidence, t("screen.limits.proposal.confidence")), labelled(this.#of, t("screen.limits.proposal.of")),
        el("label", { class: "check" }, this.#neverWider, t("screen.limits.proposal.neverWider")), go),
      this.#result)
  }

  async #send() {
    put(this.#result, busy(t("screen.limits.proposal.working")))
    try {
      const proposal = /** @type {Api.Proposal} */ (await post(this.#ask(), {
        yield: number(this.#yield) / 100, confidence: number(this.#confidence) / 100, of: this.#of.value, neverWider: this.#neverWider.checked, keep: [],
      }))
      this.#draw(proposal)
    } catch (failure) {
      put(this.#result, failed(failure))
    }
  }

  /** @param {Api.Proposal} p */
  #draw(p) {
    const set = p.limitSet?.limitSet
    put(this.#result,
      el("p", { class: p.promised ? "promise kept" : "promise" }, p.words),
      el("dl", { class: "facts-list" },
        fact(t("screen.limits.proposal.used"), t("screen.limits.proposal.usedWords", { units: p.used.units, first: p.used.firstHalf, second: p.used.secondHalf, batches: p.used.batches.join(", ") })),
        fact(t("screen.limits.proposal.needs"), t("screen.limits.proposal.needsWords", { need: p.missing.secondHalfNeeds, all: p.missing.needed, missing: p.missing.units })),
        p.missing.canPromise === null ? null : fact(t("screen.limits.proposal.can"), percent(Math.floor(p.missing.canPromise * 1000) / 1000)),
        p.predicted ? fact(t("screen.limits.proposal.predicted"), t("screen.limits.figures.words", { passed: p.predicted.passed, of: p.predicted.of, low: percent(p.predicted.wilson[0]), high: percent(p.predicted.wilson[1]) })) : null),
      p.warnings.map((line) => el("p", { class: "plot-note" }, line)),
      set ? el("button", { type: "button", class: "button", on: { click: () => this.#onTake(/** @type {any} */ (set)) } }, t("screen.limits.proposal.take"))
        : el("button", { type: "button", class: "button", on: { click: () => { this.#yield.value = String(Math.floor((p.missing.canPromise ?? 0.5) * 1000) / 10); this.#send() } } },
          t("screen.limits.proposal.askWhatCan")))
  }
}

/** @param {string} id @param {string} value */
function field(id, value) {
  return /** @type {HTMLInputElement} */ (el("input", { type: "text", inputmode: "decimal", id, value }))
}

/** @param {HTMLInputElement} of */
function number(of) {
  return Number(of.value.replace(",", ".").replace("%", "").trim())
}

/** @param {HTMLElement} control @param {string} label */
export function labelled(control, label) {
  return el("div", { class: "labelled" }, el("label", { for: control.id }, label), control)
}

/** @param {string} name @param {string} value */
function fact(name, value) {
  return el("div", {}, el("dt", {}, name), el("dd", {}, value))
}

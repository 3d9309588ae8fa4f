// Stored captures judged again: start a run, follow it, read what came out otherwise.
import { get, post } from "../api.js"
import { el, put } from "../dom.js"
import { DASH, localTime } from "../format.js"
import { hashOf } from "../router.js"
import { failed } from "../states.js"
import { t } from "../texts.js"

const ASK_EVERY_MS = 700

export class JudgeAgain {
  #signal
  #batch = /** @type {HTMLInputElement} */ (el("input", { id: "again-batch", type: "text", autocomplete: "off", spellcheck: "false" }))
  #serial = /** @type {HTMLInputElement} */ (el("input", { id: "again-serial", type: "text", autocomplete: "off", spellcheck: "false" }))
  #progress = el("div", { class: "again-progress", role: "status" })
  #runs = el("div", { class: "again-runs" })

  /** @param {AbortSignal} signal ends with the screen */
  constructor(signal) {
    this.#signal = signal
    this.element = el("section", { class: "again" },
      el("h2", {}, t("screen.seal.again.title")), el("p", {}, t("screen.seal.again.lead")),
      el("form", { class: "again-ask", on: { submit: (/** @type {Event} */ event) => { event.preventDefault(); this.#start() } } },
        el("div", { class: "labelled" }, el("label", { for: "again-batch" }, t("screen.seal.again.batch")), this.#batch),
        el("div", { class: "labelled" }, el("label", { for: "again-serial" }, t("screen.seal.again.serial")), this.#serial),
        el("button", { type: "submit", class: "button" }, t("screen.seal.again.start"))),
      this.#progress, this.#runs)
    this.#list()
  }

  async #start() {
    const which = { batch: this.#batch.value.trim() || null, serial: this.#serial.value.trim() || null }
    try {
      const started = /** @type {{ job: string }} */ (await post("/api/rejudgements", which))
      await this.#follow(started.job)
    } catch (failure) {
      if (!this.#signal.aborted) put(this.#progress, failed(failure))
    }
  }

  /** @param {string} id */
  async #follow(id) {
    for (;;) {
      const job = /** @type {Api.Job} */ (await get(`/api/jobs/${id}`, this.#signal))
      const over = job.state === "done" || job.state === "failed"
      put(this.#progress, over ? null : el("progress", { max: job.total ?? 1, value: job.done, "aria-label": t("screen.seal.again.title") }),
        job.problem ?? (over ? null : t("screen.seal.again.steps", { done: job.done, total: job.total ?? DASH })))
      if (over) return this.#list()
      await new Promise((wake) => setTimeout(wake, ASK_EVERY_MS))
    }
  }

  async #list() {
    try {
      const { items } = /** @type {{ items: Api.Rejudgement[] }} */ (await get("/api/rejudgements", this.#signal))
      put(this.#runs, items.length ? runTable(items) : el("p", { class: "note" }, t("screen.seal.again.none")), ...items.slice(0, 1).map(differences))
    } catch (failure) {
      if (!this.#signal.aborted) put(this.#runs, failed(failure, () => this.#list()))
    }
  }
}

/** @param {Api.Rejudgement[]} runs */
function runTable(runs) {
  const head = [t("screen.seal.again.when"), t("screen.seal.again.why"), t("screen.seal.again.inspections"), t("screen.seal.again.same"), t("screen.seal.again.differing")]
  return el("table", { class: "again-table" },
    el("thead", {}, el("tr", {}, head.map((text, place) => el("th", { scope: "col", class: place > 1 ? "number" : null }, text)))),
    el("tbody", {}, runs.map((run) => el("tr", { class: run.differing ? "bad" : null },
      el("td", {}, localTime(run.startedAt)), el("td", {}, run.nightly ? t("screen.seal.again.nightly") : t("screen.seal.again.asked")),
      el("td", { class: "number" }, run.inspections), el("td", { class: "number" }, run.bitForBit), el("td", { class: "number" }, run.differing)))))
}

/** @param {Api.Rejudgement} run the newest */
function differences(run) {
  if (!run.differences.length) return null
  return el("table", { class: "again-differences" }, el("caption", {}, t("screen.seal.again.listed")),
    el("tbody", {}, run.differences.map((one) => el("tr", {},
      el("th", { scope: "row" }, el("a", { href: hashOf("unit", one.serial) }, one.serial)),
      el("td", {}, one.problem ?? t("screen.seal.again.difference", { db: (one.largestDb ?? 0).toFixed(4), then: one.verdictThen, now: one.verdictNow ?? DASH }))))))
}

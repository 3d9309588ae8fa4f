// The papers of a batch: its report, and the certificates of all its units as one job with a bar that tells how far it is.
import { get, Offline, post, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { recall, remember } from "../memory.js"
import { t } from "../texts.js"

/** How long between two looks at a job. */
const LOOK_MS = 1000

/**
 * @typedef {{ id: string, state: "waiting" | "running" | "done" | "failed", done: number, total: number | null, problem: string | null, result: string | null }} Job
 * @typedef {{ pages: number, leftOut: { serial: string, reason: string }[], links: { pdf?: string } }} Bundle
 */

export class BatchPapers {
  #batch
  #product
  #signal
  #told = el("div", { class: "papers-told", role: "status" })
  #button

  /**
   * @param {{ batch: string, product: string, tuning: string, limitSets: number[] }} statistics
   * @param {AbortSignal} signal ends the looking when the page goes
   */
  constructor(statistics, signal) {
    this.#batch = statistics.batch
    this.#product = statistics.product
    this.#signal = signal
    this.#button = /** @type {HTMLButtonElement} */ (el("button", { type: "button", class: "button", on: { click: () => this.#print() } }, t("screen.print.certificates")))
    const report = new URLSearchParams({ product: statistics.product, tuning: statistics.tuning, limitSet: String(statistics.limitSets[0]) })
    this.element = el("section", { class: "papers", "aria-labelledby": "papers-title" },
      el("h2", { id: "papers-title" }, t("screen.print.papers")),
      el("div", { class: "papers-row" }, this.#button,
        el("a", { class: "button", href: `/api/batches/${encodeURIComponent(statistics.batch)}/report?${report}`, target: "_blank", rel: "noopener" }, t("screen.print.report"))),
      this.#told)
    const known = recall(this.#key())
    if (known) this.#follow(known)
  }

  #key() {
    return `print.${this.#product}.${this.#batch}`
  }

  async #print() {
    this.#button.disabled = true
    put(this.#told, t("screen.print.starting"))
    try {
      const started = /** @type {{ job: string }} */ (await post(`/api/batches/${encodeURIComponent(this.#batch)}/certificates`, { product: this.#product }))
      remember(this.#key(), started.job)
      await this.#follow(started.job)
    } catch (failure) {
      this.#failed(failure)
    }
  }

  /** Looks until the job is over; a page that comes back goes on looking. @param {string} id */
  async #follow(id) {
    this.#button.disabled = true
    const bar = /** @type {HTMLProgressElement} */ (el("progress", { class: "papers-bar", max: 1 }))
    const words = el("span", {})
    put(this.#told, bar, words)
    try {
      for (;;) {
        const job = /** @type {Job} */ (await get(`/api/jobs/${id}`, this.#signal))
        if (job.state === "done") return await this.#done(job)
        if (job.state === "failed") return this.#say(job.problem ?? t("screen.failed.title"))
        if (job.total) bar.value = job.done / job.total
        put(words, job.total ? t("screen.print.progress", { percent: Math.floor(100 * job.done / job.total) }) : t("screen.print.starting"))
        await new Promise((resolve) => setTimeout(resolve, LOOK_MS))
        if (this.#signal.aborted) return
      }
    } catch (failure) {
      this.#failed(failure)
    }
  }

  /** @param {Job} job */
  async #done(job) {
    if (!job.result) return this.#say(t("screen.print.nothing"))
    const bundle = /** @type {Bundle} */ (await get(job.result, this.#signal))
    this.#button.disabled = false
    put(this.#told,
      bundle.links.pdf ? el("a", { class: "button papers-pdf", href: bundle.links.pdf, download: "" }, t("screen.print.fetch", { pages: bundle.pages })) : el("span", {}, t("screen.print.nothing")),
      bundle.leftOut.length ? el("details", {}, el("summary", {}, t("screen.print.leftOut", { count: bundle.leftOut.length })),
        el("ul", {}, bundle.leftOut.map((unit) => el("li", {}, `${unit.serial}: ${unit.reason}`)))) : null)
  }

  /** @param {unknown} failure */
  #failed(failure) {
    if (this.#signal.aborted) return
    if (failure instanceof Problem && failure.document.status === 404) remember(this.#key(), null)   // prints are forgotten after a month
    this.#say(failure instanceof Offline ? t("screen.offline.mend") : failure instanceof Problem ? failure.message : t("screen.failed.title"))
  }

  /** @param {string} text */
  #say(text) {
    this.#button.disabled = false
    put(this.#told, text)
  }
}

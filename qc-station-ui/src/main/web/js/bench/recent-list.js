// What this bench measured last; arrows walk through it.
import { el, put } from "../dom.js"
import { clock } from "../format.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"

export class RecentList {
  /** @type {Api.Inspection[]} */
  #items = []
  #fingerprint = ""
  /** @type {string | null} */
  #marked = null
  #list = el("ul", { class: "recent-list" })
  #waiting = el("ul", { class: "recent-held" })
  #open

  /** @param {(inspection: Api.Inspection) => void} open */
  constructor(open) {
    this.#open = open
    this.element = el("section", { class: "recent" }, el("h2", {}, t("screen.recent.title")), el("div", { class: "recent-room" }, this.#waiting, this.#list))
    this.show([])
  }

  /** @param {Api.Inspection[]} items newest first @returns {boolean} whether the newest one is news */
  show(items) {
    const fingerprint = JSON.stringify(items.map((item) => [item.id, item.verdict, item.lastAttempt, item.seatings?.tries]))
    const before = this.#items[0]
    if (fingerprint === this.#fingerprint && items.length) return false
    const news = items.length > 0 && (before?.id !== items[0].id || before.verdict !== items[0].verdict
      || before.lastAttempt !== items[0].lastAttempt || before.seatings?.tries !== items[0].seatings?.tries)
    this.#fingerprint = fingerprint
    this.#items = items
    this.#draw()
    return news
  }

  /** What was measured and is not judged yet, the newest first. @param {import("../outbox/store.js").Held[]} held */
  showHeld(held) {
    put(this.#waiting, [...held].reverse().map(({ attempt, heldAt }) => el("li", { class: "held-item" }, shape("HELD"),
      el("span", { class: "serial" }, attempt.serial, el("span", { class: "more" }, attempt.tuning)),
      el("span", { class: "word state-held" }, t("screen.bench.heldShort")), el("time", { datetime: heldAt }, clock(heldAt)))))
  }

  /** @param {string | null} id */
  mark(id) {
    this.#marked = id
    for (const row of this.#list.querySelectorAll("button")) row.setAttribute("aria-current", String(row.dataset.id === id))
  }

  /** @param {number} step @returns {boolean} */
  walk(step) {
    if (!this.#items.length) return false
    const at = this.#items.findIndex((item) => item.id === this.#marked)
    const next = Math.max(0, Math.min(this.#items.length - 1, at < 0 ? 0 : at + step))
    this.mark(this.#items[next].id)
    this.#list.children[next]?.scrollIntoView({ block: "nearest" })
    this.#open(this.#items[next])
    return true
  }

  #draw() {
    put(this.#list, this.#items.length ? this.#items.map((item) => this.#row(item)) : el("li", { class: "quiet" }, t("screen.recent.empty")))
  }

  /** @param {Api.Inspection} item */
  #row(item) {
    const word = item.verdict ?? item.lastAttempt ?? "INCOMPLETE"
    return el("li", {}, el("button", { type: "button", data: { id: item.id }, "aria-current": String(item.id === this.#marked), on: { click: () => this.#open(item) } },
      shape(word), el("span", { class: "serial" }, item.serial, el("span", { class: "more" }, item.tuning)),
      el("span", { class: `word state-${word.toLowerCase()}` }, tOf("screen.word.", word)), el("time", { datetime: item.closedAt ?? item.startedAt }, clock(item.closedAt ?? item.startedAt))))
  }
}

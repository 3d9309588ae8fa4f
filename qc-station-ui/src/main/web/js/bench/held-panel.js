// What is not done yet at this browser: captures held, captures refused, units to measure again. Takes no room while there is nothing.
import { el, put } from "../dom.js"
import { shortTime } from "../format.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"
import { showShelf } from "./shelf.js"

export class HeldPanel {
  #outbox
  #room = el("div", { class: "held-rows" })

  /** @param {import("../outbox/outbox.js").Outbox} outbox */
  constructor(outbox) {
    this.#outbox = outbox
    this.element = el("section", { class: "held", hidden: true, "aria-label": t("screen.outbox.title") }, this.#room)
  }

  /** @param {import("../outbox/outbox.js").OutboxState} state @param {boolean} waits whether something lies there longer than a moment */
  show(state, waits) {
    const rows = [waits && state.held.length ? this.#held(state) : null, state.shelf.length ? this.#shelf(state) : null, state.again.length ? this.#again(state) : null].filter(Boolean)
    this.element.hidden = rows.length === 0
    put(this.#room, rows)
  }

  /** The browser's own storage cannot be used. */
  broken() {
    this.element.hidden = false
    put(this.#room, el("p", { class: "held-row state-problem", role: "alert" }, shape("PROBLEM"), el("span", {}, t("screen.outbox.broken"))))
  }

  /** @param {import("../outbox/outbox.js").OutboxState} state */
  #held({ held, sender, kept }) {
    const why = sender === "sign-in" ? t("screen.outbox.signIn") : sender === "away" ? t("screen.outbox.away") : t("screen.outbox.sending")
    return el("p", { class: "held-row state-held", "data-testid": "held", role: "status", title: kept === false ? t("screen.outbox.notPersistent") : null }, shape("HELD"),
      el("span", {}, el("strong", {}, t("screen.outbox.held", { n: held.length })), el("span", { class: "more" }, t("screen.outbox.since", { time: shortTime(held[0].heldAt) }), " ", why)))
  }

  /** @param {import("../outbox/outbox.js").OutboxState} state */
  #shelf(state) {
    return el("button", { type: "button", class: "held-row state-problem", "data-testid": "shelf", on: { click: () => showShelf(this.#outbox) } }, shape("PROBLEM"),
      el("span", {}, el("strong", {}, t("screen.outbox.refused", { n: state.shelf.length })), el("span", { class: "more" }, t("screen.outbox.refusedOpen"))))
  }

  /** @param {import("../outbox/outbox.js").OutboxState} state */
  #again({ again }) {
    return el("div", { class: "held-row state-reseat", "data-testid": "again" }, shape("RESEAT"),
      el("span", {}, el("strong", {}, t("screen.outbox.again", { n: again.length })),
        el("ul", { class: "again-list" }, again.map((unit) => el("li", {}, unit.serial, " ", el("span", { class: "more" }, [unit.tuning, tOf("screen.word.", unit.word)].join(" \u00b7 ")))))))
  }
}

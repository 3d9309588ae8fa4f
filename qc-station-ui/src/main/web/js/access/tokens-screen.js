// A station's tokens, and whether this browser belongs to the station. For administrators.
import { get, sendJson } from "../api.js"
import { chooseStation, walkLinks } from "../bench/choose-station.js"
import { el, put } from "../dom.js"
import { localTime } from "../format.js"
import { go, hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { busy, failed } from "../states.js"
import { failureWords } from "../station/steps.js"
import { t } from "../texts.js"
import { belongsTo, who } from "./session.js"
import { labelled } from "./sign-in.js"

/** @param {HTMLElement} host @param {import("../router.js").Route} route @returns {import("../screens.js").Screen} */
export function startTokens(host, route) {
  return route.name ? new Tokens(host, route.name) : startChoice(host)
}

/** Stations to choose from, and a new one. @param {HTMLElement} host @returns {import("../screens.js").Screen} */
function startChoice(host) {
  const list = el("div", {})
  const words = el("div", { class: "sign-in-wrong", role: "status" })
  const name = /** @type {HTMLInputElement} */ (el("input", { id: "station-name", type: "text", maxlength: 32, autocomplete: "off", spellcheck: "false" }))
  /** @param {Event} event */
  const submit = async (event) => {
    event.preventDefault()
    const station = name.value.trim()
    if (!station) return name.focus()
    try {
      await sendJson("PUT", `/api/stations/${encodeURIComponent(station)}`, {})
      go("tokens", station)
    } catch (failure) {
      put(words, shape("PROBLEM"), el("div", {}, failureWords(failure).map((line) => (typeof line === "string" ? el("p", {}, line) : line))))
    }
  }
  put(host, list, el("form", { class: "person-form new-station", on: { submit } }, el("h2", {}, t("screen.tokens.station")),
    labelled(name, t("screen.tokens.station.name")), el("button", { type: "submit", class: "button" }, t("screen.tokens.station.add")), words))
  const choice = chooseStation(list, "tokens")
  return { close: choice.close, key: (event) => !(event.target instanceof HTMLInputElement) && (choice.key?.(event) ?? false) }
}

class Tokens {
  #host
  #station
  #path
  #closed = new AbortController()

  /** @param {HTMLElement} host @param {string} station */
  constructor(host, station) {
    this.#host = host
    this.#station = station
    this.#path = `/api/stations/${encodeURIComponent(station)}`
    put(host, busy(t("screen.tokens.loading")))
    this.#load(null)
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    return !(event.target instanceof HTMLInputElement) && walkLinks(this.#host, event)
  }

  /** @param {HTMLElement | null} told what just happened */
  async #load(told) {
    try {
      const tokens = /** @type {{ items: Api.StationToken[] }} */ (await get(`${this.#path}/tokens`, this.#closed.signal))
      this.#draw(tokens.items, told)
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#host, failed(failure, () => this.#load(told)))
    }
  }

  /** @param {Api.StationToken[]} tokens @param {HTMLElement | null} told */
  #draw(tokens, told) {
    const name = /** @type {HTMLInputElement} */ (el("input", { id: "token-name", type: "text", maxlength: 64, autocomplete: "off" }))
    const words = el("div", { class: "sign-in-wrong", role: "status" }, told ? [shape("VALID"), told] : null)
    const here = who().station === this.#station
    /** @param {"tokens" | "enrolment"} what @param {(made: any) => HTMLElement} tell */
    const make = (what, tell) => {
      if (!name.value.trim()) return name.focus()
      this.#do(words, async () => {
        const made = await sendJson("POST", `${this.#path}/${what}`, { name: name.value.trim() })
        if (what === "enrolment") belongsTo(this.#station)
        return tell(made)
      })
    }
    /** @param {Event} event */
    const submit = (event) => {
      event.preventDefault()
      make("tokens", (made) => el("div", { class: "shown-once" }, el("p", {}, t("screen.tokens.made", { name: made.name })), el("code", {}, made.token)))
    }
    put(this.#host, el("section", { class: "people" },
      el("div", { class: "people-list" },
        el("div", { class: "people-head" }, el("h1", {}, t("screen.tokens.title", { station: this.#station })), el("a", { class: "button row-link", href: hashOf("tokens") }, t("screen.tokens.other"))),
        el("p", { class: "quiet" }, t("screen.tokens.why")),
        tokens.length ? this.#table(tokens, words) : el("p", { class: "quiet" }, t("screen.tokens.none"))),
      el("div", { class: "people-side" },
        el("form", { class: "person-form", on: { submit } }, el("h2", {}, t("screen.tokens.make")),
          labelled(name, t("screen.tokens.name")),
          el("button", { type: "submit", class: "button primary" }, t("screen.tokens.make.action")),
          el("p", { class: "quiet" }, here ? t("screen.tokens.here", { station: this.#station }) : t("screen.tokens.enrol.why")),
          here
            ? el("button", { type: "button", class: "button", on: { click: () => this.#do(words, async () => {
              await sendJson("DELETE", `${this.#path}/enrolment`)
              belongsTo(null)
              return el("p", {}, t("screen.tokens.left", { station: this.#station }))
            }) } }, t("screen.tokens.leave"))
            : el("button", { type: "button", class: "button", on: { click: () => make("enrolment", () => el("p", {}, t("screen.tokens.enrolled", { station: this.#station }))) } }, t("screen.tokens.enrol"))),
        words)))
    name.focus()
  }

  /** @param {Api.StationToken[]} tokens @param {HTMLElement} words */
  #table(tokens, words) {
    return el("table", { class: "list" },
      el("thead", {}, el("tr", {}, [t("screen.tokens.column.name"), t("screen.tokens.column.made"), t("screen.tokens.column.used"), ""].map((column) => el("th", { scope: "col" }, column)))),
      el("tbody", {}, tokens.map((token) => el("tr", {},
        el("td", {}, token.name), el("td", {}, localTime(token.madeAt)), el("td", {}, token.lastUsedAt ? localTime(token.lastUsedAt) : "\u2013"),
        el("td", {}, token.valid
          ? el("button", { type: "button", class: "button", on: { click: () => this.#do(words, async () => {
            await sendJson("DELETE", `${this.#path}/tokens/${token.id}`)
            return el("p", {}, t("screen.tokens.revoked", { name: token.name }))
          }) } }, t("screen.tokens.revoke"))
          : t("screen.tokens.revokedAt", { when: localTime(token.revokedAt ?? "") }))))))
  }

  /** @param {HTMLElement} words @param {() => Promise<HTMLElement>} work */
  async #do(words, work) {
    try {
      await this.#load(await work())
    } catch (failure) {
      if (this.#closed.signal.aborted) return
      put(words, shape("PROBLEM"), el("div", {}, failureWords(failure).map((line) => (typeof line === "string" ? el("p", {}, line) : line))))
    }
  }
}

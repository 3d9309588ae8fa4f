// People: who may sign in, as what, with which badge. For administrators.
import { get, sendJson } from "../api.js"
import { walkLinks } from "../bench/choose-station.js"
import { el, put } from "../dom.js"
import { go, hashOf } from "../router.js"
import { shape } from "../shapes.js"
import { busy, failed } from "../states.js"
import { failureWords } from "../station/steps.js"
import { t, tOf } from "../texts.js"
import { labelled } from "./sign-in.js"

/** @type {Api.Role[]} */
const ROLES = ["operator", "engineer", "administrator"]
const NEW = "new"

/** @param {HTMLElement} host @param {import("../router.js").Route} route @returns {import("../screens.js").Screen} */
export function startPeople(host, route) {
  return new People(host, route)
}

class People {
  #host
  #chosen
  #closed = new AbortController()
  #list = el("div", { class: "people-list" })
  #side = el("div", { class: "people-side" })
  /** @type {Api.Person[]} */
  #people = []

  /** @param {HTMLElement} host @param {import("../router.js").Route} route */
  constructor(host, route) {
    this.#host = host
    this.#chosen = route.name
    put(host, busy(t("screen.people.loading")))
    this.#load()
  }

  /** @param {import("../router.js").Route} route */
  update(route) {
    this.#chosen = route.name
    this.#draw()
    return true
  }

  close() {
    this.#closed.abort()
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (event.key === "Escape" && this.#chosen) {
      go("people")
      return true
    }
    return !(event.target instanceof HTMLInputElement) && walkLinks(this.#list, event)
  }

  async #load() {
    try {
      this.#people = await everyone(this.#closed.signal)
      put(this.#host, el("section", { class: "people" }, this.#list, this.#side))
      this.#draw()
    } catch (failure) {
      if (!this.#closed.signal.aborted) put(this.#host, failed(failure, () => this.#load()))
    }
  }

  #draw() {
    put(this.#list, el("div", { class: "people-head" }, el("h1", {}, t("screen.people.title")),
      el("a", { class: "button row-link", href: hashOf("people", NEW) }, t("screen.people.add"))),
    el("p", { class: "quiet" }, t("screen.people.why")),
    el("table", { class: "list" },
      el("thead", {}, el("tr", {}, ["name", "roles", "badge", "state"].map((column) => el("th", { scope: "col" }, tOf("screen.people.column.", column))))),
      el("tbody", {}, this.#people.map((person) => el("tr", { "aria-current": person.person === this.#chosen ? "true" : null },
        el("td", {}, el("a", { class: "row-link", href: hashOf("people", person.person) }, person.name)),
        el("td", {}, person.roles.map((role) => tOf("screen.role.", role)).join(", ") || "\u2013"),
        el("td", {}, person.badge ? t("screen.people.hasBadge") : "\u2013"),
        el("td", {}, t(!person.account ? "screen.people.state.named" : person.active ? "screen.people.state.active" : "screen.people.state.inactive")))))))
    const person = this.#people.find((one) => one.person === this.#chosen)
    if (this.#chosen === NEW) this.#showForm(null)
    else if (person) this.#showForm(person)
    else put(this.#side, el("p", { class: "quiet people-hint" }, t("screen.people.choose")))
  }

  /** @param {Api.Person | null} person null for a new one */
  #showForm(person) {
    const fresh = !person?.account
    const name = /** @type {HTMLInputElement} */ (el("input", { id: "person-name", type: "text", maxlength: 64, autocomplete: "off", spellcheck: "false", value: person?.name ?? "", disabled: person !== null }))
    const badge = /** @type {HTMLInputElement} */ (el("input", { id: "person-badge", type: "text", maxlength: 64, autocomplete: "off", spellcheck: "false", value: person?.badge ?? "" }))
    const roles = ROLES.map((role) => tick(`person-${role}`, tOf("screen.role.", role), person?.roles.includes(role) ?? false))
    const active = tick("person-active", t("screen.people.active"), person?.active ?? true)
    const told = el("div", { class: "sign-in-wrong", role: "status" })
    const chosen = () => ROLES.filter((_, i) => roles[i].input.checked)
    /** @param {Event} event */
    const submit = (event) => {
      event.preventDefault()
      if (fresh && !name.value.trim()) return name.focus()
      this.#do(told, async () => {
        if (fresh) {
          const made = await sendJson("POST", "/api/people", { name: name.value.trim(), roles: chosen(), badge: badge.value.trim() || null })
          return { person: made.person, told: passwordOf(made) }
        }
        const changed = await sendJson("PUT", `/api/people/${person?.person}`, { roles: chosen(), badge: badge.value.trim() || null, active: active.input.checked })
        return { person: changed, told: el("p", {}, t("screen.people.saved")) }
      })
    }
    put(this.#side, el("form", { class: "person-form", on: { submit } },
      el("h2", {}, person ? person.name : t("screen.people.add")),
      person && fresh ? el("p", { class: "quiet" }, t("screen.people.named")) : null,
      person ? null : labelled(name, t("screen.people.column.name")),
      el("fieldset", {}, el("legend", {}, t("screen.people.column.roles")), roles.map((role) => role.element)),
      labelled(badge, t("screen.people.badge")), fresh ? null : active.element,
      el("button", { type: "submit", class: "button primary" }, t(fresh ? "screen.people.add.action" : "screen.people.save"))),
    person ? el("div", { class: "person-more" },
      fresh ? null : el("button", { type: "button", class: "button", on: { click: () => this.#do(told, async () => {
        const made = await sendJson("POST", `/api/people/${person.person}/password`)
        return { person: made.person, told: passwordOf(made) }
      }) } }, t("screen.people.reset")),
      this.#eraser(person, told)) : null,
    told)
    ;(person ? roles[0].input : name).focus()
  }

  /** Erasing asks once more. @param {Api.Person} person @param {HTMLElement} told */
  #eraser(person, told) {
    let sure = false
    const button = el("button", { type: "button", class: "button erase" }, t("screen.people.erase"))
    button.addEventListener("click", () => {
      if (!sure) {
        sure = true
        put(button, t("screen.people.erase.sure", { name: person.name }))
        return
      }
      this.#do(told, async () => {
        await sendJson("DELETE", `/api/people/${person.person}`)
        return { person: null, told: el("p", {}, t("screen.people.erased")) }
      })
    })
    return button
  }

  /** @param {HTMLElement} told @param {() => Promise<{ person: Api.Person | null, told: HTMLElement }>} work */
  async #do(told, work) {
    try {
      const done = await work()
      this.#people = await everyone(this.#closed.signal)
      this.#chosen = done.person?.person ?? null
      history.replaceState(null, "", hashOf("people", this.#chosen))
      this.#draw()
      put(this.#side.querySelector(".sign-in-wrong") ?? this.#side, shape("VALID"), done.told)
    } catch (failure) {
      if (this.#closed.signal.aborted) return
      put(told, shape("PROBLEM"), el("div", {}, failureWords(failure).map((line) => (typeof line === "string" ? el("p", {}, line) : line))))
    }
  }
}

/** @param {{ person: Api.Person, password: string }} made */
function passwordOf(made) {
  return el("div", { class: "shown-once" }, el("p", {}, t("screen.people.password", { name: made.person.name })), el("code", {}, made.password))
}

/** @param {string} id @param {string} label @param {boolean} checked */
function tick(id, label, checked) {
  const input = /** @type {HTMLInputElement} */ (el("input", { id, type: "checkbox", checked }))
  return { input, element: el("label", { class: "tick", for: id }, input, label) }
}

/** @param {AbortSignal} signal @returns {Promise<Api.Person[]>} */
async function everyone(signal) {
  const people = /** @type {Api.Person[]} */ ([])
  for (let next = /** @type {string | null | undefined} */ ("/api/people?limit=500"); next;) {
    const page = /** @type {Api.Page<Api.Person>} */ (await get(next, signal))
    people.push(...page.items)
    next = page.next
  }
  return people
}

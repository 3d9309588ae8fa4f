// Signing in: by name and password; at a browser that belongs to a station also by badge.
import { el, put } from "../dom.js"
import { failureWords } from "../station/steps.js"
import { shape } from "../shapes.js"
import { t, tOf } from "../texts.js"
import { mayOpen, signIn, signInByBadge, who } from "./session.js"

/**
 * Takes the place of a screen until somebody is signed in who may open it.
 * @param {HTMLElement} host @param {import("../screens.js").Desk} desk of the screen that was asked for @param {() => void} done goes on to it
 * @returns {import("../screens.js").Screen}
 */
export function askToSignIn(host, desk, done) {
  const wrong = el("div", { class: "sign-in-wrong", role: "alert" })
  const name = /** @type {HTMLInputElement} */ (el("input", { id: "sign-in-name", type: "text", autocomplete: "username", autocapitalize: "off", spellcheck: "false", maxlength: 64 }))
  const password = /** @type {HTMLInputElement} */ (el("input", { id: "sign-in-password", type: "password", autocomplete: "current-password" }))
  const badge = /** @type {HTMLInputElement} */ (el("input", { id: "sign-in-badge", type: "password", autocomplete: "off", maxlength: 64 }))
  const byBadge = who().station !== null && desk === "bench"
  const person = who().person

  /** @param {HTMLInputElement} first takes the focus again @param {() => Promise<void>} ask */
  const ask = async (first, ask) => {
    put(wrong)
    try {
      await ask()
    } catch (failure) {
      put(wrong, shape("PROBLEM"), el("div", {}, failureWords(failure).map((line) => (typeof line === "string" ? el("p", {}, line) : line))))
      password.value = ""
      badge.value = ""
      first.focus()
      return
    }
    if (mayOpen(desk)) done()
    else askToSignIn(host, desk, done)
  }
  /** @param {Event} event */
  const byPassword = (event) => {
    event.preventDefault()
    if (!name.value.trim()) return name.focus()
    if (!password.value) return password.focus()
    ask(password, () => signIn(name.value, password.value))
  }
  /** @param {Event} event */
  const withBadge = (event) => {
    event.preventDefault()
    if (badge.value.trim()) ask(badge, () => signInByBadge(badge.value.trim()))
  }
  put(host, el("section", { class: "sign-in" },
    el("h1", {}, t("screen.signIn.title")),
    person ? el("p", { class: "quiet" }, t("screen.signIn.notYours", { name: person.name, role: tOf("screen.desk.", desk) })) : null,
    byBadge ? el("form", { class: "sign-in-form", on: { submit: withBadge } },
      el("p", { class: "quiet" }, t("screen.signIn.badge.why", { station: who().station })),
      labelled(badge, t("screen.signIn.badge")), el("button", { type: "submit", class: "button primary" }, t("screen.signIn.badge.action"))) : null,
    el("form", { class: "sign-in-form", on: { submit: byPassword } },
      labelled(name, t("screen.signIn.name")), labelled(password, t("screen.signIn.password")),
      el("button", { type: "submit", class: "button primary" }, t("screen.signIn.action"))),
    wrong))
  ;(byBadge ? badge : name).focus()
  return { close: () => {} }
}

/** @param {HTMLInputElement} input @param {string} label */
export function labelled(input, label) {
  return el("div", { class: "labelled" }, el("label", { for: input.id }, label), input)
}

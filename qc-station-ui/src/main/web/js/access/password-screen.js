// One's own password.
import { el, put } from "../dom.js"
import { shape } from "../shapes.js"
import { failureWords } from "../station/steps.js"
import { t } from "../texts.js"
import { changePassword, who } from "./session.js"
import { labelled } from "./sign-in.js"

/** @param {HTMLElement} host @returns {import("../screens.js").Screen} */
export function startPassword(host) {
  const told = el("div", { class: "sign-in-wrong", role: "status" })
  /** @param {string} id @param {string} autocomplete */
  const field = (id, autocomplete) => /** @type {HTMLInputElement} */ (el("input", { id, type: "password", autocomplete }))
  const old = field("password-old", "current-password")
  const first = field("password-new", "new-password")
  const second = field("password-again", "new-password")
  /** @param {Event} event */
  const submit = async (event) => {
    event.preventDefault()
    const empty = [old, first, second].find((input) => !input.value)
    if (empty) return empty.focus()
    if (first.value !== second.value) {
      put(told, shape("PROBLEM"), el("p", {}, t("screen.password.differ")))
      return second.focus()
    }
    try {
      await changePassword(old.value, first.value)
      for (const input of [old, first, second]) input.value = ""
      put(told, shape("VALID"), el("p", {}, t("screen.password.changed")))
    } catch (failure) {
      put(told, shape("PROBLEM"), el("div", {}, failureWords(failure).map((line) => (typeof line === "string" ? el("p", {}, line) : line))))
      old.focus()
    }
  }
  put(host, el("section", { class: "sign-in" }, el("h1", {}, t("screen.password.title", { name: who().person?.name ?? "" })),
    el("p", { class: "quiet" }, t("screen.password.why")),
    el("form", { class: "sign-in-form", on: { submit } },
      labelled(old, t("screen.password.old")), labelled(first, t("screen.password.new")), labelled(second, t("screen.password.again")),
      el("button", { type: "submit", class: "button primary" }, t("screen.password.action"))), told))
  old.focus()
  return { close: () => {} }
}

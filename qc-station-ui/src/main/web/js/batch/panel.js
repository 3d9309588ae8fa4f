// One panel of figures: asks for them when it comes into view, and says what it is waiting for or what is missing.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { busy, failed } from "../states.js"
import { t } from "../texts.js"

/** @typedef {{ path: (what: string, more?: Record<string, string>) => string, signal: AbortSignal, open: (unit: { serial: string, inspection: string }) => void }} Source */

/**
 * @template T
 * @param {string} kind class @param {string} title
 * @param {Source} source @param {string} what the last step of the address @param {() => Record<string, string>} asked further parameters
 * @param {(figures: T) => (Node | null)[]} draw
 * @returns {{ element: HTMLElement, load: () => void }}
 */
export function panel(kind, title, source, what, asked, draw) {
  const body = el("div", { class: "figures-body" }, busy(t("screen.figures.loading")))
  const element = el("section", { class: `figures ${kind}-figures`, "aria-label": title }, el("h2", {}, title), body)
  let call = 0
  const load = () => {
    const mine = ++call
    body.setAttribute("aria-busy", "true")
    get(source.path(what, asked()), source.signal).then((figures) => {
      if (mine === call) put(body, draw(/** @type {T} */ (figures)))
    }, (failure) => {
      if (mine === call && !source.signal.aborted) put(body, failed(failure, load))
    }).finally(() => mine === call && body.removeAttribute("aria-busy"))
  }
  const seen = new IntersectionObserver((entries) => {
    if (!entries.some((entry) => entry.isIntersecting)) return
    seen.disconnect()
    load()
  }, { rootMargin: "400px" })
  seen.observe(element)
  return { element, load }
}

/** What cannot be said, and what it would take. @param {Api.Missing} missing */
export function missingNote(missing) {
  return el("p", { class: "missing" }, missing.text)
}

/** @param {string} method @param {(string | null | undefined)[]} notes */
export function methodNote(method, notes) {
  return el("details", { class: "how" }, el("summary", {}, t("screen.how.title")), [method, ...notes].filter(Boolean).map((line) => el("p", {}, line)))
}

// The overlay that shows the keys; `?` opens it on every screen.
import { el } from "./dom.js"
import { t } from "./texts.js"

/** Keys as the keyboards print them, with the text of what they do. */
const KEYS = [
  ["Enter", "screen.keys.enter"],
  ["Esc", "screen.keys.escape"],
  ["\u2191 \u2193", "screen.keys.upDown"],
  ["\u2190 \u2192", "screen.keys.leftRight"],
  ["Shift + \u2190 \u2192", "screen.keys.shiftLeftRight"],
  ["F9", "screen.keys.print"],
  ["Tab", "screen.keys.tab"],
  ["Alt + M", "screen.keys.cue"],
  ["?", "screen.keys.help"],
]

/** @type {HTMLDialogElement | null} */
let dialog = null

export function showKeys() {
  if (dialog?.open) return
  const close = el("button", { type: "button", class: "button", on: { click: () => dialog?.close() } }, t("screen.keys.close"))
  dialog = /** @type {HTMLDialogElement} */ (el("dialog", { class: "keys", "aria-labelledby": "keys-title" },
    el("h2", { id: "keys-title" }, t("screen.keys.title")),
    el("dl", {}, KEYS.map(([key, text]) => el("div", {}, el("dt", {}, el("kbd", {}, key)), el("dd", {}, t(text))))),
    close))
  dialog.addEventListener("close", () => {
    dialog?.remove()
    dialog = null
    document.dispatchEvent(new CustomEvent("evenpair-keys-closed"))
  })
  document.body.append(dialog)
  dialog.showModal()
  close.focus()
}

/** @returns {boolean} whether the overlay stands open */
export function keysShown() {
  return dialog?.open ?? false
}

/** Whether a key press is text for a field that takes text. @param {EventTarget | null} target */
export function takesText(target) {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement
}

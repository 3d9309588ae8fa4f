// The small paper that goes with a verdict: the label of a pair that passed, the rework slip of one that failed.
import { checkPaper, Offline, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { t } from "../texts.js"

/** The key that prints it, on every screen that shows a verdict. */
export const PRINT_KEY = "F9"

/** How long a frame stays after it was handed to the printer's dialog: browsers do not say when that closes. */
const KEEP_MS = 10 * 60_000

/** @param {Api.Inspection} inspection @returns {{ path: string, text: string } | null} null while there is no verdict */
export function paperOf(inspection) {
  const path = `/api/inspections/${inspection.id}`
  if (inspection.verdict === "PASS") return { path: `${path}/label`, text: t("screen.print.label") }
  if (inspection.verdict === "FAIL") return { path: `${path}/rework-slip`, text: t("screen.print.slip") }
  return null
}

/**
 * A button that prints the paper of one inspection, with its key; `press()` does the same for the key.
 * Bench and Unit put `element` beside the verdict and hand their key presses to `key`.
 */
export class PrintButton {
  #why = el("p", { class: "paper-why", role: "status" })
  #paper
  #busy = false

  /** @param {Api.Inspection} inspection */
  constructor(inspection) {
    this.#paper = paperOf(inspection)
    this.element = el("div", { class: "paper-offer print-offer", hidden: !this.#paper },
      el("button", { type: "button", class: "button print-button", "aria-keyshortcuts": PRINT_KEY, on: { click: () => this.press() } },
        this.#paper?.text ?? "", " ", el("kbd", {}, PRINT_KEY)), this.#why)
  }

  /** @param {KeyboardEvent} event @returns {boolean} whether it took the key */
  key(event) {
    if (event.key !== PRINT_KEY || !this.#paper) return false
    if (!event.repeat) this.press()
    return true
  }

  async press() {
    if (!this.#paper || this.#busy) return
    this.#busy = true
    put(this.#why, t("screen.print.making"))
    try {
      await printPaper(this.#paper.path)
      put(this.#why, t("screen.print.sent"))
    } catch (failure) {
      put(this.#why, failure instanceof Offline ? t("screen.offline.mend") : failure instanceof Problem ? failure.message : t("screen.failed.title"))
    } finally {
      this.#busy = false
    }
  }
}

/**
 * Opens the browser's print dialog for a PDF of this service. A browser that cannot print from a frame gets it in a new tab.
 * @param {string} path @returns {Promise<void>} when the dialog was asked for
 */
export async function printPaper(path) {
  await checkPaper(path)
  if (!navigator.pdfViewerEnabled) {
    open(path, "_blank", "noopener")
    return
  }
  const before = document.activeElement
  const frame = /** @type {HTMLIFrameElement} */ (el("iframe", { class: "print-frame", src: path, title: t("screen.print.frame"), tabindex: -1, "aria-hidden": "true" }))
  document.querySelector(".print-frame")?.remove()
  await new Promise((resolve) => {
    frame.addEventListener("load", resolve, { once: true })
    document.body.append(frame)
  })
  try {
    frame.contentWindow?.print()
  } catch {
    open(path, "_blank", "noopener")
  }
  if (before instanceof HTMLElement) before.focus()   // a frame that prints may have taken it
  setTimeout(() => frame.remove(), KEEP_MS)
}

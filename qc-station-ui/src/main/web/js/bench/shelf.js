// The shelf: captures that the service refused, each with its sentence. Corrected and sent again, saved as files, or discarded.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { shortTime } from "../format.js"
import { problemLines } from "../states.js"
import { t, tOf } from "../texts.js"
import { OCCASIONS } from "./flow.js"
import { field, labelled } from "./shift.js"

/** @typedef {import("../outbox/store.js").Shelved} Shelved */

/** @param {import("../outbox/outbox.js").Outbox} outbox */
export async function showShelf(outbox) {
  const shelf = new ShelfDialog(outbox)
  await shelf.open()
}

class ShelfDialog {
  #outbox
  #rows = el("ul", { class: "shelf-rows" })
  #detail = el("div", { class: "shelf-detail" })
  /** @type {Shelved[]} */
  #items = []
  #at = 0

  /** @param {import("../outbox/outbox.js").Outbox} outbox */
  constructor(outbox) {
    this.#outbox = outbox
    this.dialog = /** @type {HTMLDialogElement} */ (el("dialog", { class: "shelf", "aria-labelledby": "shelf-title", on: { keydown: (/** @type {KeyboardEvent} */ e) => this.#key(e) } },
      el("h2", { id: "shelf-title" }, t("screen.outbox.shelf.title")), el("p", { class: "more" }, t("screen.outbox.shelf.why")),
      el("div", { class: "shelf-body" }, this.#rows, this.#detail),
      el("button", { type: "button", class: "button", on: { click: () => this.dialog.close() } }, t("screen.keys.close"))))
    this.dialog.addEventListener("close", () => {
      this.dialog.remove()
      document.dispatchEvent(new CustomEvent("evenpair-dialog-closed"))
    })
  }

  async open() {
    document.body.append(this.dialog)
    this.dialog.showModal()
    await this.#load()
  }

  async #load() {
    this.#items = (await this.#outbox.state()).shelf
    if (!this.#items.length) return this.dialog.close()
    this.#at = Math.min(this.#at, this.#items.length - 1)
    put(this.#rows, this.#items.map((item, at) => el("li", {}, el("button", { type: "button", class: "held-row", on: { click: () => this.#show(at) } },
      el("span", { class: "serial" }, item.attempt.serial), el("span", { class: "more" }, [item.attempt.tuning, shortTime(item.heldAt)].join(" \u00b7 "))))))
    this.#show(this.#at)
  }

  /** @param {number} at */
  #show(at) {
    this.#at = at
    const buttons = /** @type {HTMLElement[]} */ ([...this.#rows.querySelectorAll("button")])
    buttons.forEach((button, i) => button.setAttribute("aria-current", String(i === at)))
    buttons[at].focus()
    this.#draw(this.#items[at])
  }

  /** @param {Shelved} item */
  #draw(item) {
    const { attempt } = item
    const serial = field("shelf-serial", { value: attempt.serial }), batch = field("shelf-batch", { value: attempt.batch }), operator = field("shelf-operator", { value: attempt.operator })
    const occasion = /** @type {HTMLSelectElement} */ (el("select", { id: "shelf-occasion" }, ["production", ...OCCASIONS].map((each) =>
      el("option", { value: each, selected: each === (attempt.occasion ?? "production") }, tOf("screen.occasion.", each)))))
    const tuning = /** @type {HTMLSelectElement} */ (el("select", { id: "shelf-tuning" }, el("option", { value: attempt.tuning, selected: true }, attempt.tuning)))
    this.#offerTunings(tuning, attempt)
    const send = () => this.#outbox.sendAgain(item, {
      serial: serial.value.trim().normalize("NFC"), batch: batch.value.trim(), operator: operator.value.trim(), occasion: occasion.value, tuning: tuning.value,
    }).then(() => this.#load())
    put(this.#detail,
      el("div", { class: "shelf-why", role: "alert" }, problemLines(item.document).map((line) => (typeof line === "string" ? el("p", {}, line) : line))),
      el("form", { class: "shelf-form", on: { submit: (/** @type {Event} */ e) => { e.preventDefault(); send() } } },
        labelled("shelf-serial", t("screen.bench.serial"), serial), labelled("shelf-batch", t("screen.bench.batch"), batch),
        labelled("shelf-operator", t("screen.bench.operator"), operator), labelled("shelf-tuning", t("screen.bench.tuning"), tuning),
        labelled("shelf-occasion", t("screen.bench.occasion"), occasion),
        el("button", { type: "submit", class: "button primary" }, t("screen.outbox.sendAgain"))),
      el("div", { class: "shelf-tools" },
        el("button", { type: "button", class: "button", on: { click: () => this.#save(item) } }, t("screen.outbox.save")), this.#discardButton(item)))
  }

  /** @param {HTMLSelectElement} select @param {Api.NewAttempt} attempt */
  #offerTunings(select, attempt) {
    get("/api/products").then((page) => {
      const product = /** @type {Api.Page<Api.Product>} */ (page).items.find((each) => each.product === attempt.product)
      if (product) put(select, product.tunings.map(({ tuning }) => el("option", { value: tuning, selected: tuning === attempt.tuning }, tuning)))
    }, () => {})
  }

  /** Asks once more before a capture is gone for good. @param {Shelved} item */
  #discardButton(item) {
    let sure = false
    const button = el("button", { type: "button", class: "button quiet" }, t("screen.outbox.discard"))
    button.addEventListener("click", () => {
      if (sure) return void this.#outbox.discard(item).then(() => this.#load())
      sure = true
      put(button, t("screen.outbox.discardSure", { serial: item.attempt.serial }))
    })
    button.addEventListener("blur", () => {
      sure = false
      put(button, t("screen.outbox.discard"))
    })
    return button
  }

  /** @param {Shelved} item */
  async #save(item) {
    for (const part of await this.#outbox.parts(item)) {
      const name = [item.attempt.serial, item.attempt.tuning, part.name].join("-") + (part.type === "text/csv" ? ".csv" : ".wav")
      await saveFile(name, new Blob([part.bytes], { type: part.type }))
    }
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    if (!this.#rows.contains(/** @type {Node} */ (event.target))) return
    const step = event.key === "ArrowDown" ? 1 : event.key === "ArrowUp" ? -1 : 0
    if (!step) return
    event.preventDefault()
    this.#show(Math.max(0, Math.min(this.#items.length - 1, this.#at + step)))
  }
}

/** Hands a file to the browser's downloads. A data address, for the page's policy takes no other of a page's own making. @param {string} name @param {Blob} file */
async function saveFile(name, file) {
  const reader = new FileReader()
  const address = await new Promise((resolve, reject) => {
    reader.addEventListener("load", () => resolve(reader.result))
    reader.addEventListener("error", () => reject(reader.error))
    reader.readAsDataURL(file)
  })
  const link = /** @type {HTMLAnchorElement} */ (el("a", { href: address, download: name, hidden: true }))
  document.body.append(link)
  link.click()
  link.remove()
}

// The numbers at the cursor, in cells that keep their place.
import { el, put } from "../dom.js"

/** @typedef {{ label: string, value: string, more?: string, kind?: string }} Cell */

export class Readout {
  constructor() {
    this.element = el("dl", { class: "readout", "aria-live": "polite" })
  }

  /** @param {Cell[]} cells */
  show(cells) {
    put(this.element, cells.map((cell) => el("div", { class: `cell ${cell.kind ?? ""}` },
      el("dt", {}, cell.label),
      el("dd", {}, cell.value, cell.more ? el("span", { class: "more" }, cell.more) : null))))
  }
}

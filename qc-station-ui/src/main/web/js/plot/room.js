// A place on the page that holds one plot and builds it anew when its size or the theme changes.
import { el } from "../dom.js"

/** @typedef {{ stand: (index: number) => void, at: (x: number, y: number) => { index: number, db: number } | null, repaint: () => void, destroy: () => void }} Chart */

export class PlotRoom {
  /** @type {Chart | null} */
  chart = null
  #width = 0
  #height = 0
  #rebuild

  /**
   * @param {string} kind class of the place
   * @param {(host: HTMLElement, width: number, height: number) => Chart | null} build null while there is nothing to show
   */
  constructor(kind, build) {
    this.host = el("div", { class: "plot-host" })
    this.element = el("div", { class: `plot-room ${kind}` }, this.host)
    this.#rebuild = () => {
      this.chart?.destroy()
      this.chart = this.#width > 160 && this.#height > 80 ? build(this.host, this.#width, this.#height) : null
    }
    const observer = new ResizeObserver(() => this.#measure())
    observer.observe(this.element)
    const onTheme = () => {
      if (this.element.isConnected) return this.#rebuild()
      document.removeEventListener("evenpair-theme", onTheme)
      observer.disconnect()
    }
    document.addEventListener("evenpair-theme", onTheme)
  }

  /** Builds the plot anew from what its owner holds now. */
  refresh() {
    this.#width = this.element.clientWidth
    this.#height = this.element.clientHeight
    this.#rebuild()
  }

  /** @param {number} px */
  setHeight(px) {
    this.element.style.height = `${px}px`
  }

  #measure() {
    if (this.element.clientWidth !== this.#width || this.element.clientHeight !== this.#height) this.refresh()
  }
}

// What is shown of an inspection: the verdict, its curves, its checks, and what this bench measured last.
import { get, Offline, Problem } from "../api.js"
import { el, put } from "../dom.js"
import { howMeasured, OF_A_PAIR } from "../how-measured.js"
import { remember } from "../memory.js"
import { PairPlots } from "../plot/pair-plots.js"
import { hasCurves } from "../plot/response-panel.js"
import { idleNoiseBlock, spreadBlock } from "../quality-words.js"
import { regionsTable } from "../regions.js"
import { t } from "../texts.js"
import { RecentList } from "./recent-list.js"
import { VerdictPanel } from "./verdict-panel.js"

const RECENT = 12

export class ResultView {
  #station
  #signal
  #plot = new PairPlots()
  #regions = el("section", { class: "bench-regions", "aria-label": t("screen.regions.caption") })
  #opened
  /** @type {string | null} id of the inspection on the screen */
  #shownId = null

  /** @param {string} station @param {AbortSignal} signal that ends every reading @param {() => void} opened an inspection of the list was opened */
  constructor(station, signal, opened) {
    this.#station = station
    this.#signal = signal
    this.#opened = opened
    this.verdict = new VerdictPanel()
    this.recent = new RecentList((inspection) => {
      this.#opened()
      this.#open(inspection.id)
    })
    this.elements = [this.verdict.element, el("section", { class: "bench-plot" }, this.#plot.element), this.#regions]
    this.#drawChecks(null)
  }

  /** @param {KeyboardEvent} event @returns {boolean} whether it moved the plots' cursor */
  plotKey(event) {
    return this.#plot.key(event)
  }

  /**
   * Reads this station's latest inspections; shows the newest if asked to and nothing else stands there.
   * @param {() => boolean} mayShow asked when it is there: meanwhile another unit may have come onto the bench
   * @returns {Promise<Api.Inspection[]>} the newest first
   */
  async refresh(mayShow) {
    const list = /** @type {Api.Page<Api.Inspection>} */ (await get(
      `/api/inspections?station=${encodeURIComponent(this.#station)}&order=newest&limit=${RECENT}`, this.#signal))
    const newest = list.items[0]
    const news = this.recent.show(list.items)
    if (newest && mayShow() && (news || this.#shownId === null)) await this.#open(newest.id, mayShow)
    else this.recent.mark(this.#shownId)
    return list.items
  }

  /** @param {Api.Inspection} inspection @param {import("./flow.js").State | null} [state] of the course that it answers */
  async show(inspection, state = null) {
    this.#shownId = inspection.id
    this.verdict.show(inspection, state)
    this.recent.mark(inspection.id)
    remember("unit", inspection.serial)
    this.#drawChecks(inspection)
    if (!hasCurves(inspection)) return this.#plot.clear(t("screen.plot.none"))
    try {
      const curves = /** @type {Api.Curves} */ (await get(`/api/inspections/${inspection.id}/curves`, this.#signal))
      if (this.#shownId === inspection.id) this.#plot.show(curves, inspection)
    } catch (failure) {
      if (this.#shownId !== inspection.id || this.#signal.aborted) return
      if (!(failure instanceof Problem || failure instanceof Offline)) throw failure
      this.#plot.clear(failure instanceof Offline ? t("screen.plot.offline") : t("screen.plot.none"))
    }
  }

  /** Another unit is on the bench: what was shown is not its. @param {string} why nothing is plotted */
  clear(why) {
    this.#shownId = null
    this.recent.mark(null)
    this.#plot.clear(why)
    this.#drawChecks(null)
  }

  /** @param {string} id @param {() => boolean} [mayShow] */
  async #open(id, mayShow = () => true) {
    try {
      const inspection = /** @type {Api.Inspection} */ (await get(`/api/inspections/${id}`, this.#signal))
      if (mayShow()) await this.show(inspection)
    } catch (failure) {
      if (this.#signal.aborted || !mayShow()) return
      this.verdict.failed(failure)
      this.clear(failure instanceof Offline ? t("screen.plot.offline") : t("screen.plot.refused"))
    }
  }

  /** @param {Api.Inspection | null} inspection */
  #drawChecks(inspection) {
    put(this.#regions, this.#plot.choices, regionsTable(inspection?.regions ?? [], inspection?.reasons ?? []),
      inspection ? [idleNoiseBlock(inspection), spreadBlock(inspection)] : null, howMeasured(OF_A_PAIR))
  }
}

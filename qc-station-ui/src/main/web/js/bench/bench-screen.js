// Bench: scan, mount, measure, read one word. Holds what the parts share and decides what the keys do.
import { get, newKey, Offline, Problem, sendAttempt } from "../api.js"
import { el, put } from "../dom.js"
import { takesText } from "../keys.js"
import { listen } from "../live.js"
import { remember, recall } from "../memory.js"
import { PairPlots } from "../plot/pair-plots.js"
import { hasCurves } from "../plot/response-panel.js"
import { howMeasured, OF_A_PAIR } from "../how-measured.js"
import { idleNoiseBlock, spreadBlock } from "../quality-words.js"
import { regionsTable } from "../regions.js"
import { hashOf } from "../router.js"
import { t } from "../texts.js"
import { AttemptForm } from "./attempt-form.js"
import { chooseStation } from "./choose-station.js"
import { RecentList } from "./recent-list.js"
import { VerdictPanel } from "./verdict-panel.js"

const RECENT = 12

/** @type {import("../screens.js").StartScreen} */
export function startBench(host, route) {
  const station = route.name ?? recall("station")
  if (!station) return chooseStation(host)
  remember("station", station)
  if (!route.name) history.replaceState(null, "", hashOf("bench", station))
  return new Bench(host, station)
}

class Bench {
  #station
  #closed = new AbortController()
  #verdict = new VerdictPanel()
  #plot = new PairPlots()
  #regions = el("section", { class: "bench-regions", "aria-label": t("screen.regions.caption") })
  #recent = new RecentList((inspection) => this.#open(inspection.id))
  #form
  #live
  #page
  /** @type {string | null} id of the inspection on the screen */
  #shownId = null
  /** @type {{ key: string, print: string } | null} the attempt on its way, so that a repetition is the same one */
  #sending = null
  #busy = false

  /** @param {HTMLElement} host @param {string} station */
  constructor(host, station) {
    this.#station = station
    this.#form = new AttemptForm(station, () => this.#send())
    this.#page = el("div", { class: "bench" },
      el("div", { class: "bench-side" }, this.#form.element, this.#recent.element),
      this.#verdict.element, el("section", { class: "bench-plot" }, this.#plot.element), this.#regions)
    put(host, this.#page)
    this.#drawChecks(null)
    this.#verdict.waiting()
    this.#form.focusSerial()
    this.#live = listen({
      onNews: (news) => {
        if (news.station === this.#station && !this.#busy) this.#refresh(true).catch(() => this.#form.showLive("offline"))
      },
      onState: (state) => this.#form.showLive(state),
      poll: () => this.#refresh(this.#shownId !== null),
    })
    document.addEventListener("evenpair-keys-closed", this.#refocus)
    addEventListener("focus", this.#refocus)
  }

  close() {
    this.#closed.abort()
    this.#live.close()
    document.removeEventListener("evenpair-keys-closed", this.#refocus)
    removeEventListener("focus", this.#refocus)
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    const typing = takesText(event.target) && event.target !== this.#form.serial
    if (event.key === "Escape") {
      this.#form.clear()
      return true
    }
    if (typing) return false
    if (event.key === "ArrowUp" || event.key === "ArrowDown") return this.#recent.walk(event.key === "ArrowDown" ? 1 : -1)
    if (event.target === this.#form.serial && this.#form.serial.value !== "" && !event.shiftKey) return false
    if (this.#plot.key(event)) return true
    if (event.key.length === 1 && event.key !== " " && !event.ctrlKey && !event.metaKey && !event.altKey && event.target !== this.#form.serial) {
      this.#form.focusSerial()   // a scanner types wherever the focus is
    }
    return false
  }

  #refocus = () => {
    // a window that comes back from a file dialog keeps its button; only a focus that went nowhere is led back
    if (document.activeElement === null || document.activeElement === document.body) this.#form.focusSerial()
  }

  async #send() {
    const ready = this.#form.attempt()
    if (!ready || this.#busy) return
    const print = JSON.stringify([ready.attempt, ready.left.name, ready.left.size, ready.left.lastModified, ready.right.name, ready.right.size, ready.right.lastModified])
    if (this.#sending?.print !== print) this.#sending = { key: newKey(), print }
    this.#setBusy(true)
    this.#verdict.sending(ready.attempt.serial, 0, ready.left.size + ready.right.size)
    try {
      const inspection = await sendAttempt(ready.attempt, ready.left, ready.right, this.#sending.key,
        (sent, total) => this.#verdict.sending(ready.attempt.serial, sent, total))
      this.#sending = null
      this.#form.taken(inspection)
      await this.#show(inspection)
      await this.#refresh(false)
    } catch (failure) {
      if (failure instanceof Problem) this.#sending = null
      this.#failed(failure)
    } finally {
      this.#setBusy(false)
      this.#form.focusSerial()
    }
  }

  /** @param {boolean} busy */
  #setBusy(busy) {
    this.#busy = busy
    this.#form.setBusy(busy)
    this.#page.classList.toggle("busy", busy)   // what is still shown belongs to the pair before
  }

  /** @param {unknown} failure */
  #failed(failure) {
    if (this.#closed.signal.aborted) return
    this.#shownId = null
    this.#verdict.failed(failure)
    this.#plot.clear(failure instanceof Offline ? t("screen.plot.offline") : t("screen.plot.refused"))
    this.#drawChecks(null)
  }

  /** Reads this station's latest inspections; shows the newest if asked to. @param {boolean} showNewest */
  async #refresh(showNewest) {
    const list = /** @type {Api.Page<Api.Inspection>} */ (await get(
      `/api/inspections?station=${encodeURIComponent(this.#station)}&order=newest&limit=${RECENT}`, this.#closed.signal))
    if (this.#busy && showNewest) return
    this.#readStation()
    const newest = list.items[0]
    if (newest) this.#form.suggest(newest)
    const news = this.#recent.show(list.items)
    if (newest && (this.#shownId === null ? showNewest || list.items.length > 0 && this.#verdict.isWaiting() : showNewest && news)) {
      await this.#open(newest.id)
    } else {
      this.#recent.mark(this.#shownId)
    }
  }

  /** The station's own state, quietly: a bench without an answer measures as well as before. */
  #readStation() {
    get("/api/stations", this.#closed.signal).then((page) => {
      const known = /** @type {Api.Page<Api.Station>} */ (page).items.find((station) => station.station === this.#station)
      if (known) this.#form.showStation(known)
    }, () => {})
  }

  /** @param {string} id */
  async #open(id) {
    try {
      await this.#show(await get(`/api/inspections/${id}`, this.#closed.signal))
    } catch (failure) {
      this.#failed(failure)
    }
  }

  /** @param {Api.Inspection | null} inspection */
  #drawChecks(inspection) {
    put(this.#regions, this.#plot.choices, regionsTable(inspection?.regions ?? [], inspection?.reasons ?? []),
      inspection ? [idleNoiseBlock(inspection), spreadBlock(inspection)] : null, howMeasured(OF_A_PAIR))
  }

  /** @param {Api.Inspection} inspection */
  async #show(inspection) {
    this.#shownId = inspection.id
    this.#verdict.show(inspection)
    this.#recent.mark(inspection.id)
    remember("unit", inspection.serial)
    this.#drawChecks(inspection)
    if (!hasCurves(inspection)) return this.#plot.clear(t("screen.plot.none"))
    try {
      const curves = /** @type {Api.Curves} */ (await get(`/api/inspections/${inspection.id}/curves`, this.#closed.signal))
      if (this.#shownId === inspection.id) this.#plot.show(curves, inspection)
    } catch (failure) {
      if (this.#shownId !== inspection.id || this.#closed.signal.aborted) return
      if (!(failure instanceof Problem || failure instanceof Offline)) throw failure
      this.#plot.clear(failure instanceof Offline ? t("screen.plot.offline") : t("screen.plot.none"))
    }
  }
}

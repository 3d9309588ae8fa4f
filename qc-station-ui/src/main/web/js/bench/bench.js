// The Bench at work: turns keys, scans, captures and answers into events of the flow, and shows the step it stands at.
import { get, newKey } from "../api.js"
import { el, put } from "../dom.js"
import { shortTime } from "../format.js"
import { takesText } from "../keys.js"
import { listen } from "../live.js"
import { recall, remember } from "../memory.js"
import { outbox } from "../outbox/outbox.js"
import { HeldReport } from "../outbox/report.js"
import { Full } from "../outbox/store.js"
import { serviceNow } from "../service-clock.js"
import { t, tOf } from "../texts.js"
import { Badges } from "./badges.js"
import { Cues } from "./cues.js"
import { DeviceCapture, hasDevices } from "./device-capture.js"
import { FileCapture } from "./file-capture.js"
import { flawsOfParts, prepareChecks } from "./file-checks.js"
import { attemptOf, begin, measuresOn, next, OCCASIONS, takesSerial } from "./flow.js"
import { FocusKeeper } from "./focus-keeper.js"
import { isFootSwitch } from "./foot-switch.js"
import { HeldPanel } from "./held-panel.js"
import { serialOf } from "./history.js"
import { ResultView } from "./result.js"
import { showSettings, wayOf } from "./settings.js"
import { field, labelled, ShiftForm } from "./shift.js"
import { StationLine } from "./station-line.js"

/** @typedef {import("../sound/checks.js").Flaw} Flaw */

/** A verdict that takes longer than this is called held; it still comes. */
const PATIENCE_MS = 5000
const MOST_OF_A_SERIAL = 50
/** How often the held captures are counted for the service, if nothing else makes it look. */
const REPORT_MS = 60_000

export class Bench {
  #station
  #closed = new AbortController()
  #state = begin()
  #cues = new Cues()
  #result
  #line
  #shift = new ShiftForm(() => this.#tell())
  #files = new FileCapture(() => this.#tell())
  #devices
  #held = new HeldPanel(outbox)
  #report
  #reporting = 0
  #badges
  #focus
  #live
  #serial = field("serial", { class: "serial-field", maxlength: 64, enterkeyhint: "next" })
  #hint = el("p", { class: "hint", role: "status" })
  #submit = /** @type {HTMLButtonElement} */ (el("button", { type: "submit", class: "button primary" }))
  #mute = el("button", { type: "button", class: "button quiet cue", on: { click: () => this.#toggleCue() } })
  #captureRoom = el("div", { class: "capture-room" })
  #form
  #patience = 0
  #isLive = false
  /** @type {string | undefined} when the output was calibrated last */
  #outputCalibration
  /** @type {Api.ProblemDocument | null} */
  #refusal = null
  /** @type {Flaw[]} of the capture under way */
  #flaws = []
  #findFlaws = () => Promise.resolve(/** @type {Flaw[]} */ ([]))
  #unlisten

  /** @param {HTMLElement} page @param {string} station */
  constructor(page, station) {
    this.#station = station
    this.#line = new StationLine(station)
    this.#badges = new Badges(station)
    this.#report = new HeldReport(station)
    this.#reporting = window.setInterval(() => this.#readOutbox(), REPORT_MS)
    this.#result = new ResultView(station, this.#closed.signal, () => this.#leave())
    this.#devices = new DeviceCapture(station, { changed: () => this.#tell(), progress: (share) => this.#result.verdict.progress(share), lost: (notice) => this.#on({ type: "stopped", notice }) })
    this.#form = el("form", { class: "attempt", novalidate: true, on: { submit: (/** @type {Event} */ e) => { e.preventDefault(); this.#enter() } } },
      this.#line.element, this.#line.needs, labelled("serial", t("screen.bench.serial"), this.#serial), this.#captureRoom,
      this.#submit, this.#hint, this.#shift.element,
      el("div", { class: "bench-tools" }, this.#mute,
        el("button", { type: "button", class: "button quiet", on: { click: () => this.#settings() } }, t("screen.bench.settings"))))
    put(page, el("div", { class: "bench-side" }, this.#form, this.#held.element, this.#result.recent.element), ...this.#result.elements)
    this.#page = page
    this.#form.addEventListener("evenpair-files-ready", () => this.#submit.focus())
    this.#focus = new FocusKeeper(page, () => this.#home())
    this.#drawWay()
    this.#drawCue()
    this.#result.verdict.waiting()
    this.#unlisten = outbox.listen((news) => this.#news(news))
    this.#readOutbox()
    this.#home().focus()
    this.#live = listen({
      onNews: (news) => { if (news.station === this.#station) this.#refresh(true).catch(() => this.#line.showLive("offline")) },
      onState: (state) => {
        this.#line.showLive(state)
        this.#isLive = state === "live"
        if (!this.#isLive) return
        outbox.wake()
        prepareChecks()
        this.#badges.refresh(this.#closed.signal).catch(() => {})
      },
      poll: () => this.#refresh(true),
    })
    this.#tell()
  }

  #page

  close() {
    this.#closed.abort()
    clearTimeout(this.#patience)
    clearInterval(this.#reporting)
    this.#live.close()
    this.#unlisten()
    this.#focus.close()
    this.#cues.close()
    this.#devices.close()
  }

  /** @param {KeyboardEvent} event @returns {boolean} whether it was taken */
  key(event) {
    if (document.querySelector("dialog[open]")) return false
    const inSerial = event.target === this.#serial
    if (event.altKey && event.code === "KeyM") return this.#toggleCue()
    if (event.key === "Escape") return this.#escape()
    if (event.key === "Enter" && event.target instanceof HTMLSelectElement) {
      this.#enter()   // a list sends no form by itself
      return true
    }
    if (this.#isIdle() && this.#result.verdict.printKey(event)) return true
    if (takesText(event.target) && !inSerial) return false
    if (isFootSwitch(event)) {
      if (!event.repeat) this.#enter()
      return true
    }
    if (this.#state.step === "repeated" && event.key.startsWith("Arrow")) {
      this.#on({ type: "arrow", by: event.key === "ArrowRight" || event.key === "ArrowDown" ? 1 : -1 })
      return true
    }
    if (event.key === "ArrowUp" || event.key === "ArrowDown") return this.#isIdle() && this.#result.recent.walk(event.key === "ArrowDown" ? 1 : -1)
    if (isLetter(event)) return this.#letter(inSerial)
    if (inSerial && this.#serial.value !== "" && !event.shiftKey && this.#isIdle()) return false
    return this.#result.plotKey(event)
  }

  /** A scanner types wherever the keys go to; not into a sweep that plays. @param {boolean} inSerial */
  #letter(inSerial) {
    if (!takesSerial(this.#state)) return true
    if (!inSerial) {
      this.#serial.focus()
      this.#serial.select()
    }
    return false
  }

  /** @returns {HTMLElement} where the keys belong at this step */
  #home() {
    if (this.#shift.isOpen() && !this.#shift.isReady()) return this.#shift.missing() ?? this.#serial
    const files = this.#way() === "files" && (this.#state.step === "mount" || measuresOn(this.#state))
    return files ? this.#files.missing() ?? this.#submit : this.#serial
  }

  #way() {
    return wayOf(this.#station, hasDevices(this.#station))
  }

  /** @returns {boolean} whether a reload would disturb nobody */
  isIdle() {
    return this.#isIdle() && this.#serial.value === "" && this.#files.isEmpty() && !this.#shift.isOpen()
  }

  /** Nothing is under way that a look at another unit would disturb. */
  #isIdle() {
    return this.#state.step === "serial" || (this.#state.step === "verdict" && this.#state.then === "next-unit")
  }

  /** Enter, the foot switch, or the button: the obvious next thing. */
  #enter() {
    if (this.#shift.isOpen() && this.#shift.isReady()) this.#shift.begin()
    const typed = serialOf(this.#serial.value), { step } = this.#state
    if (step === "looking" || step === "sweeping") return
    const another = typed !== "" && typed !== this.#state.serial
    if (this.#isIdle() || step === "sending" || another) {
      if (typed && (another || this.#isIdle())) return this.#scan(typed)
      if (step === "verdict") this.#on({ type: "enter" })
      return this.#toMissing()
    }
    if (step === "repeated") return this.#on({ type: "enter" })
    if (!this.#shift.isReady()) return this.#toMissing()
    if (this.#way() === "devices") return this.#startSweep()
    if (this.#files.missing()) return this.#files.missing()?.focus()
    this.#takeFiles()
  }

  /** @param {string} serial */
  #scan(serial) {
    if (this.#badges.mayBe(serial, this.#shift.patterns())) return void this.#signIn(serial)
    const plan = this.#shift.plan()
    if (!this.#shift.isReady() || !plan) return this.#toMissing()
    this.#shift.begin()
    this.#on({ type: "scan", serial })
  }

  /** Whoever scanned a badge measures from now on. @param {string} badge */
  async #signIn(badge) {
    this.#serial.value = ""
    const found = await this.#badges.signIn(badge, serviceNow())
    if (this.#closed.signal.aborted) return
    if (found === null) return this.#say(t("screen.bench.unknownBadge"))
    if ("refused" in found) return this.#say(found.refused.detail ?? found.refused.title ?? "")
    this.#shift.setOperator(found.name)
    outbox.wake()   // what waited for somebody to sign in
    this.#badges.refresh(this.#closed.signal).catch(() => {})
    this.#tell()
    put(this.#hint, found.known === "service" ? t("screen.bench.signedIn", { name: found.name }) : t("screen.bench.knownHere", { name: found.name }))
    this.#home().focus()
  }

  /** @param {string} sentence */
  #say(sentence) {
    this.#result.verdict.stopped(t("screen.bench.stoppedWord"), sentence)
    this.#home().focus()
  }

  #toMissing() {
    const missing = this.#shift.missing()
    this.#tell()
    if (missing && serialOf(this.#serial.value)) this.#shift.open()
    else this.#home().focus()
  }

  #escape() {
    if (this.#state.step === "sweeping") this.#devices.abort()
    if (this.#state.step === "serial" || this.#state.step === "verdict" || this.#state.step === "mount") this.#files.clear()
    const before = this.#state
    this.#on({ type: "escape" })
    if (this.#state.step === "serial") {
      this.#serial.value = ""
      if (before.step !== "serial" || before.notice) this.#result.verdict.waiting()
    }
    this.#tell()
    this.#home().focus()
    return true
  }

  /** A look at the list takes the place of what was said; a unit that is under way stays. */
  #leave() {
    if (this.#isIdle() && this.#state.step !== "serial") this.#state = begin()
  }

  /** @param {import("./flow.js").Event} event */
  #on(event) {
    const before = this.#state
    const plan = this.#shift.plan() ?? { product: "", name: "", pattern: null, tunings: [] }
    this.#state = next(before, event, plan)
    if (this.#state === before) return
    this.#entered(before, event)
    this.#draw(before, event)
    this.#tell()
    if (before.serial !== this.#state.serial) this.#readOutbox()
    if (!document.querySelector("dialog[open]")) this.#home().focus()
  }

  /** What a new step sets going. @param {import("./flow.js").State} before @param {import("./flow.js").Event} event */
  #entered(before, event) {
    const { step, serial } = this.#state
    this.#page.classList.toggle("busy", step === "sweeping" || step === "sending" || step === "looking" || step === "mount")
    if (step === "looking") {
      this.#serial.value = serial
      this.#serial.select()
      this.#look(serial)
    }
    if (step === "sweeping" && before.step !== "sweeping") this.#sweep()
    if (step === "verdict" && this.#state.outcome !== before.outcome) this.#cues.play(this.#state.outcome)
    if (step !== "sending") clearTimeout(this.#patience)
    if (step === "serial" && before.step !== "serial") this.#serial.value = ""
    if (step === "verdict" && this.#state.then === "next-unit" && serialOf(this.#serial.value) === serial) this.#serial.value = ""
    if (step === "mount" && event.type === "history" && this.#way() === "files" && !this.#files.missing()) queueMicrotask(() => this.#enter())
  }

  /** What is known of a serial: from the service, or else from what this browser remembers. @param {string} serial */
  async #look(serial) {
    try {
      const page = /** @type {Api.Page<Api.Inspection>} */ (await get(`/api/inspections?serial=${encodeURIComponent(serial)}&order=newest&limit=${MOST_OF_A_SERIAL}`,
        AbortSignal.any([this.#closed.signal, AbortSignal.timeout(PATIENCE_MS)])))
      this.#on({ type: "history", serial, inspections: page.items, away: false, heldAt: null })
    } catch {
      if (this.#closed.signal.aborted) return
      const remembered = /** @type {Api.Inspection[]} */ (recall(`recent.${this.#station}`) ?? []).filter((each) => each.serial === serial)
      const { held } = await outbox.state().catch(() => ({ held: /** @type {import("../outbox/store.js").Held[]} */ ([]) }))
      const waiting = held.filter((item) => item.attempt.serial === serial).pop()
      this.#on({ type: "history", serial, inspections: remembered, away: true, heldAt: waiting ? shortTime(waiting.heldAt) : null })
    }
  }

  async #startSweep() {
    if (this.#devices.needsCaution() && !await this.#devices.askCaution(this.#shift.values().operator)) return
    this.#on({ type: "enter" })
  }

  async #takeFiles() {
    const { parts, failure } = await this.#files.read().then((read) => ({ parts: read, failure: null }), (error) => ({ parts: [], failure: error }))
    if (failure) return this.#on({ type: "stopped", notice: { key: "screen.bench.fileGone" } })
    if (await this.#hold(parts, () => flawsOfParts(parts))) this.#files.clear()
    this.#tell()
  }

  async #sweep() {
    if (!await outbox.hasRoom(0)) return this.#on({ type: "stopped", notice: { key: "screen.outbox.full" } })
    const taken = await this.#devices.sweep(this.#outputCalibration)
    if (this.#state.step !== "sweeping" || taken === null) return
    if ("notice" in taken) return this.#on({ type: "stopped", notice: taken.notice })
    await this.#hold(taken.parts, () => Promise.resolve(taken.flaws))
  }

  /** The capture is kept here first, and sent from there. @param {import("../outbox/store.js").Part[]} parts @param {() => Promise<Flaw[]>} flaws what the browser itself finds in it @returns {Promise<boolean>} whether it is kept */
  async #hold(parts, flaws) {
    performance.mark("evenpair-captured")
    const { batch, operator, product } = this.#shift.values()
    const attempt = { ...attemptOf(this.#state), batch, operator, product, station: this.#station, measuredAt: serviceNow().toISOString() }
    const key = newKey()
    if (!await outbox.hasRoom(parts.reduce((sum, part) => sum + part.bytes.byteLength, 0))) {
      this.#on({ type: "stopped", notice: { key: "screen.outbox.full" } })
      return false
    }
    this.#flaws = []
    this.#findFlaws = flaws
    this.#on({ type: "captured", key })
    try {
      await outbox.add(key, attempt, parts)
      this.#patience = window.setTimeout(() => this.#waits("screen.outbox.slow"), PATIENCE_MS)
      return true
    } catch (failure) {
      this.#on({ type: "stopped", notice: { key: failure instanceof Full ? "screen.outbox.full" : "screen.outbox.notKept" } })
      return false
    }
  }

  /** @param {import("../outbox/outbox.js").News} news */
  #news(news) {
    if (news.what === "answered") {
      this.#on({ type: "answered", key: news.key, inspection: news.inspection })
      this.#refresh(false).catch(() => {})
    } else if (news.what === "refused") {
      this.#refusal = news.document
      this.#on({ type: "refused", key: news.key })
    } else if (news.what === "waiting") {
      this.#waits(news.sender === "sign-in" ? "screen.outbox.signIn" : "screen.outbox.away")
    }
    this.#readOutbox()
  }

  /** No verdict yet: the browser's own look at the capture is the best there is. @param {string} why key of the sentence */
  async #waits(why) {
    const { key, step } = this.#state
    if (!key || step !== "sending") return
    const flaws = await this.#findFlaws()
    if (this.#state.key !== key) return
    this.#flaws = flaws
    this.#on({ type: "waiting", key, notice: { key: why }, flawed: flaws.some((flaw) => flaw.again) })
  }

  #readOutbox() {
    outbox.state().then((state) => {
      const waits = state.sender === "away" || state.sender === "sign-in" || state.held.length > 1
      if (this.#isLive && (waits || !state.held.length)) this.#report.tell(state.held)   // a capture on its way is not held yet
      const onBench = this.#isIdle() ? "" : this.#state.serial
      this.#held.show({ ...state, again: state.again.filter((unit) => unit.serial !== onBench) }, waits)
      this.#result.recent.showHeld(waits ? state.held : [])
    }, () => this.#held.broken())
  }

  /** @param {boolean} showNewest */
  async #refresh(showNewest) {
    const before = this.#state
    const items = await this.#result.refresh(() => showNewest && this.#state === before && this.#isIdle() && !this.#state.notice)
    this.#readStation()
    if (!items.length) return
    remember(`recent.${this.#station}`, items.map((item) => ({ ...item, reasons: [], regions: [], attempts: [] })))
    this.#shift.suggest(items[0])
    this.#tell()
  }

  /** The station's own state, quietly: a bench without an answer measures as well as before. */
  #readStation() {
    get("/api/stations", this.#closed.signal).then((page) => {
      const known = /** @type {Api.Page<Api.Station>} */ (page).items.find((station) => station.station === this.#station)
      if (!known) return
      this.#line.showStation(known)
      this.#outputCalibration = known.output?.measuredAt
    }, () => {})
  }

  /** @param {import("./flow.js").State} before @param {import("./flow.js").Event} event */
  #draw(before, event) {
    const state = this.#state, panel = this.#result.verdict, notice = state.notice ? [t(state.notice.key, state.notice.values)] : []
    if (state.step !== "serial" && state.step !== "verdict" && before.step !== state.step) this.#result.clear(t("screen.plot.empty"))
    switch (state.step) {
      case "serial": return notice.length ? panel.stopped(t("screen.bench.stoppedWord"), notice[0]) : undefined
      case "looking": return panel.step("mount", "WAITING", t("screen.bench.lookingWord"), state, t("screen.bench.looking"))
      case "repeated": return this.#drawRepeated(notice)
      case "mount": return panel.step("mount", event.type === "stopped" ? "PROBLEM" : "WAITING", event.type === "stopped" ? t("screen.bench.stoppedWord") : t("screen.bench.mountWord"), state,
        this.#way() === "files" ? t("screen.bench.mountFiles") : t("screen.bench.mountNext"), [...notice, t("screen.bench.mountTuning", { tuning: state.todo[0] })])
      case "sweeping": return panel.step("sweeping", "BUSY", t("screen.bench.sweepingWord"), state, t("screen.bench.sweepingNext"))
      case "sending": return panel.step("sending", "BUSY", t("screen.verdict.judgingWord"), state, t("screen.verdict.judging"))
      default: return this.#drawVerdict(event)
    }
  }

  /** @param {string[]} notice */
  #drawRepeated(notice) {
    const state = this.#state, judged = state.judged
    if (!judged) return
    this.#result.verdict.step("repeated", judged.verdict, t("screen.bench.repeatedWord"), state, t("screen.bench.repeatedNext"), [
      t("screen.bench.repeated", { verdict: tOf("screen.word.", judged.verdict), tuning: judged.tuning, time: shortTime(judged.at), batch: judged.batch }), ...notice])
    this.#result.verdict.choices(OCCASIONS.map((occasion) => tOf("screen.bench.occasionWhy.", occasion)), state.choice)
  }

  /** @param {import("./flow.js").Event} event */
  #drawVerdict(event) {
    const state = this.#state, panel = this.#result.verdict
    if (event.type === "answered") this.#result.show(event.inspection, state).catch(() => {})
    else if (state.outcome === "REFUSED") panel.refused(state, this.#refusal ?? { status: 0 })
    else panel.held(state, t(state.notice?.key ?? "screen.outbox.away"), this.#flaws.map((flaw) => t(flaw.key, flaw.values)))
    requestAnimationFrame(() => requestAnimationFrame(() => performance.mark("evenpair-verdict-painted")))
  }

  /** What Enter does now, on the button and below it. */
  #tell() {
    const { step } = this.#state, files = this.#way() === "files"
    this.#submit.disabled = step === "looking" || step === "sweeping"
    put(this.#submit, step === "repeated" ? t("screen.bench.enterChoose") : step === "mount" || measuresOn(this.#state) ? files ? t("screen.bench.send") : t("screen.bench.enterMeasure") : t("screen.bench.enterNext"))
    put(this.#hint, this.#hintText(files))
  }

  /** @param {boolean} files */
  #hintText(files) {
    const { step } = this.#state
    if (step === "sweeping") return t("screen.hint.sweeping")
    if (!this.#shift.isReady()) return t("screen.hint.shift")
    if (step === "repeated") return t("screen.hint.repeated")
    if (step === "mount" || measuresOn(this.#state)) return files ? this.#files.missing() ? t("screen.hint.files") : t("screen.hint.send") : t("screen.hint.measure")
    return t("screen.hint.serial")
  }

  #drawWay() {
    put(this.#captureRoom, this.#way() === "files" ? this.#files.element : this.#devices.element)
    this.#devices.use(this.#way() === "devices")
  }

  #settings() {
    showSettings(this.#station, this.#cues, { hasDevices: hasDevices(this.#station), changed: () => { this.#drawWay(); this.#drawCue(); this.#tell() } })
  }

  #toggleCue() {
    this.#cues.toggle()
    this.#drawCue()
    return true
  }

  #drawCue() {
    put(this.#mute, this.#cues.muted ? t("screen.bench.cueOff") : t("screen.bench.cueOn"))
    this.#mute.setAttribute("aria-pressed", String(this.#cues.muted))
  }
}

/** @param {KeyboardEvent} event */
function isLetter(event) {
  return event.key.length === 1 && event.key !== " " && event.key !== "?" && !event.ctrlKey && !event.metaKey && !event.altKey
}

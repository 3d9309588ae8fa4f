// Sound: choose a station's devices, watch the level, find out which earpiece is heard where, confirm the caution, try a whole sweep.
import { chooseStation } from "../bench/choose-station.js"
import { el, put } from "../dom.js"
import { db, localTime } from "../format.js"
import { takesText } from "../keys.js"
import { recall, remember } from "../memory.js"
import { go } from "../router.js"
import { shape } from "../shapes.js"
import { t } from "../texts.js"
import { confirmCaution, confirmedCaution } from "./caution.js"
import { ChooseDevices } from "./choose-devices.js"
import { keepChoice, listDevices, readChoice } from "./devices.js"
import { LevelMeter } from "./meter.js"
import { SoundProblem } from "./problem.js"
import { openRecorder } from "./recorder.js"
import { wiring } from "./tone.js"

/** @type {import("../screens.js").StartScreen} */
export function startSound(host, route) {
  if (!route.name) return chooseStation(host, "sound")
  return new SoundSetup(host, route.name)
}

class SoundSetup {
  #station
  #closed = false
  /** @type {import("./recorder.js").Recorder | null} */
  #recorder = null
  #devices = new ChooseDevices((choice) => this.#use(choice))
  #meter = new LevelMeter()
  #said = el("div", { class: "sound-said", role: "status" })
  #caution = el("section", { class: "sound-caution" })
  /** @type {HTMLButtonElement[]} */
  #buttons = []
  /** @type {AbortController | null} what is playing now */
  #playing = null

  /** @param {HTMLElement} host @param {string} station */
  constructor(host, station) {
    this.#station = station
    remember("station", station)
    put(host, el("section", { class: "sound-page" },
      el("header", {}, el("h1", {}, t("screen.sound.title", { station })), el("p", { class: "quiet" }, t("screen.sound.why"))),
      this.#caution,
      el("div", { class: "sound-columns" }, this.#devices.element,
        el("div", { class: "sound-check" }, el("h2", {}, t("screen.sound.meter.title")), this.#meter.element,
          el("h2", {}, t("screen.sound.test.title")), el("p", { class: "quiet" }, t("screen.sound.test.why")),
          el("div", { class: "sound-buttons" }, this.#button(t("screen.sound.test.left"), () => this.#tone("left")),
            this.#button(t("screen.sound.test.right"), () => this.#tone("right")), this.#button(t("screen.sound.test.sweep"), () => this.#sweep())),
          this.#said))))
    this.#drawCaution()
    this.#begin()
  }

  close() {
    this.#closed = true
    this.#playing?.abort()
    this.#recorder?.close()
  }

  /** @param {KeyboardEvent} event @returns {boolean} */
  key(event) {
    if (event.key !== "Escape" || takesText(event.target)) return false
    if (this.#playing) this.#playing.abort()
    else go("bench", this.#station)
    return true
  }

  async #begin() {
    try {
      this.#devices.offer(await listDevices(), readChoice(this.#station))
      if (this.#closed) return
      this.#focus()
      if (readChoice(this.#station)) await this.#open()
      else this.#tell("WAITING", [t("screen.sound.problem.notChosen", { station: this.#station })])
    } catch (failure) {
      this.#failed(failure)
    }
  }

  /** @param {import("./devices.js").Choice} choice */
  async #use(choice) {
    if (!choice.output || choice.inputs.some((input) => !input)) return
    if (choice.inputs.length === 2 && choice.inputs[0].id === choice.inputs[1].id) return this.#tell("PROBLEM", [t("screen.sound.problem.twice")])
    keepChoice(this.#station, choice)
    try {
      await this.#open()
    } catch (failure) {
      this.#failed(failure)
    }
  }

  async #open() {
    this.#enable(false)
    await this.#recorder?.close()
    this.#meter.clear()
    this.#recorder = null
    this.#tell("BUSY", [t("screen.sound.opening")])
    const recorder = await openRecorder(this.#station)
    if (this.#closed) return recorder.close()
    this.#recorder = recorder
    recorder.meter((levels) => this.#meter.show(levels))
    recorder.onLost((problem) => {
      this.#meter.clear()
      this.#enable(false)
      this.#failed(problem)
    })
    recorder.onBack(() => this.#ready())
    this.#ready()
  }

  #ready() {
    this.#enable(true)
    this.#tell("VALID", [t("screen.sound.ready", { rate: this.#recorder?.rateHz ?? 0 })])
  }

  /** @param {"left" | "right"} side */
  #tone(side) {
    return this.#play(async (recorder, signal) => {
      const heard = wiring(side, await recorder.tone(side, signal))
      const words = { own: t("screen.sound.test.own", { channel: side }), crossed: t("screen.sound.test.crossed", { channel: side }),
        both: t("screen.sound.test.both", { channel: side }), none: t("screen.sound.test.none", { channel: side }) }
      this.#tell(heard === "own" ? "VALID" : "PROBLEM", [words[heard]])
    })
  }

  #sweep() {
    return this.#play(async (recorder, signal) => {
      const capture = await recorder.sweep(null, { signal, onProgress: (what) => this.#tell("BUSY",
        [what === "quiet" ? t("screen.sound.test.quiet") : what === "sweep" ? t("screen.sound.test.loud") : t("screen.sound.test.checking")]) })
      const bad = capture.flaws.some((flaw) => flaw.again)
      this.#tell(bad ? "PROBLEM" : "VALID", [...capture.flaws.map((flaw) => t(flaw.key, flaw.values)), ...(bad ? [] : [t("screen.sound.test.good", {
        delay: (1000 * Math.max(capture.delaySeconds.left, capture.delaySeconds.right)).toFixed(0), left: leastOf(capture.signalToNoise.left), right: leastOf(capture.signalToNoise.right) })])])
    })
  }

  /** @param {(recorder: import("./recorder.js").Recorder, signal: AbortSignal) => Promise<void>} what */
  async #play(what) {
    const recorder = this.#recorder
    if (!recorder || this.#playing) return
    const playing = this.#playing = new AbortController()
    this.#tell("BUSY", [t("screen.sound.test.playing")])
    try {
      await what(recorder, playing.signal)
    } catch (failure) {
      if (playing.signal.aborted) this.#tell("WAITING", [t("screen.sound.test.stopped")])
      else this.#failed(failure)
    } finally {
      this.#playing = null
    }
  }

  /** What is to be done first. */
  #focus() {
    const who = /** @type {HTMLInputElement | null} */ (this.#caution.querySelector("input"))
    if (!who) return this.#devices.focus()
    who.focus()
    who.select()
  }

  #drawCaution() {
    const confirmed = confirmedCaution(this.#station)
    if (confirmed) {
      put(this.#caution, shape("VALID"), el("p", {}, t("screen.sound.caution.confirmed", { who: confirmed.who, when: localTime(confirmed.at) })))
      this.#caution.className = "sound-caution state-valid"
      return
    }
    const who = /** @type {HTMLInputElement} */ (el("input", { type: "text", id: "sound-who", autocomplete: "off", spellcheck: "false", value: recall("shift")?.operator ?? "" }))
    const confirm = (/** @type {Event} */ event) => {
      event.preventDefault()
      const name = who.value.trim().normalize("NFC")
      if (!name) return who.focus()
      confirmCaution(this.#station, name)
      this.#drawCaution()
      this.#focus()
    }
    this.#caution.className = "sound-caution due state-problem"
    put(this.#caution, shape("PROBLEM"), el("div", {}, el("h2", {}, t("screen.sound.caution.title")), el("p", {}, t("stimulus.caution")), el("p", { class: "more" }, t("screen.sound.caution.more"))),
      el("form", { on: { submit: confirm } }, el("div", { class: "labelled" }, el("label", { for: "sound-who" }, t("screen.bench.operator")), who),
        el("button", { type: "submit", class: "button" }, t("screen.sound.caution.confirm"))))
  }

  /** @param {string} words @param {() => void} act */
  #button(words, act) {
    const button = /** @type {HTMLButtonElement} */ (el("button", { type: "button", class: "button", disabled: true, on: { click: act } }, words))
    this.#buttons.push(button)
    return button
  }

  /** @param {boolean} on */
  #enable(on) {
    for (const button of this.#buttons) button.disabled = !on
  }

  /** @param {unknown} failure */
  #failed(failure) {
    if (this.#closed) return
    this.#tell("PROBLEM", [failure instanceof SoundProblem ? failure.words() : failure instanceof Error && failure.message ? failure.message : String(failure)])
  }

  /** @param {string} state @param {string[]} lines */
  #tell(state, lines) {
    this.#said.className = `sound-said state-${state.toLowerCase()}`
    this.#said.dataset.state = state
    put(this.#said, shape(state), el("div", {}, lines.map((line) => el("p", {}, line))))
  }
}

/** @param {import("./finder.js").BandNoise[]} bands */
function leastOf(bands) {
  return db(Math.min(...bands.map((band) => band.db)))
}

// Plays the service's stimulus and records both microphones: what the Bench, the Station's steps and the set-up page call.
//
//   import { hasChoice, openRecorder } from "../sound/recorder.js"
//
//   hasChoice("bench-1")                          whether this browser knows the station's sound devices; else send people to #/sound/bench-1
//   const recorder = await openRecorder("bench-1")        throws SoundProblem: failure.words() is the sentence
//   recorder.onLost((problem) => …)               a device went away; recorder.lost is the problem, null otherwise
//   recorder.onBack(() => …)                      it is there again, nothing to do
//   const { left, right, flaws } = await recorder.sweep(null, { signal, onProgress })
//       left, right: Blobs of type audio/wav (mono, 32-bit float), the sweep 350 ms after the start, 300 ms after its end
//       flaws: [{ key, values, side, again }]; t(key, values) is the sentence; `again`: the service would call it INVALID, measure again;
//              else only worth knowing
//       first: true asks for the quiet part before the sweep; it comes by itself after opening, after a change of devices, of stimulus or of
//              `outputCalibration` (any string that changes when the output is calibrated, such as its measuredAt)
//       signal: an AbortSignal; its abort stops the sound at once; the promise then rejects with an AbortError
//   const stop = recorder.meter(({ left, right }) => …)   { peakDb, rmsDb, holdDb } in dB re full scale, some twenty times a second
//   recorder.close()
//
// The caution about loud signals must have been confirmed in this shift (caution.js), else sweep() throws screen.sound.problem.caution.
import { Chain } from "./chain.js"
import { confirmedCaution } from "./caution.js"
import { cut } from "./cut.js"
import { devicesThere, keepChoice, listDevices, missing, present, readChoice } from "./devices.js"
import { SweepFinder } from "./finder.js"
import { Levels } from "./levels.js"
import { SoundProblem } from "./problem.js"
import { playQuietly } from "./quiet.js"
import { loadStimulus, stimulusAt } from "./stimulus.js"
import { encodeWav } from "./wav.js"

export { hasChoice } from "./devices.js"
export { OVERLOAD_DBFS } from "./quiet.js"

/**
 * @typedef {import("./checks.js").Flaw} Flaw
 * @typedef {import("./checks.js").Side} Side
 * @typedef {"quiet" | "sweep" | "checking"} Progress
 * @typedef {{ first?: boolean, outputCalibration?: string, signal?: AbortSignal, onProgress?: (what: Progress) => void }} SweepOptions
 * @typedef {{ left: Blob, right: Blob, flaws: Flaw[], rateHz: number, stimulus: string, startedAt: string, delaySeconds: { left: number, right: number }, signalToNoise: { left: import("./finder.js").BandNoise[], right: import("./finder.js").BandNoise[] } }} Capture
 */

/** Sample rates for which the service has a standard sweep. */
const RATES = [44100, 48000, 96000]
/** Recorded after the sweep's own tail, beyond the delay that is known. */
const SLACK_SECONDS = 0.05
/** A sweep with samples lost is played again so often, before it is handed out with its flaw. */
const REPEATS = 2
const RETRY_MS = 1500

/**
 * @param {string} station whose devices have been chosen
 * @returns {Promise<Recorder>}
 * @throws {SoundProblem} if none have been chosen, or they do not do what is needed
 */
export async function openRecorder(station) {
  const recorder = new Recorder(station)
  await recorder.reopen()
  return recorder
}

export class Recorder {
  /** @type {SoundProblem | null} why there is no sound now */
  lost = null
  #station
  /** @type {Chain | null} */
  #chain = null
  /** @type {SweepFinder | null} */
  #finder = null
  /** What the finder was made for. */
  #finderFor = ""
  /** Under which circumstances a full-level sweep was last played; anything else calls for the quiet part. */
  #provenFor = ""
  #delay = 0
  /** @type {import("./devices.js").Choice | null} what is open, with the ids of today */
  #choice = null
  #busy = false
  #closed = false
  /** @type {Set<(problem: SoundProblem) => void>} */
  #whenLost = new Set()
  /** @type {Set<() => void>} */
  #whenBack = new Set()
  /** @type {Set<(levels: { left: import("./levels.js").Level, right: import("./levels.js").Level }) => void>} */
  #whenLevel = new Set()
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #retry

  /** @param {string} station */
  constructor(station) {
    this.#station = station
    navigator.mediaDevices?.addEventListener("devicechange", this.#devicesChanged)
  }

  get rateHz() {
    return this.#chain?.rateHz ?? 0
  }

  /** The standard sweep of the devices' sample rate, by name. */
  get stimulus() {
    return stimulusAt(this.rateHz)
  }

  /** Opens the station's devices as they are chosen now; any that were open are closed. @throws {SoundProblem} */
  async reopen() {
    const choice = readChoice(this.#station)
    if (!choice) throw new SoundProblem("screen.sound.problem.notChosen", { station: this.#station })
    await this.#chain?.close()
    this.#chain = null
    const today = present(choice, await listDevices())
    const chain = await Chain.open(today, RATES)
    if (this.#closed) return chain.close()
    keepChoice(this.#station, today)
    this.#chain = chain
    this.#choice = today
    this.#provenFor = ""
    this.#delay = 0
    this.lost = null
    chain.onLost = (problem) => this.#lose(problem)
    const levels = new Levels(chain.rateHz)
    chain.meters.add((news) => {
      const { left, right } = levels.take(news)
      for (const tell of this.#whenLevel) tell(today.swapped ? { left: right, right: left } : { left, right })
    })
    chain.start().catch(() => {})   // without a key or a click yet; the first sweep starts it
  }

  /** @param {(problem: SoundProblem) => void} tell @returns {() => void} ends it */
  onLost(tell) {
    return added(this.#whenLost, tell)
  }

  /** @param {() => void} tell @returns {() => void} ends it */
  onBack(tell) {
    return added(this.#whenBack, tell)
  }

  /** @param {(levels: { left: import("./levels.js").Level, right: import("./levels.js").Level }) => void} tell @returns {() => void} ends it */
  meter(tell) {
    return added(this.#whenLevel, tell)
  }

  /**
   * @param {string | null} [name] of a stimulus; null for the standard sweep of the devices' sample rate
   * @param {SweepOptions} [options]
   * @returns {Promise<Capture>}
   * @throws {SoundProblem} with the sentence that says what to do
   */
  async sweep(name, options = {}) {
    if (!confirmedCaution(this.#station)) throw new SoundProblem("screen.sound.problem.caution")
    const chain = this.#open()
    this.#busy = true
    try {
      await this.#lookAround()
      const stimulus = await loadStimulus(name ?? this.stimulus)
      if (stimulus.sampleRateHz !== chain.rateHz) throw new SoundProblem("screen.sound.problem.stimulusRate", { name: stimulus.name, rate: stimulus.sampleRateHz, device: chain.rateHz })
      this.#prepare(stimulus)
      const circumstances = `${stimulus.sha256} ${options.outputCalibration ?? ""}`
      if (options.first || this.#provenFor !== circumstances) {
        const play = async (/** @type {number} */ gain, /** @type {number} */ extra) => {
          options.onProgress?.("quiet")
          return this.#sides(await chain.play(stimulus.signal, [gain, gain], extra, options.signal))
        }
        this.#delay = await playQuietly(play, /** @type {SweepFinder} */ (this.#finder), stimulus.sampleRateHz)
      }
      const capture = await this.#capture(chain, stimulus, options)
      await this.#lookAround()
      this.#provenFor = circumstances
      return capture
    } finally {
      this.#busy = false
    }
  }

  /**
   * A quiet tone on one side only; tells how much louder each microphone hears it than the silence before.
   * @param {Side} side @param {AbortSignal} [signal]
   * @returns {Promise<{ left: number, right: number }>} dB
   */
  async tone(side, signal) {
    const chain = this.#open()
    this.#busy = true
    try {
      const { tone, risesBy } = await import("./tone.js")
      const rate = chain.rateHz
      const heard = this.#sides(await chain.play(tone(rate), side === "left" ? [1, 0] : [0, 1], rate, signal))
      return { left: risesBy(heard.left, rate), right: risesBy(heard.right, rate) }
    } finally {
      this.#busy = false
    }
  }

  async close() {
    this.#closed = true
    clearTimeout(this.#retry)
    navigator.mediaDevices?.removeEventListener("devicechange", this.#devicesChanged)
    await this.#chain?.close()
    this.#chain = null
  }

  /** @returns {Chain} @throws {SoundProblem} */
  #open() {
    if (this.lost) throw this.lost
    if (!this.#chain) throw new SoundProblem("screen.sound.problem.stopped")
    if (this.#busy) throw new Error("a signal is being played")
    return this.#chain
  }

  /** @param {import("./stimulus.js").Stimulus} stimulus */
  #prepare(stimulus) {
    if (this.#finderFor === stimulus.sha256) return
    this.#finder = new SweepFinder(stimulus)
    this.#finderFor = stimulus.sha256
  }

  /** @param {Chain} chain @param {import("./stimulus.js").Stimulus} stimulus @param {SweepOptions} options @returns {Promise<Capture>} */
  async #capture(chain, stimulus, { signal, onProgress }) {
    for (let repeat = 0; ; repeat++) {
      onProgress?.("sweep")
      const startedAt = new Date().toISOString()
      const extra = (this.#delay ? this.#delay : chain.rateHz) + SLACK_SECONDS * chain.rateHz
      const recording = await chain.play(stimulus.signal, [1, 1], extra, signal)
      onProgress?.("checking")
      const made = cut(this.#sides(recording), recording.gaps, /** @type {SweepFinder} */ (this.#finder), stimulus)
      this.#delay = made.recordedBadly ? 0 : made.delay
      if (made.recordedBadly && repeat < REPEATS) continue
      const wav = (/** @type {Float32Array} */ samples) => new Blob([encodeWav(samples, chain.rateHz)], { type: "audio/wav" })
      return {
        left: wav(made.left.samples), right: wav(made.right.samples), flaws: made.flaws, rateHz: chain.rateHz, stimulus: stimulus.name, startedAt,
        delaySeconds: { left: made.left.delaySeconds, right: made.right.delaySeconds }, signalToNoise: { left: made.left.noise, right: made.right.noise },
      }
    }
  }

  /** @param {import("./chain.js").Recording} recording */
  #sides({ left, right }) {
    return this.#choice?.swapped ? { left: right, right: left } : { left, right }
  }

  /** @param {SoundProblem} problem */
  #lose(problem) {
    this.#chain = null
    this.lost = problem
    for (const tell of this.#whenLost) tell(problem)
    this.#tryAgain()
  }

  /** Not every browser tells that a device came back: ask now and then while one is missing. */
  #tryAgain() {
    clearTimeout(this.#retry)
    if (!this.#closed && this.lost) this.#retry = setTimeout(() => this.#recover(), RETRY_MS)
  }

  async #recover() {
    if (this.#closed || !this.lost) return
    const before = this.lost
    try {
      await this.reopen()
      for (const tell of this.#whenBack) tell()
    } catch {
      this.lost = before
      this.#tryAgain()
    }
  }

  #devicesChanged = () => {
    if (this.lost) this.#recover()
    else this.#lookAround().catch(() => {})   // the chain says it itself
  }

  /**
   * A system may move a recording to another microphone when one is pulled out, and tell nobody: see that the very devices are still there.
   * @throws {SoundProblem} if one is not
   */
  async #lookAround() {
    const chain = this.#chain, choice = this.#choice
    if (!chain || !choice) return
    const gone = missing(choice, await devicesThere())
    if (!gone) return
    const why = new SoundProblem("screen.sound.problem.lost", { device: gone.label })
    chain.lose(why)
    throw why
  }
}

/** @template T @param {Set<T>} set @param {T} member @returns {() => void} */
function added(set, member) {
  set.add(member)
  return () => set.delete(member)
}

// The chain of one station while it is open: context, inputs, and the worklet that plays and records in the same frames.
import { openInputs, stop } from "./devices.js"
import { SoundProblem } from "./problem.js"

/** Relative, so that it goes with wherever the screens are served. */
const WORKLET = new URL("./capture-worklet.js", import.meta.url)
/** A context that may not start by itself waits for a key or a click; so long we wait for it to run. */
const START_MS = 3000

/**
 * @typedef {{ frames: number, peak: [number, number], square: [number, number], absent: boolean }} MeterNews one step of the meter: the largest |sample| and the sum of squares a channel
 * @typedef {{ left: Float32Array, right: Float32Array, gaps: { at: number, frames: number }[] }} Recording from the frame on in which playing began
 */

export class Chain {
  /** @type {(why: SoundProblem) => void} told once when a device is lost */
  onLost = () => {}
  /** @type {Set<(news: MeterNews) => void>} */
  meters = new Set()
  #context
  #streams
  #node
  /** @type {MediaStreamAudioSourceNode[]} */
  #sources
  /** @type {Float32Array | null} what the worklet holds */
  #loaded = null
  /** @type {{ id: number, left: Float32Array[], right: Float32Array[], resolve: (recording: Recording) => void, reject: (why: any) => void } | null} */
  #run = null
  #runs = 0
  #ran = false
  #closed = false

  /**
   * @param {import("./devices.js").Choice} choice with the ids of today
   * @param {number[]} rates sample rates for which there is a stimulus
   * @returns {Promise<Chain>}
   * @throws {SoundProblem} if a device is missing or cannot do what is needed
   */
  static async open(choice, rates) {
    const streams = await openInputs(choice)
    /** @type {AudioContext | null} */
    let context = null
    try {
      context = await contextFor(choice)
      checkRates(context, streams, choice, rates)
      await context.audioWorklet.addModule(WORKLET)
      return new Chain(context, streams)
    } catch (failure) {
      streams.forEach(stop)
      await context?.close()
      throw failure
    }
  }

  /** @param {AudioContext} context @param {MediaStream[]} streams */
  constructor(context, streams) {
    this.#context = context
    this.#streams = streams
    this.#node = new AudioWorkletNode(context, "evenpair-capture", {
      numberOfInputs: 1, numberOfOutputs: 1, outputChannelCount: [2], channelCount: 2, channelCountMode: "explicit", channelInterpretation: "discrete" })
    this.#node.port.onmessage = ({ data }) => this.#heard(data)
    this.#node.onprocessorerror = () => this.#lose("screen.sound.problem.stopped")
    this.#node.connect(context.destination)
    this.#sources = streams.map((stream) => context.createMediaStreamSource(stream))
    if (streams.length === 1) this.#sources[0].connect(this.#node)
    else {
      const merger = context.createChannelMerger(2)
      this.#sources.forEach((source, channel) => source.connect(merger, 0, channel))
      merger.connect(this.#node)
    }
    this.#watch()
  }

  get rateHz() {
    return this.#context.sampleRate
  }

  /** Lets it run; needs a key or a click before. @throws {SoundProblem} if the browser does not let it */
  async start() {
    if (this.#context.state === "running") return
    await Promise.race([this.#context.resume(), new Promise((resolve) => setTimeout(resolve, START_MS))])
    if (/** @type {string} */ (this.#context.state) !== "running") throw new SoundProblem("screen.sound.problem.notStarted")
  }

  /**
   * Plays a signal on both sides and records until some time after its end.
   * @param {Float32Array} signal @param {[number, number]} gain left, right, linear @param {number} extra frames recorded after it
   * @param {AbortSignal} [abort] stops the sound at once, with a fade of 10 ms
   * @returns {Promise<Recording>}
   */
  async play(signal, gain, extra, abort) {
    abort?.throwIfAborted()
    await this.start()
    abort?.throwIfAborted()
    if (this.#run) throw new Error("a signal is being played")
    if (this.#loaded !== signal) this.#node.port.postMessage({ load: signal })
    this.#loaded = signal
    const id = ++this.#runs
    const stopNow = () => this.#node.port.postMessage({ abort: true })
    abort?.addEventListener("abort", stopNow)
    try {
      return await new Promise((resolve, reject) => {
        this.#run = { id, left: [], right: [], resolve, reject }
        this.#node.port.postMessage({ play: id, gain, extra: Math.round(extra) })
      })
    } catch (failure) {
      abort?.throwIfAborted()
      throw failure
    } finally {
      this.#run = null
      abort?.removeEventListener("abort", stopNow)
    }
  }

  async close() {
    if (this.#closed) return
    this.#closed = true
    this.#run?.reject(new SoundProblem("screen.sound.problem.stopped"))
    this.#node.port.onmessage = null
    this.#node.disconnect()
    this.#sources.forEach((source) => source.disconnect())
    this.#streams.forEach(stop)
    await this.#context.close()
  }

  /** @param {any} data */
  #heard(data) {
    if (data.meter) return this.meters.forEach((tell) => tell(data.meter))
    const run = this.#run
    if (!run || (data.block ?? data.done) !== run.id) return
    if (data.block !== undefined) {
      run.left.push(data.left)
      run.right.push(data.right)
    } else if (data.aborted) run.reject(new DOMException("stopped", "AbortError"))
    else run.resolve({ left: joined(run.left), right: joined(run.right), gaps: data.gaps })
  }

  #watch() {
    this.#streams.forEach((stream) => stream.getTracks().forEach((track) => {
      track.addEventListener("ended", () => this.#lose("screen.sound.problem.lost", { device: track.label }))
      track.addEventListener("mute", () => this.#lose("screen.sound.problem.lost", { device: track.label }))
    }))
    this.#context.addEventListener("statechange", () => {
      if (this.#context.state === "running") this.#ran = true
      else if (this.#ran) this.#lose("screen.sound.problem.stopped")
    })
    this.#context.addEventListener("error", () => this.#lose("screen.sound.problem.outputLost"))
  }

  /** @param {string} key @param {Record<string, any>} [values] */
  #lose(key, values) {
    this.lose(new SoundProblem(key, values))
  }

  /** Ends it, because a device is not what it was. @param {SoundProblem} why */
  lose(why) {
    if (this.#closed) return
    this.#run?.reject(why)
    this.close()
    this.onLost(why)
  }
}

/** Runs at the rate of the chosen output itself, so that nothing converts what is played. @param {import("./devices.js").Choice} choice */
async function contextFor(choice) {
  const options = /** @type {AudioContextOptions} */ ({ latencyHint: "playback", ...("setSinkId" in AudioContext.prototype && choice.output.id ? { sinkId: choice.output.id } : {}) })
  try {
    return new AudioContext(options)
  } catch (failure) {
    throw failure instanceof DOMException && failure.name === "NotFoundError" ? new SoundProblem("screen.sound.problem.missing", { device: choice.output.label }) : failure
  }
}

/**
 * @param {AudioContext} context @param {MediaStream[]} streams @param {import("./devices.js").Choice} choice @param {number[]} rates
 * @throws {SoundProblem} if anything would have to be converted, or there is no stimulus for the rate
 */
function checkRates(context, streams, choice, rates) {
  if (!rates.includes(context.sampleRate)) {
    throw new SoundProblem("screen.sound.problem.outputRate", { device: choice.output.label, rate: context.sampleRate, rates: rates.join(", ") })
  }
  streams.forEach((stream, i) => {
    const rate = stream.getAudioTracks()[0].getSettings().sampleRate
    if (rate !== undefined && rate !== context.sampleRate) {
      throw new SoundProblem("screen.sound.problem.inputRate", { device: choice.inputs[i].label, rate, wanted: context.sampleRate })
    }
  })
}

/** @param {Float32Array[]} blocks */
function joined(blocks) {
  const whole = new Float32Array(blocks.reduce((sum, block) => sum + block.length, 0))
  blocks.reduce((at, block) => {
    whole.set(block, at)
    return at + block.length
  }, 0)
  return whole
}

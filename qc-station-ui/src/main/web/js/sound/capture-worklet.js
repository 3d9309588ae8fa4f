// Runs in the audio thread: plays a signal sample by sample and hands back what the microphones gave in the same frames.
// Messages in:  { load: Float32Array }, { play: id, gain: [left, right], extra: frames } (records too), { abort: true }
// Messages out: { meter: {...} } some twenty times a second; { block: id, at, left, right, absent }; { done: id, gaps, aborted }

const BLOCK = 2048
const METER = 2400
/** An abort fades over this time, so that it does not click. */
const FADE_SECONDS = 0.01

/** @typedef {{ id: number, gain: [number, number], at: number, end: number, fade: number, gaps: { at: number, frames: number }[] }} Run what is being played; `fade` counts frames, below 0 without one */

class Capture extends AudioWorkletProcessor {
  #signal = new Float32Array(0)
  /** @type {Run | null} */
  #run = null
  #left = new Float32Array(BLOCK)
  #right = new Float32Array(BLOCK)
  #filled = 0
  #absent = false
  #expected = -1
  #meter = emptyMeter()

  constructor() {
    super()
    this.port.onmessage = ({ data }) => this.#told(data)
  }

  /** @param {Float32Array[][]} inputs @param {Float32Array[][]} outputs */
  process(inputs, outputs) {
    const [inLeft, inRight] = inputs[0], [outLeft, outRight] = outputs[0], frames = outLeft.length
    if (this.#expected >= 0 && currentFrame !== this.#expected) this.#gap(currentFrame - this.#expected)
    this.#expected = currentFrame + frames
    this.#measure(inLeft, inRight, frames)
    if (this.#run) this.#step(this.#run, inLeft, inRight, outLeft, outRight)
    return true
  }

  /** @param {any} data */
  #told(data) {
    if (data.load) this.#signal = data.load
    else if (data.play !== undefined) {
      this.#filled = 0
      this.#absent = false
      this.#run = { id: data.play, gain: data.gain, at: 0, end: this.#signal.length + data.extra, fade: -1, gaps: [] }
    } else if (data.abort && this.#run) this.#run.fade = 0
  }

  /** @param {number} frames */
  #gap(frames) {
    this.#run?.gaps.push({ at: this.#run.at, frames })
  }

  /**
   * @param {Run} run @param {Float32Array | undefined} inLeft @param {Float32Array | undefined} inRight
   * @param {Float32Array} outLeft @param {Float32Array} outRight
   */
  #step(run, inLeft, inRight, outLeft, outRight) {
    for (let i = 0; i < outLeft.length && this.#run; i++) {
      const faded = run.fade < 0 ? 1 : Math.max(0, 1 - run.fade++ / (FADE_SECONDS * sampleRate))
      const sample = (run.at < this.#signal.length ? this.#signal[run.at] : 0) * faded
      outLeft[i] = sample * run.gain[0]
      outRight[i] = sample * run.gain[1]
      this.#left[this.#filled] = inLeft ? inLeft[i] : 0
      this.#right[this.#filled] = inRight ? inRight[i] : 0
      this.#absent ||= !inLeft
      this.#filled++
      run.at++
      if (faded === 0 || run.at >= run.end) this.#finish(run, faded === 0)
      else if (this.#filled === BLOCK) this.#hand(run)
    }
  }

  /** @param {Run} run */
  #hand(run) {
    if (this.#filled === 0) return
    const left = this.#left.slice(0, this.#filled), right = this.#right.slice(0, this.#filled)
    this.port.postMessage({ block: run.id, at: run.at - this.#filled, left, right, absent: this.#absent }, [left.buffer, right.buffer])
    this.#filled = 0
  }

  /** @param {Run} run @param {boolean} aborted */
  #finish(run, aborted) {
    this.#hand(run)
    this.port.postMessage({ done: run.id, gaps: run.gaps, aborted })
    this.#run = null
  }

  /** @param {Float32Array | undefined} left @param {Float32Array | undefined} right @param {number} frames */
  #measure(left, right, frames) {
    const meter = this.#meter
    for (let i = 0; i < frames; i++) {
      const l = left ? left[i] : 0, r = right ? right[i] : 0
      meter.peak[0] = Math.max(meter.peak[0], Math.abs(l))
      meter.peak[1] = Math.max(meter.peak[1], Math.abs(r))
      meter.square[0] += l * l
      meter.square[1] += r * r
    }
    meter.frames += frames
    meter.absent ||= !left
    if (meter.frames < METER) return
    this.port.postMessage({ meter })
    this.#meter = emptyMeter()
  }
}

function emptyMeter() {
  return { frames: 0, peak: [0, 0], square: [0, 0], absent: false }
}

registerProcessor("evenpair-capture", Capture)

// Finds the sweep in a recording by deconvolution: when it arrives at each microphone, and how far it stands out of the noise. Pure.
import { Fft } from "./fft.js"

/**
 * @typedef {{ sampleRateHz: number, leadSeconds: number, seconds: number, fadeSeconds: number, fromHz: number, toHz: number, signal: Float32Array }} Played
 * @typedef {{ hz: number, db: number }} BandNoise an octave and the response's signal-to-noise there
 * @typedef {object} Found
 * @property {boolean} found whether the sweep is there
 * @property {number} delay samples between playing and hearing
 * @property {number} arrival index in the recording at which the sweep's first sample is heard
 * @property {number} crestDb peak of the impulse response over the root mean square of what lies away from it
 * @property {BandNoise[]} noise empty if the sweep was not found
 */

/** Where the inverse filter passes: what every earphone plays and every microphone hears. Half-cosine edges, a third of an octave wide. */
const PASS_HZ = [100, 16000]
/** The peak must stand so far above the rest. Noise alone stays below 5.5 deviations in 131072 samples (15 dB); a click or another stimulus is spread out. */
const LEAST_CREST_DB = 20
/** What belongs to the peak, on either side of it. */
const PEAK_SECONDS = 0.025
/** The response's window, as long as the service's to some milliseconds. */
const BEFORE_SECONDS = 0.005
const AFTER_SECONDS = 0.2
const NOISE_SECONDS = 0.3
/** Rounding of 24-bit samples, q²/12 with q = 2^−23: no recording is quieter, and the ratio to digital zeros would be no number. */
const LEAST_DENSITY = 2 ** -46 / 12
const OCTAVES = [125, 250, 500, 1000, 2000, 4000, 8000]

export class SweepFinder {
  #played
  #fft
  #small
  /** Inverse filter G, one complex number a bin. */
  #gain

  /** @param {Played} played the signal as it is played, silences included */
  constructor(played) {
    this.#played = played
    this.#fft = new Fft(powerOfTwo(played.signal.length + 0.6 * played.sampleRateHz))
    this.#small = new Fft(powerOfTwo((NOISE_SECONDS + 0.02) * played.sampleRateHz))
    this.#gain = this.#inverse()
  }

  /** The latest that a sweep may be heard after it is played, in samples; beyond, the transform would wrap. */
  get largestDelay() {
    return this.#fft.length - this.#played.signal.length
  }

  /**
   * Both channels at once: one complex transform carries both.
   * @param {Float32Array} left @param {Float32Array} right recorded from the frame on in which playing began
   * @returns {{ left: Found, right: Found }}
   */
  find(left, right) {
    const re = filled(left, this.#fft.length), im = filled(right, this.#fft.length)
    this.#fft.forward(re, im)
    multiply(re, im, this.#gain)
    this.#fft.inverse(re, im)
    const found = { left: this.#peakOf(re), right: this.#peakOf(im) }
    if (found.left.found) found.left.noise = this.#noise(re, left, found.left)
    if (found.right.found) found.right.noise = this.#noise(im, right, found.right)
    return found
  }

  #inverse() {
    const { signal, sampleRateHz } = this.#played, length = this.#fft.length
    const re = filled(signal, length), im = new Float64Array(length)
    this.#fft.forward(re, im)
    for (let k = 0; k < length; k++) {
      const hz = (Math.min(k, length - k) * sampleRateHz) / length
      const power = re[k] * re[k] + im[k] * im[k], pass = power > 0 ? band(hz) / power : 0
      re[k] *= pass
      im[k] *= -pass
    }
    return { re, im }
  }

  /** @param {Float64Array} impulse @returns {Found} */
  #peakOf(impulse) {
    const { sampleRateHz, leadSeconds } = this.#played
    let delay = 0
    for (let n = 1; n < this.largestDelay; n++) if (Math.abs(impulse[n]) > Math.abs(impulse[delay])) delay = n
    const beside = Math.round(PEAK_SECONDS * sampleRateHz)
    let energy = 0, count = 0
    for (let n = 0; n < impulse.length; n++) {
      if (Math.abs(n - delay) <= beside) continue
      energy += impulse[n] * impulse[n]
      count++
    }
    const peak = Math.abs(impulse[delay])
    const crestDb = peak > 0 ? 10 * Math.log10((peak * peak) / (energy / count + Number.MIN_VALUE)) : 0
    return { found: crestDb >= LEAST_CREST_DB, delay, arrival: delay + Math.round(leadSeconds * sampleRateHz), crestDb, noise: [] }
  }

  /**
   * Per octave: mean |H|² over what the lead-in's noise becomes behind the same inverse filter and window.
   * @param {Float64Array} impulse @param {Float32Array} samples @param {Found} found @returns {BandNoise[]}
   */
  #noise(impulse, samples, found) {
    const { sampleRateHz } = this.#played, length = this.#small.length
    const before = Math.round(BEFORE_SECONDS * sampleRateHz), after = Math.round(AFTER_SECONDS * sampleRateHz)
    const response = new Float64Array(length), noise = new Float64Array(length)
    let windowEnergy = 0
    for (let n = 0; n < before + after; n++) {
      const weight = n < before ? rise(n / before) : rise((before + after - n) / after)
      response[n] = weight * impulse[(found.delay - before + n + impulse.length) % impulse.length]
      windowEnergy += weight * weight
    }
    const count = Math.min(Math.round(NOISE_SECONDS * sampleRateHz), found.arrival - before)
    let hannEnergy = 0
    for (let n = 0; n < count; n++) {
      const weight = 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / count)
      noise[n] = weight * samples[found.arrival - before - count + n]
      hannEnergy += weight * weight
    }
    this.#small.forward(response, noise)
    return OCTAVES.filter((hz) => hz * Math.SQRT2 < sampleRateHz / 2).map((hz) => this.#bandNoise(hz, response, noise, windowEnergy, hannEnergy))
  }

  /** @param {number} hz centre @param {Float64Array} re @param {Float64Array} im two real signals' spectra in one @param {number} windowEnergy @param {number} hannEnergy @returns {BandNoise} */
  #bandNoise(hz, re, im, windowEnergy, hannEnergy) {
    const length = this.#small.length, step = this.#fft.length / length, width = this.#played.sampleRateHz / length
    let signal = 0, noise = 0
    for (let k = Math.ceil(hz / Math.SQRT2 / width); k <= (hz * Math.SQRT2) / width; k++) {
      const other = length - k, gain = this.#gain.re[k * step] ** 2 + this.#gain.im[k * step] ** 2
      signal += ((re[k] + re[other]) ** 2 + (im[k] - im[other]) ** 2) / 4
      noise += Math.max(LEAST_DENSITY, ((im[k] + im[other]) ** 2 + (re[other] - re[k]) ** 2) / 4 / hannEnergy) * gain * windowEnergy
    }
    return { hz, db: 10 * Math.log10(signal / noise) }
  }
}

/** @param {number} least @returns {number} the power of two that is not less */
function powerOfTwo(least) {
  return 2 ** Math.ceil(Math.log2(least))
}

/** Half-cosine from 0 to 1. @param {number} x */
function rise(x) {
  return 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, Math.max(0, x)))
}

/** @param {number} hz */
function band(hz) {
  if (hz <= 0) return 0
  return rise(1 + 3 * Math.log2(hz / PASS_HZ[0])) * rise(1 - 3 * Math.log2(hz / PASS_HZ[1]))
}

/** @param {Float32Array} samples @param {number} length @returns {Float64Array} cut, or filled up with zeros */
function filled(samples, length) {
  const whole = new Float64Array(length)
  whole.set(samples.length > length ? samples.subarray(0, length) : samples)
  return whole
}

/** @param {Float64Array} re @param {Float64Array} im @param {{ re: Float64Array, im: Float64Array }} by */
function multiply(re, im, by) {
  for (let k = 0; k < re.length; k++) {
    const a = re[k], b = im[k]
    re[k] = a * by.re[k] - b * by.im[k]
    im[k] = a * by.im[k] + b * by.re[k]
  }
}

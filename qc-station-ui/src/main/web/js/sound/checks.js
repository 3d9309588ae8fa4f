// Looks at a recording as the service will: clipped, silent, no sweep, gaps, noise. Needs no service, so it works while that is away. Pure.

/**
 * @typedef {"left" | "right"} Side
 * @typedef {object} Flaw
 * @property {string} key of its sentence
 * @property {Record<string, any>} values its placeholders
 * @property {Side | null} side null for both
 * @property {boolean} again true: the service would call it INVALID, measure again; false: worth knowing, it may still be judged
 */

/** As many neighbouring samples at full scale are clipping. */
const CLIPPED_RUN = 3
/** Full scale of 16 bit on: the largest positive sample is 0.99997. */
const FULL_SCALE = 0.99995
/** Below this (−120 dB re full scale) there is no signal at all. */
const LEAST_PEAK = 1e-6
/** The default of limit sets; at 20 dB the level would scatter by 0.4 dB. */
export const LEAST_SIGNAL_TO_NOISE_DB = 30
/** What the service needs: before the sweep, at the most before it, and after it. */
export const LEAD_SECONDS = 0.25
const LATEST_SECONDS = 1
export const AFTER_SECONDS = 0.25

/**
 * @param {Side} side @param {Float32Array} samples one channel's capture @param {import("./finder.js").Found} found in this capture
 * @param {import("./finder.js").Played} played
 * @returns {Flaw[]} the first that would make it INVALID, or what is only worth knowing
 */
export function flawsOf(side, samples, found, played) {
  const peak = peakOf(samples), rate = played.sampleRateHz
  const flaw = (/** @type {string} */ key, /** @type {Record<string, any>} */ values = {}) => [{ key, values: { channel: side, ...values }, side, again: true }]
  if (!(peak >= LEAST_PEAK)) return flaw("screen.sound.flaw.silent")
  const clipped = firstClipped(samples)
  if (clipped) return flaw("screen.sound.flaw.clipped", { at: seconds(clipped.at / rate), run: clipped.run })
  if (!found.found) return flaw("screen.sound.flaw.noSweep")
  if (found.arrival < LEAD_SECONDS * rate - 1) return flaw("screen.sound.flaw.tooSoon")
  if (found.arrival > LATEST_SECONDS * rate) return flaw("screen.sound.flaw.tooLate")
  if (samples.length - found.arrival - played.seconds * rate < AFTER_SECONDS * rate - 1) return flaw("screen.sound.flaw.endMissing")
  const gap = firstGap(samples, found.arrival, played, peak)
  if (gap !== null) return flaw("screen.sound.flaw.dropOut", { at: seconds(gap / rate) })
  const noisy = noisiest(found.noise)
  return noisy && noisy.db < LEAST_SIGNAL_TO_NOISE_DB
    ? [{ key: "screen.sound.flaw.noise", values: { channel: side, frequency: noisy.hz, measured: noisy.db, limit: LEAST_SIGNAL_TO_NOISE_DB }, side, again: false }] : []
}

/** @param {Float32Array} samples @returns {number} the largest |sample| */
export function peakOf(samples) {
  let peak = 0
  for (let n = 0; n < samples.length; n++) peak = Math.max(peak, Math.abs(samples[n]))
  return peak
}

/** @param {Float32Array} samples @returns {{ at: number, run: number } | null} the first run of full-scale samples that is clipping */
export function firstClipped(samples) {
  let run = 0
  for (let n = 0; n <= samples.length; n++) {
    if (n < samples.length && Math.abs(samples[n]) >= FULL_SCALE) run++
    else if (run >= CLIPPED_RUN) return { at: n - run, run }
    else run = 0
  }
  return null
}

/** The octave that is worst off. @param {import("./finder.js").BandNoise[]} noise @returns {import("./finder.js").BandNoise | null} */
function noisiest(noise) {
  return noise.reduce((/** @type {import("./finder.js").BandNoise | null} */ worst, band) => (worst && worst.db <= band.db ? worst : band), null)
}

/** Numbers of the service's own search for gaps; common practice. */
const BLOCK_SECONDS = 0.02
const JUMP_OF_AMPLITUDE = 0.25
const JUMP_OF_MEAN_REST = 10
const JUMP_OF_PEAK = 0.01
const LEAST_RUN_SECONDS = 0.001
const ALIVE_OF_PEAK = 0.01
const BESIDE_SECONDS = 0.005

/**
 * Samples lost, repeated or replaced while the sweep plays. A sine of angular frequency ω obeys x[n] = 2·cos ω·x[n−1] − x[n−2]; a jump stands out of
 * what is left of that. A gap between zero crossings makes no jump: runs of equal samples are looked for as well.
 * @param {Float32Array} samples @param {number} arrival @param {import("./finder.js").Played} played @param {number} peak
 * @returns {number | null} index of the first
 */
export function firstGap(samples, arrival, played, peak) {
  const rate = played.sampleRateHz, block = Math.round(BLOCK_SECONDS * rate)
  const from = Math.max(2, Math.round(played.fadeSeconds * rate)), to = Math.round((played.seconds - played.fadeSeconds) * rate)
  const growth = played.seconds / Math.log(played.toHz / played.fromHz)
  const hzAt = (/** @type {number} */ n) => played.fromHz * Math.exp(n / rate / growth)
  for (let start = from; start < to; start += block) {
    const jump = firstJump(samples, arrival, start, Math.min(to, start + block), hzAt, rate, peak)
    if (jump !== null) return jump
  }
  return firstRun(samples, arrival, from, to, hzAt, rate, peak)
}

/**
 * @param {Float32Array} samples @param {number} arrival @param {number} start @param {number} end @param {(n: number) => number} hzAt @param {number} rate @param {number} peak
 * @returns {number | null}
 */
function firstJump(samples, arrival, start, end, hzAt, rate, peak) {
  let sumOfRest = 0, sum = 0, worst = 0, at = 0
  for (let n = start; n < end; n++) {
    const i = arrival + n, rest = Math.abs(samples[i] - 2 * Math.cos((2 * Math.PI * hzAt(n)) / rate) * samples[i - 1] + samples[i - 2])
    sumOfRest += rest
    sum += Math.abs(samples[i])
    if (rest > worst) {
      worst = rest
      at = i
    }
  }
  const amplitude = ((Math.PI / 2) * sum) / (end - start)
  return worst > Math.max((JUMP_OF_MEAN_REST * sumOfRest) / (end - start), JUMP_OF_PEAK * peak, JUMP_OF_AMPLITUDE * amplitude) ? at : null
}

/**
 * @param {Float32Array} samples @param {number} arrival @param {number} from @param {number} to @param {(n: number) => number} hzAt @param {number} rate @param {number} peak
 * @returns {number | null}
 */
function firstRun(samples, arrival, from, to, hzAt, rate, peak) {
  const beside = Math.round(BESIDE_SECONDS * rate)
  const alive = (/** @type {number} */ begin, /** @type {number} */ end) => peakOf(samples.subarray(Math.max(0, begin), end)) >= ALIVE_OF_PEAK * peak
  for (let n = from, run = 1; n < to; n++) {
    const i = arrival + n
    if (samples[i] === samples[i - 1]) {
      run++
      continue
    }
    const allowed = Math.ceil(Math.max(LEAST_RUN_SECONDS, 0.5 / hzAt(Math.max(0, n - run))) * rate)
    if (run > allowed && alive(i - run - beside, i - run) && alive(i, i + beside)) return i - run
    run = 1
  }
  return null
}

/** @param {number} value */
function seconds(value) {
  return value.toFixed(2)
}

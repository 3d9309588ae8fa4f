// A quiet tone that shows which microphone hears which earpiece. Pure.

/** Quiet: a sixtieth of the sweep's own peak would still be heard by a coupler's microphone in a workshop. */
const PEAK = 10 ** (-40 / 20)
const HZ = 500
const LEAD_SECONDS = 0.3
const TONE_SECONDS = 0.7
/** It swells over this time. */
const SWELL_SECONDS = 0.2
/** Length of the spans that are compared: a whole number of the tone's periods. */
const SPAN_SECONDS = 0.2

/** @param {number} rateHz @returns {Float32Array} silence, then a tone that swells and fades */
export function tone(rateHz) {
  const lead = Math.round(LEAD_SECONDS * rateHz), count = Math.round(TONE_SECONDS * rateHz), swell = SWELL_SECONDS * rateHz
  const samples = new Float32Array(lead + count)
  for (let n = 0; n < count; n++) {
    const weight = Math.min(1, n / swell, (count - n) / swell)
    samples[lead + n] = PEAK * weight * weight * Math.sin((2 * Math.PI * HZ * n) / rateHz)
  }
  return samples
}

/**
 * By how much the tone rises above what was there at its frequency before it.
 * @param {Float32Array} samples recorded from the frame on in which playing began @param {number} rateHz @returns {number} dB, 0 or more
 */
export function risesBy(samples, rateHz) {
  const span = Math.round(SPAN_SECONDS * rateHz)
  const before = amplitudeAt(samples.subarray(0, span), rateHz)
  let loudest = 0
  for (let at = 0; at + span <= samples.length; at += span >> 1) loudest = Math.max(loudest, amplitudeAt(samples.subarray(at, at + span), rateHz))
  return loudest > 0 ? 20 * Math.log10(loudest / Math.max(before, 1e-7)) : 0
}

/** Of the tone's frequency, from one bin of a Fourier sum under a Hann window. @param {Float32Array} samples @param {number} rateHz */
function amplitudeAt(samples, rateHz) {
  let re = 0, im = 0
  for (let n = 0; n < samples.length; n++) {
    const weight = (0.5 - 0.5 * Math.cos((2 * Math.PI * n) / samples.length)) * samples[n], angle = (2 * Math.PI * HZ * n) / rateHz
    re += weight * Math.cos(angle)
    im += weight * Math.sin(angle)
  }
  return (4 * Math.hypot(re, im)) / samples.length
}

/** So much above the silence counts as heard. */
const HEARD_DB = 10
/** What leaks through the air or a bridge lies so far below. */
const APART_DB = 20

/**
 * What it means for the wiring when one side played.
 * @param {"left" | "right"} side that played @param {{ left: number, right: number }} rises dB
 * @returns {"own" | "crossed" | "both" | "none"} heard by its own microphone alone, by the other's, by both, by none
 */
export function wiring(side, rises) {
  const own = rises[side], other = rises[side === "left" ? "right" : "left"]
  if (Math.max(own, other) < HEARD_DB) return "none"
  return own - other >= APART_DB ? "own" : other - own >= APART_DB ? "crossed" : "both"
}

// From one long recording to what is sent: each side cut to its own sweep, and what is wrong with it. Pure.
import { flawsOf } from "./checks.js"

/**
 * @typedef {import("./checks.js").Side} Side
 * @typedef {{ samples: Float32Array, delaySeconds: number, noise: import("./finder.js").BandNoise[] }} CutSide
 * @typedef {{ left: CutSide, right: CutSide, flaws: import("./checks.js").Flaw[], delay: number, recordedBadly: boolean }} Cut
 *     `delay`: samples until the later side hears what is played, 0 if neither did; `recordedBadly`: playing it again may mend it
 */

/** The capture begins so long before the sweep is heard, and ends so long after it. */
const LEAD_SECONDS = 0.35
const TAIL_SECONDS = 0.3
/** Flaws of the recording itself, not of what is measured. */
const RECORDED_BADLY = ["screen.sound.flaw.frames", "screen.sound.flaw.dropOut", "screen.sound.flaw.endMissing"]

/**
 * Each side begins 350 ms before its own sweep, so that neither the delay of the devices nor a difference between two devices matters.
 * A side that did not hear the sweep is cut where the other one is.
 * @param {{ left: Float32Array, right: Float32Array }} heard from the frame on in which playing began
 * @param {{ frames: number }[]} gaps of the audio thread @param {import("./finder.js").SweepFinder} finder @param {import("./finder.js").Played} played
 * @returns {Cut}
 */
export function cut(heard, gaps, finder, played) {
  const rate = played.sampleRateHz, found = finder.find(heard.left, heard.right)
  const known = found.left.found ? found.left : found.right
  /** @type {import("./checks.js").Flaw[]} */
  const flaws = gaps.length ? [{ key: "screen.sound.flaw.frames", values: { frames: gaps.reduce((sum, gap) => sum + gap.frames, 0) }, side: null, again: true }] : []
  const side = (/** @type {Side} */ name) => {
    const own = found[name].found ? found[name] : { ...found[name], arrival: known.arrival, delay: known.delay }
    const from = Math.max(0, own.arrival - Math.round(LEAD_SECONDS * rate))
    const samples = heard[name].subarray(from, own.arrival + Math.round((played.seconds + TAIL_SECONDS) * rate))
    flaws.push(...flawsOf(name, samples, { ...own, arrival: own.arrival - from }, played))
    return { samples, delaySeconds: own.delay / rate, noise: own.noise }
  }
  const left = side("left"), right = side("right")
  const delay = Math.max(0, ...[found.left, found.right].filter((one) => one.found).map((one) => one.delay))
  return { left, right, flaws, delay, recordedBadly: flaws.some((flaw) => RECORDED_BADLY.includes(flaw.key)) }
}

// The browser's own look at captures that came as files, for the time that nobody else can judge them.
import { flawsOf } from "../sound/checks.js"
import { SweepFinder } from "../sound/finder.js"
import { loadStimulus, stimulusAt } from "../sound/stimulus.js"
import { readWav } from "./wav-file.js"

/** @typedef {import("../sound/checks.js").Flaw} Flaw */

/** Of the service's default stimulus. */
const USUAL_RATE_HZ = 48000

/**
 * @param {import("../outbox/store.js").Part[]} parts
 * @returns {Promise<Flaw[]>} empty as well where nothing can be said: curves, other formats, a signal that was never loaded
 */
export async function flawsOfParts(parts) {
  const pair = pairOf(parts)
  if (!pair) return []
  const stimulus = await loadStimulus(stimulusAt(pair.rateHz)).catch(() => null)
  if (!stimulus) return []
  const found = new SweepFinder(stimulus).find(pair.left, pair.right)
  return [...flawsOf("left", pair.left, found.left, stimulus), ...flawsOf("right", pair.right, found.right, stimulus)]
}

/** @param {import("../outbox/store.js").Part[]} parts @returns {{ rateHz: number, left: Float32Array, right: Float32Array } | null} */
function pairOf(parts) {
  const of = (/** @type {string} */ name) => {
    const part = parts.find((each) => each.name === name)
    return part ? readWav(part.bytes) : null
  }
  const both = of("both"), left = of("left"), right = of("right")
  if (both?.channels.length === 2) return { rateHz: both.rateHz, left: both.channels[0], right: both.channels[1] }
  return left && right && left.rateHz === right.rateHz ? { rateHz: left.rateHz, left: left.channels[0], right: right.channels[0] } : null
}

/** Loads what the checks need while the service is there. */
export function prepareChecks() {
  loadStimulus(stimulusAt(USUAL_RATE_HZ)).catch(() => {})
}

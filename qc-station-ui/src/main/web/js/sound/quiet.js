// The quiet part before the first sweep at full level after a change. Usual caution, no certified protection.
import { peakOf } from "./checks.js"
import { SoundProblem } from "./problem.js"

/** @typedef {{ left: Float32Array, right: Float32Array }} Heard */

/** So much less than the sweep, and once more if that is not heard. */
const STEPS_DB = [-30, -15]
/** A level above this is called overload: clipping is near. */
export const OVERLOAD_DBFS = -1

/**
 * Plays the sweep at 30 dB less, then, if nobody heard it, at 15 dB less.
 * @param {(gain: number, extra: number) => Promise<Heard>} play with a linear gain, and so many frames recorded after it
 * @param {import("./finder.js").SweepFinder} finder @param {number} rateHz
 * @returns {Promise<number>} samples until the later side hears what is played
 * @throws {SoundProblem} if the full sweep would overload a microphone, nothing is heard, or both microphones are one
 */
export async function playQuietly(play, finder, rateHz) {
  for (const db of STEPS_DB) {
    const gain = 10 ** (db / 20), heard = await play(gain, Math.min(rateHz, finder.largestDelay))
    refuseTwin(heard)
    refuseOverload(heard, 1 / gain)
    const found = finder.find(heard.left, heard.right), delays = [found.left, found.right].filter((one) => one.found).map((one) => one.delay)
    if (delays.length) return Math.max(...delays)
  }
  throw new SoundProblem("screen.sound.problem.notHeard")
}

/** Two microphones never hear the same to the last bit: then it is one channel, shown twice. @param {Heard} heard */
function refuseTwin({ left, right }) {
  if (peakOf(left) > 0 && left.every((sample, n) => sample === right[n])) throw new SoundProblem("screen.sound.problem.twin")
}

/** @param {Heard} heard at a reduced level @param {number} rise by which the full level is higher */
function refuseOverload(heard, rise) {
  const limit = 10 ** (OVERLOAD_DBFS / 20)
  for (const side of /** @type {const} */ (["left", "right"])) {
    const peak = peakOf(heard[side])
    if (peak * rise > limit) throw new SoundProblem("screen.sound.problem.overload", { channel: side, expected: 20 * Math.log10(peak * rise) })
  }
}

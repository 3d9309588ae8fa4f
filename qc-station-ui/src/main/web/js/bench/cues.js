// A quiet sound for each verdict, told apart by rhythm and not by pitch alone; can be muted.
import { recall, remember } from "../memory.js"

/**
 * @typedef {{ at: number, lasts: number, hz: number }} Beep seconds, seconds, hertz
 * Rhythms: PASS short short; FAIL one long; RESEAT three short with equal gaps; INVALID long short long; held one short; refused two long.
 */

/** @type {Record<string, Beep[]>} */
export const CUES = {
  PASS: [{ at: 0, lasts: 0.07, hz: 660 }, { at: 0.12, lasts: 0.07, hz: 880 }],
  FAIL: [{ at: 0, lasts: 0.5, hz: 294 }],
  RESEAT: [{ at: 0, lasts: 0.07, hz: 523 }, { at: 0.2, lasts: 0.07, hz: 523 }, { at: 0.4, lasts: 0.07, hz: 523 }],
  INVALID: [{ at: 0, lasts: 0.25, hz: 392 }, { at: 0.35, lasts: 0.07, hz: 392 }, { at: 0.52, lasts: 0.25, hz: 392 }],
  FLAWED: [{ at: 0, lasts: 0.25, hz: 392 }, { at: 0.35, lasts: 0.07, hz: 392 }, { at: 0.52, lasts: 0.25, hz: 392 }],
  HELD: [{ at: 0, lasts: 0.1, hz: 440 }],
  REFUSED: [{ at: 0, lasts: 0.25, hz: 330 }, { at: 0.4, lasts: 0.25, hz: 330 }],
}

/** Full scale is 1; quiet beside a line, and never in an earpiece: it plays on the system's own output. */
const GAIN = 0.08
const RAMP_SECONDS = 0.01
const MUTED = "cuesMuted"

export class Cues {
  /** @type {AudioContext | null} */
  #context = null

  /** @returns {boolean} */
  get muted() {
    return recall(MUTED) === true
  }

  /** @returns {boolean} whether it is muted now */
  toggle() {
    remember(MUTED, !this.muted)
    return this.muted
  }

  /** @param {string | null} outcome */
  play(outcome) {
    const beeps = outcome === null ? undefined : CUES[outcome]
    if (!beeps || this.muted || !("AudioContext" in self)) return
    this.#context ??= new AudioContext()
    const context = this.#context
    if (context.state === "suspended") context.resume().catch(() => {})   // allowed once somebody has pressed a key
    for (const beep of beeps) sound(context, beep)
    document.dispatchEvent(new CustomEvent("evenpair-cue", { detail: outcome }))
  }

  close() {
    this.#context?.close().catch(() => {})
    this.#context = null
  }
}

/** @param {AudioContext} context @param {Beep} beep */
function sound(context, { at, lasts, hz }) {
  const from = context.currentTime + 0.02 + at, oscillator = context.createOscillator(), gain = context.createGain()
  oscillator.frequency.value = hz
  gain.gain.setValueAtTime(0, from)
  gain.gain.linearRampToValueAtTime(GAIN, from + RAMP_SECONDS)
  gain.gain.setValueAtTime(GAIN, from + lasts)
  gain.gain.linearRampToValueAtTime(0, from + lasts + RAMP_SECONDS)
  oscillator.connect(gain).connect(context.destination)
  oscillator.start(from)
  oscillator.stop(from + lasts + 2 * RAMP_SECONDS)
}

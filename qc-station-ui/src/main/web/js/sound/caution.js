// The caution about loud test signals, to be confirmed once a shift. Usual practice, no certified protection.
import { recall, remember } from "../memory.js"

/** How long a confirmation holds. */
export const SHIFT_MS = 12 * 3600 * 1000

/** @typedef {{ who: string, at: string }} Confirmation `at`: ISO 8601 */

/** @param {string} station @param {number} [now] ms since 1970 @returns {Confirmation | null} null if nobody has confirmed it in this shift */
export function confirmedCaution(station, now = Date.now()) {
  const kept = /** @type {Confirmation | null} */ (recall(`sound.caution.${station}`))
  return kept && stands(kept, now) ? kept : null
}

/** A confirmation out of the future is none: the clock has been set back. @param {Confirmation} confirmation @param {number} now */
export function stands(confirmation, now) {
  const age = now - Date.parse(confirmation.at)
  return age >= 0 && age < SHIFT_MS
}

/** @param {string} station @param {string} who @param {number} [now] @returns {Confirmation} */
export function confirmCaution(station, who, now = Date.now()) {
  const confirmation = { who, at: new Date(now).toISOString() }
  remember(`sound.caution.${station}`, confirmation)
  return confirmation
}

// What becomes of a held capture after an answer, and how long to wait for the next try. Pure.

/**
 * @typedef {"taken" | "sign-in" | "later" | "refused"} Fate
 *   taken: stored by the service; sign-in: waits until somebody who may measure is signed in, or the station has its token;
 *   later: the service is away or busy; refused: goes to the shelf, and the queue goes on
 */

/** Refusals that say "not now", not "not like this". */
const NOT_NOW = new Set(["changed-meanwhile", "in-flight", "forged-request"])

/** Times that the service may fail inside itself at one capture before it stands in the others' way no longer. */
export const FAILURES_ALLOWED = 5

const FIRST_WAIT_MS = 500
const LONGEST_WAIT_MS = 30_000

/**
 * @param {number} status of HTTP; 0 for no answer
 * @param {string | undefined} type of the problem document, such as /problems/changed-meanwhile
 * @param {number} [failures] how often the service has failed inside itself (500) at this very capture
 * @returns {Fate}
 */
export function fateOf(status, type, failures = 0) {
  if (status >= 200 && status < 300) return "taken"
  const word = (type ?? "").split("/").pop() ?? ""
  if (status === 401 || word === "not-allowed") return "sign-in"
  if (NOT_NOW.has(word)) return "later"
  if (status === 500 && failures >= FAILURES_ALLOWED) return "refused"
  if (status === 408 || status === 425 || status === 429 || status >= 500 || status < 400) return "later"
  return "refused"
}

/**
 * Doubles from half a second to half a minute; a quarter more or less by chance, so that benches do not come all at once.
 * @param {number} tries that failed in a row, 1 upwards
 * @param {number} chance 0 to 1
 * @returns {number} milliseconds
 */
export function waitAfter(tries, chance) {
  return Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (tries - 1)) * (0.75 + chance / 2)
}

/** Room for what is held now and the next sweeps: four more of the largest kind, and never less than 16 MB. */
const ROOM_BYTES = 16_000_000

/**
 * @param {{ quota?: number, usage?: number } | null} estimate the browser's; null where it gives none
 * @param {number} captureBytes of one pair
 * @returns {boolean} whether another pair may be measured
 */
export function roomFor(estimate, captureBytes) {
  if (!estimate || estimate.quota === undefined || estimate.usage === undefined) return true
  return estimate.quota - estimate.usage >= Math.max(ROOM_BYTES, 4 * captureBytes)
}

/** Units are told apart by this. @param {{ product: string, serial: string, tuning: string, occasion?: string }} of @returns {string} */
export function courseOf(of) {
  return JSON.stringify([of.product, of.serial, of.tuning, of.occasion ?? "production"])
}

/** The seating that comes after an answer. @param {Api.Inspection} inspection @returns {number} 1 once the inspection is closed */
export function seatingAfter(inspection) {
  return inspection.state === "open" ? (inspection.seatings?.valid ?? 0) + 1 : 1
}

/**
 * Whether a unit has to be measured again: its inspection stays open, and nothing that waits belongs to it.
 * @param {Api.Inspection} inspection @param {{ attempt: Api.NewAttempt }[]} waiting
 */
export function mustComeBack(inspection, waiting) {
  return inspection.state === "open" && !waiting.some((item) => courseOf(item.attempt) === courseOf(inspection))
}

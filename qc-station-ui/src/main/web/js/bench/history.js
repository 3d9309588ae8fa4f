// What is known of a serial before it is measured: its form, and what was measured of it before. Pure.

/**
 * @typedef {{ product: string, tunings: { tuning: string, required: boolean }[], serialPattern?: string | null }} Known of a product
 * @typedef {{ batch: string, operator: string, product: string, tuning: string }} Shift `tuning` is empty for: every required one, in one go
 * @typedef {{ at: string, verdict: string, tuning: string, batch: string }} Judged
 * @typedef {{ kind: "fresh" } | { kind: "open", tuning: string, occasion: string, seating: number, tries: number, allowed: number }
 *     | { kind: "passed", tunings: string[] } | { kind: "judged", last: Judged } | { kind: "other", product: string }} Finding
 */

/** As the product wants serials. @param {string} serial @param {string | null | undefined} pattern a regular expression for the whole serial */
export function fitsPattern(serial, pattern) {
  if (!pattern) return true
  try {
    return new RegExp(`^(?:${pattern})$`, "u").test(serial)
  } catch {
    return true   // an expression that only the service understands: the service checks it
  }
}

/** A pattern as people read it: digits as noughts; as it stands where it is more than letters, digits and counts. @param {string} pattern */
export function patternExample(pattern) {
  const example = pattern.replace(/\\d\{(\d+)\}/g, (_, count) => "0".repeat(Number(count))).replace(/\\d/g, "0").replace(/\\([-._])/g, "$1")
  return /^[\p{L}\p{N} ._-]+$/u.test(example) ? example : pattern
}

/** What a scanner or a hand typed, as the service compares it. @param {string} typed */
export function serialOf(typed) {
  return typed.trim().normalize("NFC")
}

/** The tunings that a unit is measured in, one after the other. @param {Known} product @param {Shift} shift @returns {string[]} */
export function tuningsOf(product, shift) {
  if (shift.tuning) return [shift.tuning]
  const required = product.tunings.filter((tuning) => tuning.required).map((tuning) => tuning.tuning)
  return required.length ? required : product.tunings.slice(0, 1).map((tuning) => tuning.tuning)
}

/**
 * @param {Api.Inspection[]} inspections of this serial, the newest first
 * @param {string} product of the shift
 * @param {string[]} tunings that are to be measured
 * @returns {Finding} what stands in the way of an ordinary measurement, or where it goes on
 */
export function findingOf(inspections, product, tunings) {
  if (!inspections.length) return { kind: "fresh" }
  if (!inspections.some((each) => each.product === product)) return { kind: "other", product: inspections[0].productName ?? inspections[0].product }
  const known = inspections.filter((each) => each.product === product && each.state !== "abandoned")
  const open = known.find((each) => each.state === "open" && tunings.includes(each.tuning))
  if (open && (open.occasion === "production" || open === known[0])) return openFinding(open)
  const judged = known.filter((each) => each.state === "closed" && each.occasion === "production" && tunings.includes(each.tuning))
  if (!judged.length) return { kind: "fresh" }
  const failed = judged.find((each) => each.verdict !== "PASS")
  const passed = tunings.filter((tuning) => judged.some((each) => each.tuning === tuning))
  if (failed || passed.length === tunings.length) return { kind: "judged", last: judgedAs(newestOf(known.filter((each) => each.state === "closed")) ?? judged[0]) }
  return { kind: "passed", tunings: passed }
}

/** @param {Api.Inspection} open @returns {Finding} */
function openFinding(open) {
  const { valid = 0, tries = 0, allowed = 0 } = open.seatings ?? {}
  return { kind: "open", tuning: open.tuning, occasion: open.occasion, seating: valid + 1, tries, allowed }
}

/** @param {Api.Inspection[]} closed */
function newestOf(closed) {
  return closed.reduce((/** @type {Api.Inspection | null} */ newest, each) => (newest && (newest.closedAt ?? "") >= (each.closedAt ?? "") ? newest : each), null)
}

/** @param {Api.Inspection} inspection @returns {Judged} */
function judgedAs(inspection) {
  return { at: inspection.closedAt ?? inspection.startedAt, verdict: inspection.verdict ?? "INCOMPLETE", tuning: inspection.tuning, batch: inspection.batch }
}

// What an operator does at a station, step by step, and what the service is sent.
import { post, postParts } from "../api.js"
import { db, frequency, isNumber, localTime, signedDb } from "../format.js"
import { t } from "../texts.js"

/**
 * @typedef {import("./steps.js").Task} Task
 * @typedef {import("./steps.js").Field} Field
 * @typedef {"left" | "right"} Side
 */

/** Ear simulators by their standards. */
const EAR_SIMULATORS = ["IEC 60318-4", "IEC 60318-5"]
/** Seatings a swap study needs. */
const LEAST_SEATINGS = 3

/** @returns {Field} */
export function operatorField() {
  return { name: "operator", label: t("screen.bench.operator"), kind: "text", kept: true }
}

/** @param {string} station @param {string} what */
function pathOf(station, what) {
  return `/api/stations/${encodeURIComponent(station)}/${what}`
}

/** @param {string} station @param {Side} side @param {Api.Microphone | null | undefined} last @returns {Task} */
export function microphoneTask(station, side, last) {
  const left = side === "left"
  return {
    title: left ? t("screen.task.left.title") : t("screen.task.right.title"),
    why: t("screen.task.microphone.why"),
    action: left ? t("screen.task.left.action") : t("screen.task.right.action"),
    steps: [
      { text: left ? t("screen.task.left.place") : t("screen.task.right.place"), fields: [
        { name: "calibratorSerial", label: t("screen.field.calibratorSerial"), kind: "text", kept: true, value: last?.calibratorSerial },
        { name: `earSimulatorSerial`, label: t("screen.field.earSimulatorSerial"), kind: "text", value: last?.earSimulatorSerial },
        { name: "earSimulator", label: t("screen.field.earSimulator"), kind: "select", value: last?.earSimulator, options: EAR_SIMULATORS.map((name) => [name, name]) },
      ] },
      { text: t("screen.task.microphone.stated"), fields: [
        { name: "levelDb", label: t("screen.field.levelDb"), kind: "number", value: last?.statedLevelDb ?? 94 },
        { name: "frequencyHz", label: t("screen.field.frequencyHz"), kind: "number", value: last?.statedFrequencyHz ?? 1000 },
        { name: "calibratorUncertaintyDb", label: t("screen.field.calibratorUncertainty"), kind: "number", optional: true, value: last?.calibratorUncertaintyDb },
      ] },
      { text: left ? t("screen.task.left.record") : t("screen.task.right.record"), fields: [{ name: "tone", label: t("screen.field.tone"), kind: "file", side }] },
      { text: t("screen.task.who"), fields: [operatorField()] },
    ],
    send: async ({ tone, ...entries }) => {
      const made = /** @type {Api.Microphone} */ (await postParts(pathOf(station, "calibrations"), [["calibration", { channel: side, ...without(entries) }], ["tone", tone]]))
      return outcomeOf(made.change, [t("screen.task.microphone.done", { level: made.fullScaleLevelDb, frequency: made.tone.frequencyHz }), until(made.validUntil)])
    },
  }
}

/** @param {string} station @param {Api.Output | null | undefined} last @returns {Task} */
export function outputTask(station, last) {
  return {
    title: t("screen.task.output.title"), why: t("screen.task.output.why"), action: t("screen.task.output.action"),
    steps: [
      { text: t("screen.task.output.play"), fields: [
        { name: "toneDbfs", label: t("screen.field.toneDbfs"), kind: "number", value: last?.toneDbfs ?? -12 },
        { name: "frequencyHz", label: t("screen.field.frequencyHz"), kind: "number", value: last?.frequencyHz ?? 1000 },
      ] },
      { text: t("screen.task.output.read"), fields: [
        { name: "readingMvRms", label: t("screen.field.readingMvRms"), kind: "number" },
        { name: "meterSerial", label: t("screen.field.meterSerial"), kind: "text", kept: true, value: last?.meterSerial },
      ] },
      { text: t("screen.task.who"), fields: [operatorField()] },
    ],
    send: async (values) => {
      const made = /** @type {Api.Output} */ (await post(pathOf(station, "output-calibrations"), values))
      return outcomeOf(made.change, [t("screen.task.output.done", { volts: made.fullScaleVoltsRms.toFixed(3) }), until(made.validUntil)])
    },
  }
}

/** @param {string} station @returns {Task} */
export function correctionTask(station) {
  /** @param {string} name @param {string} label @param {Side} side @returns {Field} */
  const files = (name, label, side) => ({ name, label, kind: "files", least: LEAST_SEATINGS, side })
  return {
    title: t("screen.task.correction.title"), why: t("screen.task.correction.why"), action: t("screen.task.correction.action"),
    steps: [
      { text: t("screen.task.correction.unit"), fields: [{ name: "referenceUnit", label: t("screen.field.referenceUnit"), kind: "text", kept: true }] },
      { text: t("screen.task.correction.marked"), more: t("screen.task.correction.order"), fields: [
        files("markedLeft", t("screen.field.leftSimulator"), "left"), files("markedRight", t("screen.field.rightSimulator"), "right")] },
      { text: t("screen.task.correction.swapped"), more: t("screen.task.correction.order"), fields: [
        files("swappedLeft", t("screen.field.leftSimulator"), "left"), files("swappedRight", t("screen.field.rightSimulator"), "right")] },
      { text: t("screen.task.who"), fields: [operatorField()] },
    ],
    send: async ({ markedLeft, markedRight, swappedLeft, swappedRight, ...entries }) => {
      const named = { markedLeft, markedRight, swappedLeft, swappedRight }
      const parts = Object.entries(named).flatMap(([name, some]) => some.map((/** @type {File} */ file) => /** @type {[string, File]} */ ([name, file])))
      const made = /** @type {Api.Correction} */ (await postParts(pathOf(station, "corrections"), [["correction", entries], ...parts]))
      return { state: "VALID", words: [t("screen.task.correction.done", { mean: made.meanDb, scatter: made.scatterDb.toFixed(2), version: made.version }), until(made.validUntil)] }
    },
  }
}

/** @param {string} station @returns {Task} */
export function idleFloorTask(station) {
  return {
    title: t("screen.task.idle.title"), why: t("screen.task.idle.why"), action: t("screen.task.idle.action"),
    steps: [
      { text: t("screen.task.idle.record"), fields: [
        { name: "left", label: t("screen.bench.left"), kind: "file", side: "left" }, { name: "right", label: t("screen.bench.right"), kind: "file", side: "right" }] },
      { text: t("screen.task.who"), fields: [operatorField()] },
    ],
    send: async ({ left, right, ...entries }) => {
      const made = /** @type {Api.IdleFloor} */ (await postParts(pathOf(station, "idle-floors"), [["idleFloor", entries], ["left", left], ["right", right]]))
      return { state: "VALID", words: [t("screen.task.idle.done", { left: made.leftDba, right: made.rightDba }), until(made.validUntil)] }
    },
  }
}

/**
 * @param {string} station @param {string} product @param {string} tuning @param {string[]} units serial numbers of this tuning's reference units
 * @returns {Task}
 */
export function verificationTask(station, product, tuning, units) {
  return {
    title: t("screen.task.verification.title"), why: t("screen.task.verification.why"), action: t("screen.task.verification.action"),
    steps: [
      { text: t("screen.task.verification.mount"), fields: [{ name: "referenceUnit", label: t("screen.field.referenceUnit"), kind: "select", options: units.map((unit) => [unit, unit]) }] },
      pairStep(t("screen.task.verification.measure"), AUDIO_OR_CURVE),
      { text: t("screen.task.who"), fields: [operatorField()] },
    ],
    send: async ({ left, right, ...entries }) => {
      const made = /** @type {Api.Verification} */ (await postParts(pathOf(station, "verifications"), [["verification", { product, tuning, ...entries }], ["left", left], ["right", right]]))
      const strayed = made.regions.filter((region) => region.judged && !region.passed)
      return made.passed ? { state: "VALID", words: [t("screen.task.verification.passed", { limit: made.limitDb }), until(made.validUntil)] }
        : { state: "BLOCKED", words: [t("screen.task.verification.failed"), ...strayed.map((region) => t("screen.task.verification.strayed", {
          channel: region.channel, region: region.region, measured: region.deviationDb, limit: made.limitDb }))] }
    },
  }
}

/** @param {string} station @param {string} product @param {string} tuning @returns {Task} */
export function certifyTask(station, product, tuning) {
  return {
    title: t("screen.task.certify.title"), why: t("screen.task.certify.why"), action: t("screen.task.certify.action"),
    steps: [
      { text: t("screen.task.certify.name"), fields: [{ name: "serial", label: t("screen.field.referenceUnit"), kind: "text" }] },
      pairStep(t("screen.task.certify.curves"), AUDIO_OR_CURVE),
      { text: t("screen.task.who"), fields: [operatorField()] },
    ],
    send: async ({ left, right, ...entries }) => {
      const made = /** @type {Api.ReferenceUnit} */ (await postParts(pathOf(station, "reference-units"), [["unit", { product, tuning, ...entries }], ["left", left], ["right", right]]))
      return { state: "VALID", words: [t("screen.task.certify.done", { serial: made.serial }), until(made.validUntil)] }
    },
  }
}

const AUDIO_OR_CURVE = ".wav,.csv,.txt,audio/wav,text/csv"

/** @param {string} text @param {string} [accept] @returns {import("./steps.js").Step} */
export function pairStep(text, accept) {
  return { text, fields: [
    { name: "left", label: t("screen.bench.left"), kind: "file", side: "left", accept }, { name: "right", label: t("screen.bench.right"), kind: "file", side: "right", accept }] }
}

/** @param {Api.Change} change @param {string[]} words @returns {import("./steps.js").Outcome} */
function outcomeOf(change, words) {
  if (change.state === "changed") return { state: "BLOCKED", words: [change.text ?? "", ...words] }
  return { state: "VALID", words: isNumber(change.db) ? [...words, t("screen.task.change", { change: change.db })] : words }
}

/** @param {string} instant */
export function until(instant) {
  return t("screen.task.until", { when: localTime(instant) })
}

/** Entries without those left empty. @param {Record<string, any>} entries */
function without(entries) {
  return Object.fromEntries(Object.entries(entries).filter(([, value]) => value !== null && value !== ""))
}

/** A station's part as label and value, for its facts. @param {Api.Station} station @param {string} name @returns {[string, string][]} */
export function factsOf(station, name) {
  if (name === "left" || name === "right") return microphoneFacts(station.microphones?.[name])
  if (name === "output") return outputFacts(station.output)
  if (name === "correction") return correctionFacts(station.correction)
  if (name === "idle") return idleFacts(station.idleFloor)
  return []
}

/** @param {Api.Microphone | null | undefined} row @returns {[string, string][]} */
function microphoneFacts(row) {
  if (!row) return []
  return [
    [t("screen.fact.fullScale"), `${db(row.fullScaleLevelDb)} dB SPL`], [t("screen.field.earSimulator"), `${row.earSimulator}, ${row.earSimulatorSerial}`],
    [t("screen.field.calibratorSerial"), `${row.calibratorSerial}, ${db(row.statedLevelDb)} dB, ${frequency(row.statedFrequencyHz)}`],
    [t("screen.fact.toneRead"), t("screen.fact.toneWords", { frequency: row.tone.frequencyHz.toFixed(1), level: row.tone.amplitudeDbfs, distortion: row.tone.distortionPercent.toFixed(2), drift: row.tone.driftDb.toFixed(2) })],
    [t("screen.fact.change"), changeWords(row.change)], ...times(row)]
}

/** @param {Api.Output | null | undefined} row @returns {[string, string][]} */
function outputFacts(row) {
  if (!row) return []
  return [
    [t("screen.fact.fullScale"), `${row.fullScaleVoltsRms.toFixed(3)} V r.m.s.`], [t("screen.field.meterSerial"), row.meterSerial],
    [t("screen.fact.reading"), t("screen.fact.readingWords", { reading: row.readingMvRms, tone: row.toneDbfs, frequency: row.frequencyHz })],
    [t("screen.fact.change"), changeWords(row.change)], ...times(row)]
}

/** @param {Api.Correction | null | undefined} row @returns {[string, string][]} */
function correctionFacts(row) {
  if (!row) return []
  return [[t("screen.field.referenceUnit"), row.referenceUnit], [t("screen.fact.version"), String(row.version)], [t("screen.fact.mean"), `${signedDb(row.meanDb)} dB`],
    [t("screen.fact.scatter"), `${row.scatterDb.toFixed(2)} dB`], ...times(row)]
}

/** @param {Api.IdleFloor | null | undefined} row @returns {[string, string][]} */
function idleFacts(row) {
  return row ? [[t("screen.bench.left"), `${db(row.leftDba)} dB(A)`], [t("screen.bench.right"), `${db(row.rightDba)} dB(A)`], ...times(row)] : []
}

/** @param {Api.Change} change */
function changeWords(change) {
  return isNumber(change.db) ? `${signedDb(change.db)} dB` : t("screen.fact.first")
}

/** @param {{ measuredAt: string, validUntil: string }} row @returns {[string, string][]} */
function times(row) {
  return [[t("screen.attempts.when"), localTime(row.measuredAt)], [t("screen.fact.until"), localTime(row.validUntil)]]
}

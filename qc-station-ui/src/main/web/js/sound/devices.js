// Which sound devices a station uses: chosen once, remembered by the browser, found again by name when their ids change.
import { recall, remember } from "../memory.js"
import { SoundProblem } from "./problem.js"

/**
 * @typedef {{ id: string, label: string }} Device
 * @typedef {{ output: Device, inputs: Device[], swapped: boolean }} Choice one input is stereo (left first), two are mono (left, right);
 *     `swapped` exchanges left and right of what they record
 */

/** Everything a browser would do to a voice; each must be off, or the recording is not what the microphone heard. */
const VOICE = ["echoCancellation", "noiseSuppression", "autoGainControl", "voiceIsolation"]

/** @param {string} station @returns {boolean} whether devices have been chosen for it in this browser */
export function hasChoice(station) {
  return readChoice(station) !== null
}

/** @param {string} station @returns {Choice | null} */
export function readChoice(station) {
  return recall(`sound.${station}`)
}

/** @param {string} station @param {Choice} choice */
export function keepChoice(station, choice) {
  remember(`sound.${station}`, choice)
}

/**
 * The devices by name. Browsers name them only to a page that may record, so permission is asked for first.
 * @returns {Promise<{ inputs: Device[], outputs: Device[] }>}
 * @throws {SoundProblem} if the page is not secure, recording is not allowed, or there is no microphone input
 */
export async function listDevices() {
  if (!navigator.mediaDevices) throw new SoundProblem("screen.sound.problem.insecure")
  const there = await devicesThere()
  if (there.inputs.some((device) => device.label)) return there
  stop(await ask({ audio: true }, ""))
  return devicesThere()
}

/** The devices as the browser tells them now, without asking anybody. @returns {Promise<{ inputs: Device[], outputs: Device[] }>} */
export async function devicesThere() {
  const all = await navigator.mediaDevices.enumerateDevices()
  const of = (/** @type {string} */ kind) => all.filter((device) => device.kind === kind && !ALIASES.includes(device.deviceId)).map(({ deviceId, label }) => ({ id: deviceId, label }))
  const outputs = of("audiooutput")
  return { inputs: of("audioinput"), outputs: outputs.length ? outputs : [SYSTEM_OUTPUT] }
}

/** The browser's own names for whatever the system prefers; a station names its devices. */
const ALIASES = ["default", "communications"]

/** For a browser that cannot choose: the one the system plays to. */
export const SYSTEM_OUTPUT = { id: "", label: "" }

/**
 * A chosen device among those that are there: by its id, else by its name.
 * @param {Device} wanted @param {Device[]} there @returns {Device | null}
 */
export function findAgain(wanted, there) {
  return there.find((device) => device.id === wanted.id) ?? there.find((device) => device.label === wanted.label && wanted.label !== "") ?? null
}

/**
 * The choice with the ids of today.
 * @param {Choice} choice @param {{ inputs: Device[], outputs: Device[] }} there @returns {Choice}
 * @throws {SoundProblem} naming the device that is missing
 */
export function present(choice, there) {
  const need = (/** @type {Device} */ wanted, /** @type {Device[]} */ among) => {
    const found = findAgain(wanted, among)
    if (!found) throw new SoundProblem("screen.sound.problem.missing", { device: wanted.label })
    return found
  }
  return { ...choice, output: choice.output.id === SYSTEM_OUTPUT.id ? SYSTEM_OUTPUT : need(choice.output, there.outputs), inputs: choice.inputs.map((input) => need(input, there.inputs)) }
}

/** The first device of a choice whose very id is not there. @param {Choice} choice @param {{ inputs: Device[], outputs: Device[] }} there @returns {Device | null} */
export function missing(choice, there) {
  const gone = (/** @type {Device} */ wanted, /** @type {Device[]} */ among) => !among.some((device) => device.id === wanted.id)
  return choice.inputs.find((input) => gone(input, there.inputs)) ?? (choice.output.id !== SYSTEM_OUTPUT.id && gone(choice.output, there.outputs) ? choice.output : null)
}

/**
 * Opens the inputs with every voice processing off, and reads back that it is.
 * @param {Choice} choice @returns {Promise<MediaStream[]>} one a device
 * @throws {SoundProblem} saying which device does not do what is needed
 */
export async function openInputs(choice) {
  /** @type {MediaStream[]} */
  const streams = []
  try {
    for (const input of choice.inputs) {
      const stream = await ask({ audio: constraints(input, choice.inputs.length === 1 ? 2 : 1) }, input.label)
      streams.push(stream)
      check(stream.getAudioTracks()[0].getSettings(), input, choice.inputs.length === 1 ? 2 : 1)
    }
  } catch (failure) {
    streams.forEach(stop)
    throw failure
  }
  return streams
}

/** @param {MediaStream} stream */
export function stop(stream) {
  stream.getTracks().forEach((track) => track.stop())
}

/** @param {Device} input @param {number} channels */
function constraints(input, channels) {
  return { deviceId: { exact: input.id }, channelCount: { ideal: channels }, ...Object.fromEntries(VOICE.map((name) => [name, false])) }
}

/**
 * @param {Record<string, any>} settings what the browser says it does @param {Device} input @param {number} channels
 * @throws {SoundProblem} if it kept a voice processing on, or records fewer channels than needed
 */
export function check(settings, input, channels) {
  if (VOICE.some((name) => settings[name] !== undefined && settings[name] !== false)) throw new SoundProblem("screen.sound.problem.voice", { device: input.label })
  if (settings.channelCount !== undefined && settings.channelCount < channels) throw new SoundProblem("screen.sound.problem.mono", { device: input.label })
}

/** @param {MediaStreamConstraints} wanted @param {string} label */
async function ask(wanted, label) {
  try {
    return await navigator.mediaDevices.getUserMedia(wanted)
  } catch (failure) {
    const name = failure instanceof DOMException ? failure.name : ""
    if (name === "NotAllowedError" || name === "SecurityError") throw new SoundProblem("screen.sound.problem.notAllowed")
    if (name === "NotReadableError") throw new SoundProblem("screen.sound.problem.inUse", { device: label })
    if (name === "NotFoundError" && !label) throw new SoundProblem("screen.sound.problem.noInput")
    if (name === "NotFoundError" || name === "OverconstrainedError") throw new SoundProblem("screen.sound.problem.missing", { device: label })
    throw failure
  }
}

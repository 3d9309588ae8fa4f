// The very signal that the service divides by: fetched once, checked by its SHA-256, kept for the time that the service is away.
import { get, Offline, Problem } from "../api.js"
import { recall, remember } from "../memory.js"
import { SoundProblem } from "./problem.js"
import { decodeWav } from "./wav.js"

/** @typedef {{ name: string, sampleRateHz: number, seconds: number, fadeSeconds: number, leadSeconds: number, tailSeconds: number, fromHz: number, toHz: number, amplitude: number, samples: number, sha256: string }} StimulusFacts */
/** @typedef {StimulusFacts & { signal: Float32Array }} Stimulus `signal`: what is played, silences included */

const KEPT = "evenpair-stimuli"

/** @type {Map<string, Stimulus>} by name, for as long as the page stands: a sweep waits for no answer of the service */
const loaded = new Map()

/** The standard sweep of a sample rate. @param {number} rateHz @returns {string} its name */
export function stimulusAt(rateHz) {
  return `sweep-${rateHz}`
}

/**
 * @param {string} name as the API knows it
 * @returns {Promise<Stimulus>}
 * @throws {SoundProblem} if it can be neither fetched nor remembered, or is not what the service says it is
 */
export async function loadStimulus(name) {
  const known = loaded.get(name)
  if (known) return known
  const facts = await factsOf(name)
  const bytes = await bytesOf(facts)
  const { samples, rateHz } = decodeWav(bytes)
  if (rateHz !== facts.sampleRateHz || samples.length !== facts.samples) throw new SoundProblem("screen.sound.problem.stimulusBroken", { name })
  const stimulus = { ...facts, signal: samples }
  loaded.set(name, stimulus)
  return stimulus
}

/** The service is away behind its proxy, or nobody is signed in: what was fetched before is still right, its digest says so. */
const AWAY = [401, 502, 503, 504]

/** @param {string} name @returns {Promise<StimulusFacts>} */
async function factsOf(name) {
  const key = `stimulus.${name}`
  try {
    const facts = /** @type {StimulusFacts} */ (await get(`/api/stimuli/${encodeURIComponent(name)}`))
    remember(key, facts)
    return facts
  } catch (failure) {
    const kept = recall(key), away = failure instanceof Offline || (failure instanceof Problem && AWAY.includes(failure.document.status))
    if (away && kept) return kept
    if (failure instanceof Offline) throw new SoundProblem("screen.sound.problem.noStimulus", { name })
    throw failure
  }
}

/** @param {StimulusFacts} facts @returns {Promise<ArrayBuffer>} */
async function bytesOf(facts) {
  const path = `/api/stimuli/${encodeURIComponent(facts.name)}/audio`, key = `${path}?sha256=${facts.sha256}`
  const cache = await caches.open(KEPT)
  const kept = await (await cache.match(key))?.arrayBuffer()
  if (kept && (await sha256(kept)) === facts.sha256) return kept
  let response
  try {
    response = await fetch(path)
  } catch {
    throw new SoundProblem("screen.sound.problem.noStimulus", { name: facts.name })
  }
  const bytes = await response.arrayBuffer()
  if (!response.ok || (await sha256(bytes)) !== facts.sha256) throw new SoundProblem("screen.sound.problem.stimulusBroken", { name: facts.name })
  await cache.put(key, new Response(bytes.slice(0)))
  return bytes
}

/** @param {ArrayBuffer} bytes */
async function sha256(bytes) {
  return [...new Uint8Array(await crypto.subtle.digest("SHA-256", bytes))].map((byte) => byte.toString(16).padStart(2, "0")).join("")
}

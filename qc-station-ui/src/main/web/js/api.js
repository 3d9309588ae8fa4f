// Calls of the HTTP API. A refusal becomes a Problem with the members of its problem document; no answer becomes Offline.
import { language } from "./language.js"
import { noteClock } from "./service-clock.js"

/** The service refused: carries the problem document. */
export class Problem extends Error {
  /** @param {Api.ProblemDocument} document */
  constructor(document) {
    super(document.detail ?? document.title)
    this.document = document
  }
}

/** A send that takes longer has gone nowhere; it is repeated under the same key. */
const LONGEST_SEND_MS = 60_000

/** The service did not answer. */
export class Offline extends Error {}

/**
 * What shows the service that a request comes from our own script: the value of a cookie that no other site can read.
 * To be sent with everything but GET. @returns {Record<string, string>}
 */
export function ownRequest() {
  const cookie = document.cookie.split("; ").find((pair) => pair.startsWith("evenpair-csrf="))
  return cookie ? { "X-Evenpair-CSRF": cookie.slice("evenpair-csrf=".length) } : {}
}

/**
 * @template T
 * @param {string} path
 * @param {AbortSignal} [signal]
 * @returns {Promise<T>}
 */
export async function get(path, signal) {
  let response
  try {
    response = await fetch(path, { headers: { Accept: "application/json", "Accept-Language": language() }, signal })
  } catch (failure) {
    if (signal?.aborted) throw failure
    throw new Offline()
  }
  noteClock(response)
  if (!response.ok) throw await problemOf(response)
  return response.json()
}

/**
 * Sends a held capture. @param {import("./outbox/store.js").Held} item @param {import("./outbox/store.js").Part[]} parts
 * @returns {Promise<Api.Inspection>}
 */
export function sendCapture(item, parts) {
  const body = new FormData()
  body.append("inspection", new Blob([JSON.stringify(item.attempt)], { type: "application/json" }), "inspection.json")
  for (const part of parts) body.append(part.name, new Blob([part.bytes], { type: part.type }), part.file)
  return send("/api/inspections", body, { "Idempotency-Key": item.key }, AbortSignal.timeout(LONGEST_SEND_MS))
}

/** Sends JSON. @template T @param {string} path @param {unknown} body @returns {Promise<T>} */
export function post(path, body) {
  return send(path, JSON.stringify(body), { "Content-Type": "application/json" })
}

/** Sends text of another kind, such as YAML. @template T @param {string} path @param {string} body @param {string} type @returns {Promise<T>} */
export function postText(path, body, type) {
  return send(path, body, { "Content-Type": type })
}

/** Bytes, where the answer is no JSON. @param {string} path @param {AbortSignal} [signal] @returns {Promise<ArrayBuffer>} */
export async function getBytes(path, signal) {
  let response
  try {
    response = await fetch(path, { headers: { Accept: "application/octet-stream, application/problem+json" }, signal })
  } catch (failure) {
    if (signal?.aborted) throw failure
    throw new Offline()
  }
  if (!response.ok) throw await problemOf(response)
  return response.arrayBuffer()
}

/** Text, such as the YAML of a limit set. @param {string} path @param {string} type @param {AbortSignal} [signal] @returns {Promise<string>} */
export async function getText(path, type, signal) {
  let response
  try {
    response = await fetch(path, { headers: { Accept: type }, signal })
  } catch (failure) {
    if (signal?.aborted) throw failure
    throw new Offline()
  }
  if (!response.ok) throw await problemOf(response)
  return response.text()
}

/**
 * Sends parts: files as they are, anything else as JSON. A name may come more than once.
 * @template T @param {string} path @param {[string, any][]} parts @returns {Promise<T>}
 */
export function postParts(path, parts) {
  const body = new FormData()
  for (const [name, part] of parts) {
    if (part instanceof File) body.append(name, typed(part), part.name)
    else body.append(name, new Blob([JSON.stringify(part)], { type: "application/json" }), `${name}.json`)
  }
  return send(path, body, {})
}

/** Sends JSON, or nothing. @template T @param {"POST" | "PUT" | "DELETE"} method @param {string} path @param {unknown} [body] @returns {Promise<T>} */
export function sendJson(method, path, body) {
  const json = body !== undefined && body !== null
  return transmit(method, path, json ? JSON.stringify(body) : null, json ? { "Content-Type": "application/json" } : {})
}

/** @param {string} path @param {BodyInit} body @param {Record<string, string>} headers @param {AbortSignal} [signal] @returns {Promise<any>} */
function send(path, body, headers, signal) {
  return transmit("POST", path, body, headers, signal)
}

/** @param {string} method @param {string} path @param {BodyInit | null} body @param {Record<string, string>} headers @param {AbortSignal} [signal] @returns {Promise<any>} */
async function transmit(method, path, body, headers, signal) {
  let response
  try {
    response = await fetch(path, { method, body, headers: { Accept: "application/json", "Accept-Language": language(), ...ownRequest(), ...headers }, signal })
  } catch {
    throw new Offline()
  }
  if (!response.ok) throw await problemOf(response)
  const text = await response.text()
  return text ? JSON.parse(text) : null
}

/** Asks whether a paper can be had; the refusal says why not. @param {string} path @returns {Promise<void>} */
export async function checkPaper(path) {
  let response
  try {
    response = await fetch(path, { headers: { Accept: "application/pdf, application/problem+json", "Accept-Language": language() } })
  } catch {
    throw new Offline()
  }
  if (!response.ok) throw await problemOf(response)
  await response.body?.cancel()
}

/** A random key (not crypto.randomUUID, which plain http on a plant's network does not have). @returns {string} */
export function newKey() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("")
}

/** @param {File} file @returns {Blob} browsers disagree on the type of a .wav; the contract does not */
function typed(file) {
  const curve = /\.(csv|txt)$/i.test(file.name)
  return new Blob([file], { type: curve ? "text/csv" : "audio/wav" })
}

/** @param {Response} response */
async function problemOf(response) {
  if (response.status === 401 && !response.url.includes("/api/session")) tellSignInNeeded()
  return new Problem(documentOf(response.status, await response.text()))
}

/** The session has ended, or there was none: whoever shows the screens asks to sign in. */
function tellSignInNeeded() {
  document.dispatchEvent(new CustomEvent("evenpair-sign-in-needed"))
}

/** @param {number} status @param {string} text @returns {Api.ProblemDocument} */
export function documentOf(status, text) {
  try {
    const document = JSON.parse(text)
    if (document && typeof document === "object" && (document.detail || document.title)) return { ...document, status }
  } catch {
    // not a problem document: a proxy's page, or an empty body
  }
  return { type: "about:blank", title: String(status), status }
}

// Calls of the HTTP API. A refusal becomes a Problem with the members of its problem document; no answer becomes Offline.

/** The service refused: carries the problem document. */
export class Problem extends Error {
  /** @param {Api.ProblemDocument} document */
  constructor(document) {
    super(document.detail ?? document.title)
    this.document = document
  }
}

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
    response = await fetch(path, { headers: { Accept: "application/json" }, signal })
  } catch (failure) {
    if (signal?.aborted) throw failure
    throw new Offline()
  }
  if (!response.ok) throw await problemOf(response)
  return response.json()
}

/**
 * Sends an attempt, telling how much of it has gone out.
 * @param {Api.NewAttempt} attempt
 * @param {File} left @param {File} right
 * @param {string} key the same for every repetition of one attempt, so that it is stored once
 * @param {(sent: number, total: number) => void} progress bytes
 * @returns {Promise<Api.Inspection>}
 */
export function sendAttempt(attempt, left, right, key, progress) {
  const body = new FormData()
  body.append("inspection", new Blob([JSON.stringify(attempt)], { type: "application/json" }), "inspection.json")
  body.append("left", typed(left), left.name)
  body.append("right", typed(right), right.name)
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest()   // fetch cannot tell how far an upload is
    request.open("POST", "/api/inspections")
    request.setRequestHeader("Accept", "application/json")
    request.setRequestHeader("Idempotency-Key", key)
    for (const [name, value] of Object.entries(ownRequest())) request.setRequestHeader(name, value)
    request.upload.addEventListener("progress", (event) => progress(event.loaded, event.total))
    request.addEventListener("error", () => reject(new Offline()))
    request.addEventListener("load", () => {
      if (request.status >= 200 && request.status < 300) resolve(JSON.parse(request.responseText))
      else {
        if (request.status === 401) tellSignInNeeded()
        reject(new Problem(documentOf(request.status, request.responseText)))
      }
    })
    request.send(body)
  })
}

/** Sends JSON. @template T @param {string} path @param {unknown} body @returns {Promise<T>} */
export function post(path, body) {
  return send("POST", path, body)
}

/** Sends JSON, or nothing. @template T @param {"POST" | "PUT" | "DELETE"} method @param {string} path @param {unknown} [body] @returns {Promise<T>} */
export function send(method, path, body) {
  const json = body !== undefined && body !== null
  return transmit(method, path, json ? JSON.stringify(body) : null, json ? { "Content-Type": "application/json" } : {})
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
  return transmit("POST", path, body, {})
}

/** @param {string} method @param {string} path @param {BodyInit | null} body @param {Record<string, string>} headers @returns {Promise<any>} */
async function transmit(method, path, body, headers) {
  let response
  try {
    response = await fetch(path, { method, body, headers: { Accept: "application/json", ...ownRequest(), ...headers } })
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
    response = await fetch(path, { headers: { Accept: "application/pdf, application/problem+json" } })
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

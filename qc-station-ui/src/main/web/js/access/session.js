// Who is signed in, and which station this browser belongs to. Rights are the service's to decide; this only chooses what to show.
import { get, Offline, post, sendJson } from "../api.js"
import { recall, remember } from "../memory.js"

/** @type {Api.Session} */
let session = { person: null, station: null, idleSeconds: 0 }

/** Nobody can sign in while the service is away, and what a bench holds is in this browser alone. */
let away = false

/** @type {Set<() => void>} */
const listeners = new Set()

/** @returns {Api.Session} */
export function who() {
  return session
}

/** @param {() => void} listener called whenever somebody signed in or out @returns {() => void} ends it */
export function onWho(listener) {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Asks the service; while it is away, what it said last stands. @returns {Promise<void>} */
export async function askWho() {
  try {
    take(await get("/api/session"))
  } catch (failure) {
    if (!(failure instanceof Offline)) throw failure
    away = true
    session = recall("session") ?? session
  }
}

/** @param {string} name @param {string} password @returns {Promise<void>} */
export async function signIn(name, password) {
  take(await post("/api/session", { name, password }))
}

/** @param {string} badge @returns {Promise<void>} */
export async function signInByBadge(badge) {
  take(await post("/api/session/badge", { badge }))
}

/** @returns {Promise<void>} */
export async function signOut() {
  await sendJson("DELETE", "/api/session", null)
  take({ ...session, person: null })
}

/** @param {string} old @param {string} password @returns {Promise<void>} */
export async function changePassword(old, password) {
  take(await sendJson("PUT", "/api/session/password", { old, password }))
}

/** The service said that nobody is signed in any more. */
export function sessionEnded() {
  if (session.person) take({ ...session, person: null })
}

/** @param {string | null} station that this browser belongs to from now on */
export function belongsTo(station) {
  take({ ...session, station })
}

/** @param {import("../screens.js").Desk} desk @returns {boolean} whether the screen is of use to who is signed in */
export function mayOpen(desk) {
  const roles = session.person?.roles ?? []
  if (desk === "person") return session.person !== null
  if (desk === "bench") return roles.length > 0 || session.station !== null || away
  return roles.includes(/** @type {Api.Role} */ (desk))
}

/** @param {Api.Session} next */
function take(next) {
  away = false
  session = next
  remember("session", session)
  for (const listener of [...listeners]) listener()
}

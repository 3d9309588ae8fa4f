// Checks the signed summary of a certificate with the maker's published key, in the browser alone. A plain script on purpose: it also
// runs from a folder, without a service. The form of the text: EVENPAIR-1, key id, digest, serial, verdict, time, signature, each
// parted by one space; Ed25519 over the UTF-8 bytes before the last space.
"use strict";
(() => {
  const PARTS = 7
  const KEY_ID_BYTES = 8

  /** @param {string} id @returns {HTMLElement} */
  function at(id) {
    const found = document.getElementById(id)
    if (!found) throw new Error(`no ${id}`)
    return found
  }

  /** @param {string} text base64 or base64url, with or without padding @returns {Uint8Array<ArrayBuffer>} */
  function bytes(text) {
    const binary = atob(text.replace(/-/g, "+").replace(/_/g, "/"))
    return Uint8Array.from(binary, (character) => character.charCodeAt(0))
  }

  /** @param {string} published a PEM file or its letters @returns {Uint8Array<ArrayBuffer>} */
  function keyBytes(published) {
    return bytes(published.replace(/-----[A-Z ]+-----/g, "").replace(/\s+/g, ""))
  }

  /**
   * @param {string} text @param {string} published
   * @returns {Promise<{ good: boolean, says: string, parts: string[] }>}
   */
  async function check(text, published) {
    const parts = text.trim().split(" ")
    if (parts.length !== PARTS || parts[0] !== "EVENPAIR-1") return { good: false, says: "This is no signed summary of a certificate: it has another form.", parts: [] }
    const encoded = keyBytes(published)
    const id = [...new Uint8Array(await crypto.subtle.digest("SHA-256", encoded))].slice(0, KEY_ID_BYTES).map((byte) => byte.toString(16).padStart(2, "0")).join("")
    if (id !== parts[1]) return { good: false, says: `Signed with key ${parts[1]}, but the key given is ${id}.`, parts: [] }
    const key = await crypto.subtle.importKey("spki", encoded, { name: "Ed25519" }, false, ["verify"])
    const signed = new TextEncoder().encode(text.trim().slice(0, text.trim().lastIndexOf(" ")))
    const good = await crypto.subtle.verify({ name: "Ed25519" }, key, bytes(parts[6]), signed)
    return good ? { good, says: "The maker's key signed this. Compare it with the certificate:", parts }
      : { good, says: "NOT what the maker signed: something in it was changed.", parts: [] }
  }

  /** @param {string[]} parts */
  function facts(parts) {
    const named = parts.length ? [["Serial number", parts[3]], ["Verdict", parts[4]], ["Judged (UTC)", parts[5]], ["Sealed record", parts[2]], ["Key", parts[1]]] : []
    at("facts").replaceChildren(...named.flatMap(([name, value]) => {
      const term = document.createElement("dt"), told = document.createElement("dd")
      term.textContent = name
      told.textContent = value
      return [term, told]
    }))
  }

  at("check").addEventListener("submit", async (event) => {
    event.preventDefault()
    const text = /** @type {HTMLTextAreaElement} */ (at("text")).value
    const published = /** @type {HTMLTextAreaElement} */ (at("key")).value
    let found
    try {
      found = await check(text, published)
    } catch (failure) {
      const old = failure instanceof DOMException && failure.name === "NotSupportedError"
      found = { good: false, says: old ? "This browser cannot check Ed25519 signatures: use a newer one, or the command." : "The key or the signature cannot be read.", parts: [] }
    }
    at("answer").textContent = found.says
    facts(found.parts)
  })
})()

// Addresses behind the hash: #/bench/bench-1, #/batch/SW-2647?product=sedge-2&tuning=plain, #/unit/SG2-004217, #/golden/sedge-2/plain. Pure but for go().

/** @typedef {{ screen: string, name: string | null, second?: string, query: Record<string, string> }} Route */

/** @param {string} hash @returns {Route} */
export function parseRoute(hash) {
  const [path, search = ""] = hash.replace(/^#\/?/, "").split("?")
  const [screen = "", name = "", second] = path.split("/").map(decodeURIComponent)
  return { screen: screen || "bench", name: name || null, ...(second ? { second } : {}), query: Object.fromEntries(new URLSearchParams(search)) }
}

/** @param {string} screen @param {string | string[] | null} [name] one step of the path, or several @param {Record<string, string | number | null | undefined>} [query] @returns {string} */
export function hashOf(screen, name, query = {}) {
  const search = new URLSearchParams()
  for (const [key, value] of Object.entries(query)) {
    if (value !== null && value !== undefined && value !== "") search.set(key, String(value))
  }
  const tail = search.toString()
  return `#/${screen}${[name ?? ""].flat().filter(Boolean).map((step) => `/${encodeURIComponent(step)}`).join("")}${tail ? `?${tail}` : ""}`
}

/** @param {string} screen @param {string | string[] | null} [name] @param {Record<string, string | number | null | undefined>} [query] */
export function go(screen, name, query) {
  location.hash = hashOf(screen, name, query)
}

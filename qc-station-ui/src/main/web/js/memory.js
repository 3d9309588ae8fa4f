// What the browser remembers between visits. A browser that refuses storage still works, it only forgets.

const PREFIX = "evenpair."

/** @param {string} key @param {any} value must survive JSON */
export function remember(key, value) {
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(value))
  } catch {
    // private window or full storage: nothing to do, the screens go on without a memory
  }
}

/** @param {string} key @returns {any} null if nothing is remembered */
export function recall(key) {
  try {
    return JSON.parse(localStorage.getItem(PREFIX + key) ?? "null")
  } catch {
    return null
  }
}

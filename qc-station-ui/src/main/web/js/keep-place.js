// Changes a page under somebody's hands: what has the focus keeps it, what is open stays open, and nothing scrolls away.

/**
 * @param {HTMLElement} root whose content changes @param {() => void} change replaces some of it
 */
export function keepPlace(root, change) {
  const held = document.activeElement instanceof HTMLElement && root.contains(document.activeElement) ? document.activeElement : null
  const sign = held ? signOf(held) : null
  const open = [...root.querySelectorAll("details")].map((details) => details.open)
  change()
  const details = [...root.querySelectorAll("details")]
  if (details.length === open.length) details.forEach((one, i) => { one.open = open[i] })
  if (!held || held.isConnected || !sign) return
  const again = [...root.querySelectorAll(held.tagName.toLowerCase())].find((one) => signOf(/** @type {HTMLElement} */ (one)) === sign)
  if (again instanceof HTMLElement) again.focus({ preventScroll: true })
}

/** @param {HTMLElement} element */
function signOf(element) {
  return element.getAttribute("href") ?? element.dataset.key ?? (element.tagName === "SUMMARY" ? `summary ${element.parentElement?.className}` : element.textContent)
}

/**
 * Brings a list to hold these elements in this order. What stays is not touched, so that it keeps focus and place.
 * @param {Element} list @param {Element[]} wanted
 */
export function arrange(list, wanted) {
  const keep = new Set(wanted)
  for (const child of [...list.children]) if (!keep.has(child)) child.remove()
  wanted.forEach((element, i) => {
    if (list.children[i] !== element) list.insertBefore(element, list.children[i] ?? null)
  })
}

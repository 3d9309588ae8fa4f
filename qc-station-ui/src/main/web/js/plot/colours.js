// Plots are painted on a canvas, which knows no style sheet: the colours are read from the root when a plot is built.

const NAMES = /** @type {const} */ ([
  "ground", "plot", "ink", "quiet", "line", "fine", "hatch", "left", "right", "golden", "difference", "window", "window-edge", "fail", "fail-tint",
])

/** @typedef {(typeof NAMES)[number]} ColourName */
/** @typedef {Record<ColourName, string>} Colours */

/** @returns {Colours} */
export function readColours() {
  const style = getComputedStyle(document.documentElement)
  return /** @type {Colours} */ (Object.fromEntries(NAMES.map((name) => [name, style.getPropertyValue(`--${name}`).trim()])))
}

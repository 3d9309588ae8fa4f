// Arrow keys move a plot's cursor from grid point to grid point.

/** @param {string} key @param {boolean} wide shift held: a third of an octave @param {number} index @param {number} count @returns {number | null} the new index; null for another key */
export function walked(key, wide, index, count) {
  const step = wide ? 8 : 1
  switch (key) {
    case "ArrowLeft": return Math.max(0, index - step)
    case "ArrowRight": return Math.min(count - 1, index + step)
    case "Home": return 0
    case "End": return count - 1
    default: return null
  }
}

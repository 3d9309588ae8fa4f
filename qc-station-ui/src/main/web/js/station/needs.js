// What keeps a station from judging, as sentences: blocks first, then what is missing, expired or changed.

/** @param {Api.Station} station @returns {string[]} */
export function needLines(station) {
  const blocks = (station.blocks ?? []).map((block) => block.text)
  const needs = (station.needs ?? []).map((need) => need.text)
  return [...new Set([...blocks, ...needs])].filter(Boolean)
}

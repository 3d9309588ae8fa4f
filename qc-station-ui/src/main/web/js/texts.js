// The one table of texts: fetched once, kept for the case that the service is away at the next start.
import { db, frequency, signedDb } from "./format.js"
import { language, nameLanguage } from "./language.js"
import { recall, remember } from "./memory.js"

/** @type {Record<string, string>} */
let table = {}

/** Loads the table of the language that is spoken. @returns {Promise<void>} rejects if it can neither be fetched nor remembered */
export async function loadTexts() {
  const spoken = language()
  const kept = `texts.${spoken}`
  nameLanguage()
  try {
    const response = await fetch(`/api/texts/${spoken}`, { headers: { Accept: "application/json" } })
    if (!response.ok) throw new Error(`${response.status}`)
    table = await response.json()
    remember(kept, table)
  } catch (failure) {
    const remembered = recall(kept)
    if (!remembered) throw failure
    table = remembered
  }
}

/** @param {Record<string, string>} texts */
export function useTexts(texts) {
  table = texts
}

/**
 * Renders a text; a key that is missing shows itself, so that it is found.
 * @param {string} key @param {Record<string, any>} [values] by placeholder name
 */
export function t(key, values = {}) {
  const template = table[key]
  return template === undefined ? key : fillIn(template, values)
}

/** A text whose key ends in a word from the data. @param {string} prefix with its dot @param {string | null | undefined} word */
export function tOf(prefix, word) {
  if (word === null || word === undefined) return ""
  return table[prefix + word] ?? word
}

/**
 * Placeholders as the service's own renderer has them: `{a}`, `{a|dB}`, `{a|+dB}`, `{a|Hz}`, `{a|%}`, `{a|word}`.
 * @param {string} template @param {Record<string, any>} values
 */
export function fillIn(template, values) {
  return template.replace(/\{(\w+)(?:\|([^}]+))?\}/g, (whole, name, form) => {
    if (!(name in values)) return whole
    const value = values[name]
    switch (form) {
      case "dB": return db(value)
      case "+dB": return signedDb(value)
      case "Hz": return frequency(value)
      case "%": return Number(value).toFixed(2)
      case "word": return table[`word.${value}`] ?? String(value)
      default: return String(value)
    }
  })
}

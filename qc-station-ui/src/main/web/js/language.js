// Which language the screens speak: chosen once, else the browser's; English where there is no table for it.
import { recall, remember } from "./memory.js"

/** The languages that there are tables for, in the order in which the button offers them. */
export const LANGUAGES = /** @type {const} */ (["en", "zh"])

/** @typedef {(typeof LANGUAGES)[number]} Language */

/** What the page says of itself, and how it writes dates. @type {Record<Language, { page: string, dates: string }>} */
const TAGS = { en: { page: "en", dates: "en-GB" }, zh: { page: "zh-Hans", dates: "zh-CN" } }

/** @returns {Language} */
export function language() {
  return pick(recall("language"), navigator.languages ?? [])
}

/** @param {unknown} chosen by the reader @param {readonly string[]} wanted by the browser, the best first @returns {Language} */
export function pick(chosen, wanted) {
  const known = [chosen, ...wanted].map((tag) => LANGUAGES.find((each) => String(tag).toLowerCase().split("-")[0] === each))
  return known.find(Boolean) ?? "en"
}

/** @returns {string} how dates and times are written */
export function dateLanguage() {
  return TAGS[language()].dates
}

/** Says it to the page, so that it is read out and broken into lines as it should be. */
export function nameLanguage() {
  document.documentElement.lang = TAGS[language()].page
}

/** @returns {Language} the one that the button leads to */
export function otherLanguage() {
  return LANGUAGES[(LANGUAGES.indexOf(language()) + 1) % LANGUAGES.length]
}

/** @param {Language} chosen */
export function chooseLanguage(chosen) {
  remember("language", chosen)
}

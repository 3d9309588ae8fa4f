// Light or dark: the system's choice until the user makes one. The root carries the resolved word for style sheets and plots.
import { recall, remember } from "./memory.js"

/** @typedef {"system" | "light" | "dark"} Theme */
const NEXT = /** @type {Record<Theme, Theme>} */ ({ system: "light", light: "dark", dark: "system" })
const systemDark = matchMedia("(prefers-color-scheme: dark)")

/** @returns {Theme} */
export function chosenTheme() {
  const kept = recall("theme")
  return kept === "light" || kept === "dark" ? kept : "system"
}

/** Applies what is chosen and follows the system. */
export function startTheme() {
  apply()
  systemDark.addEventListener("change", apply)
}

/** @returns {Theme} the new choice */
export function nextTheme() {
  const theme = NEXT[chosenTheme()]
  remember("theme", theme)
  apply()
  return theme
}

function apply() {
  const chosen = chosenTheme()
  const resolved = chosen === "system" ? (systemDark.matches ? "dark" : "light") : chosen
  if (document.documentElement.dataset.theme === resolved) return
  document.documentElement.dataset.theme = resolved
  document.dispatchEvent(new CustomEvent("evenpair-theme"))
}

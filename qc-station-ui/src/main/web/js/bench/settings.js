// What this bench is like: how captures come, the foot switch, the sound cue. Remembered by the browser.
import { el, put } from "../dom.js"
import { recall, remember } from "../memory.js"
import { t } from "../texts.js"
import { check, labelledCheck } from "./file-capture.js"
import { chooseFootSwitch, footSwitch, mayBeFootSwitch } from "./foot-switch.js"

/** @typedef {"devices" | "files"} Way how captures come */

/** @param {string} station @param {boolean} hasDevices @returns {Way} */
export function wayOf(station, hasDevices) {
  const kept = recall(`way.${station}`)
  return kept === "files" || !hasDevices ? "files" : "devices"
}

/**
 * @param {string} station @param {import("./cues.js").Cues} cues
 * @param {{ hasDevices: boolean, changed: () => void }} more
 */
export function showSettings(station, cues, { hasDevices, changed }) {
  const muted = check("setting-cue", !cues.muted, () => { if (muted.checked === cues.muted) cues.toggle(); changed() })
  const way = check("setting-files", wayOf(station, hasDevices) === "files", () => { remember(`way.${station}`, way.checked ? "files" : "devices"); changed() })
  way.disabled = !hasDevices
  const dialog = /** @type {HTMLDialogElement} */ (el("dialog", { class: "keys bench-settings", "aria-labelledby": "settings-title" },
    el("h2", { id: "settings-title" }, t("screen.bench.settings")),
    labelledCheck(muted, t("screen.bench.settingCue")), labelledCheck(way, t("screen.bench.settingFiles")),
    hasDevices ? null : el("p", { class: "more" }, t("screen.bench.noDevices")),
    footSwitchRow(),
    el("button", { type: "button", class: "button", on: { click: () => dialog.close() } }, t("screen.keys.close"))))
  dialog.addEventListener("close", () => {
    dialog.remove()
    document.dispatchEvent(new CustomEvent("evenpair-dialog-closed"))
  })
  document.body.append(dialog)
  dialog.showModal()
}

function footSwitchRow() {
  const now = () => t("screen.bench.footSwitch", { key: footSwitch() === " " ? t("screen.bench.spaceBar") : footSwitch() })
  const said = el("span", { role: "status" }, now())
  const button = el("button", { type: "button", class: "button", "data-testid": "foot-switch" }, t("screen.bench.footSwitchLearn"))
  /** @param {KeyboardEvent} event */
  const learn = (event) => {
    if (event.key === "Escape" || event.key === "Tab") return done()
    event.preventDefault()
    event.stopPropagation()
    if (!mayBeFootSwitch(event.key)) return put(said, t("screen.bench.footSwitchNot"))
    chooseFootSwitch(event.key)
    done()
    put(said, now())
  }
  const done = () => {
    button.removeEventListener("keydown", learn)
    put(button, t("screen.bench.footSwitchLearn"))
  }
  button.addEventListener("click", () => {
    put(button, t("screen.bench.footSwitchPress"))
    button.addEventListener("keydown", learn)
  })
  button.addEventListener("blur", done)
  return el("p", { class: "foot-switch" }, said, button)
}

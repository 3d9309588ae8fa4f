// Every screen: its name in the address, what starts it, its title in the top bar, and who has use for it.
import { startPassword } from "./access/password-screen.js"
import { startPeople } from "./access/people-screen.js"
import { startTokens } from "./access/tokens-screen.js"
import { startAcross } from "./across/across-screen.js"
import { startBatch } from "./batch/batch-screen.js"
import { startBench } from "./bench/bench-screen.js"
import { startGolden } from "./golden/golden-screen.js"
import { startLimits } from "./limits/limits-screen.js"
import { startHealth } from "./health/health-screen.js"
import { recall } from "./memory.js"
import { startOutside } from "./outside/outside-screen.js"
import { startPairing } from "./pairing/pairing-screen.js"
import { startSeal } from "./seal/seal-screen.js"
import { startSound } from "./sound/sound-setup.js"
import { startStation } from "./station/station-screen.js"
import { t } from "./texts.js"
import { startUnit } from "./unit/unit-screen.js"

/**
 * @typedef {{ close: () => void, key?: (event: KeyboardEvent) => boolean, update?: (route: import("./router.js").Route) => boolean, isIdle?: () => boolean }} Screen
 *     `key` returns whether it took the key; `update` whether it took a new address without starting anew; `isIdle` whether a reload would disturb nobody
 * @typedef {(host: HTMLElement, route: import("./router.js").Route) => Screen} StartScreen
 * @typedef {"bench" | "person" | "engineer" | "administrator"} Desk who has use for a screen; `bench` is for everyone, at a station without signing in; `person` for whoever is signed in
 * @typedef {{ name: string, start: StartScreen, title: () => string, desk: Desk, at?: () => string | null, hidden?: boolean, of?: string }} ScreenEntry
 *     `at`: what the link opens, such as the unit looked at last; `hidden`: reached from elsewhere than the top bar; `of`: the screen that leads to this one, which has no link of its own
 */

/** @type {ScreenEntry[]} in the order of the top bar */
export const SCREENS = [
  { name: "bench", start: startBench, title: () => t("screen.nav.bench"), desk: "bench" },
  { name: "station", start: startStation, title: () => t("screen.nav.station"), desk: "bench", at: () => remembered("station") },
  { name: "sound", start: startSound, title: () => t("screen.nav.sound"), desk: "bench", at: () => remembered("station") },
  { name: "unit", start: startUnit, title: () => t("screen.nav.unit"), desk: "bench", at: () => remembered("unit") },
  { name: "health", start: startHealth, title: () => t("screen.nav.health"), desk: "bench" },
  { name: "batch", start: startBatch, title: () => t("screen.nav.batch"), desk: "engineer" },
  { name: "golden", start: startGolden, title: () => t("screen.nav.golden"), desk: "engineer" },
  { name: "outside", start: startOutside, title: () => t("screen.nav.outside"), desk: "engineer" },
  { name: "limits", start: startLimits, title: () => t("screen.nav.limits"), desk: "engineer" },
  { name: "across", start: startAcross, title: () => t("screen.nav.across"), desk: "engineer", of: "unit" },
  { name: "pairing", start: startPairing, title: () => t("screen.nav.pairing"), desk: "engineer" },
  { name: "seal", start: startSeal, title: () => t("screen.nav.seal"), desk: "engineer" },
  { name: "people", start: startPeople, title: () => t("screen.nav.people"), desk: "administrator" },
  { name: "tokens", start: startTokens, title: () => t("screen.nav.tokens"), desk: "administrator" },
  { name: "password", start: startPassword, title: () => t("screen.nav.password"), desk: "person", hidden: true },
]

/** @param {string} name @returns {ScreenEntry} the Bench for a name that is none */
export function screenOf(name) {
  return SCREENS.find((entry) => entry.name === name) ?? SCREENS[0]
}

/** @param {string} key */
function remembered(key) {
  const value = recall(key)
  return typeof value === "string" ? value : null
}

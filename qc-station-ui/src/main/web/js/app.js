// Starts the screens: theme, texts, top bar, and the screen that the address names.
import { startBatch } from "./batch/batch-screen.js"
import { startBench } from "./bench/bench-screen.js"
import { el, put } from "./dom.js"
import { startGolden } from "./golden/golden-screen.js"
import { keysShown, showKeys, takesText } from "./keys.js"
import { recall } from "./memory.js"
import { hashOf, parseRoute } from "./router.js"
import { startStation } from "./station/station-screen.js"
import { loadTexts, t } from "./texts.js"
import { chosenTheme, nextTheme, startTheme } from "./theme.js"
import { startUnit } from "./unit/unit-screen.js"

/**
 * @typedef {{ close: () => void, key?: (event: KeyboardEvent) => boolean, update?: (route: import("./router.js").Route) => boolean }} Screen
 *     `key` returns whether it took the key; `update` whether it took a new address without starting anew
 * @typedef {(host: HTMLElement, route: import("./router.js").Route) => Screen} StartScreen
 */

/** @type {Record<string, StartScreen>} */
const SCREENS = { bench: startBench, batch: startBatch, unit: startUnit, station: startStation, golden: startGolden }

/** Shown only when the table of texts can be neither fetched nor remembered. */
const WITHOUT_TEXTS = "The Evenpair service does not answer. Start it, then load this page again."

/** @type {Screen | null} */
let screen = null
let screenName = ""

startTheme()
loadTexts().then(start, () => document.body.append(el("p", { class: "without-texts", role: "alert" }, WITHOUT_TEXTS)))

function start() {
  const main = el("main", { id: "main", tabindex: -1 })
  const links = el("nav", { class: "screens", "aria-label": t("screen.nav.label") })
  document.body.append(
    el("a", { class: "skip", href: "#main", on: { click: (/** @type {Event} */ e) => { e.preventDefault(); main.focus() } } }, t("screen.nav.skip")),
    el("header", { class: "top" },
      el("a", { class: "product", href: "#/bench" }, el("img", { src: "/img/evenpair.svg", alt: "", width: 28, height: 28 }), "Evenpair"),
      links, el("div", { class: "tools" }, themeButton(),
        el("button", { type: "button", class: "button icon", "aria-label": t("screen.keys.title"), title: t("screen.keys.title"), on: { click: showKeys } }, "?"))),
    main)
  const follow = () => {
    const route = parseRoute(location.hash)
    drawLinks(links, route.screen)
    if (screenName === route.screen && screen?.update?.(route)) return
    screen?.close()
    put(main)
    screenName = route.screen
    screen = (SCREENS[route.screen] ?? startBench)(main, route)
    document.title = `${titleOf(route.screen)} \u2013 Evenpair`
  }
  addEventListener("hashchange", follow)
  document.addEventListener("keydown", onKey)
  follow()
}

/** @param {KeyboardEvent} event */
function onKey(event) {
  if (keysShown()) return
  if (event.key === "?" && !(takesText(event.target) && /** @type {HTMLInputElement} */ (event.target).value)) {
    event.preventDefault()
    return showKeys()
  }
  if (screen?.key?.(event)) event.preventDefault()
}

/** @param {HTMLElement} links @param {string} current */
function drawLinks(links, current) {
  const unit = recall("unit"), station = recall("station")
  put(links, [
    ["bench", hashOf("bench")], ["batch", hashOf("batch")], ["unit", hashOf("unit", typeof unit === "string" ? unit : null)],
    ["golden", hashOf("golden")], ["station", hashOf("station", typeof station === "string" ? station : null)],
  ].map(([name, href]) => el("a", { href, "aria-current": name === current ? "page" : null }, titleOf(name))))
}

/** @param {string} name */
function titleOf(name) {
  const titles = /** @type {Record<string, () => string>} */ ({
    batch: () => t("screen.nav.batch"), unit: () => t("screen.nav.unit"), golden: () => t("screen.nav.golden"), station: () => t("screen.nav.station"),
  })
  return titles[name]?.() ?? t("screen.nav.bench")
}

function themeButton() {
  const label = () => ({ system: t("screen.theme.system"), light: t("screen.theme.light"), dark: t("screen.theme.dark") })[chosenTheme()]
  const button = el("button", { type: "button", class: "button quiet theme", title: t("screen.theme.title") }, label())
  button.addEventListener("click", () => {
    nextTheme()
    put(button, label())
  })
  return button
}

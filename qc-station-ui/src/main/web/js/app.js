// Starts the screens: theme, texts, top bar, and the screen that the address names.
import { askWho, mayOpen, onWho, sessionEnded } from "./access/session.js"
import { askToSignIn } from "./access/sign-in.js"
import { whoIsHere } from "./access/who.js"
import { el, put } from "./dom.js"
import { keysShown, showKeys, takesText } from "./keys.js"
import { chooseLanguage, otherLanguage } from "./language.js"
import { outbox } from "./outbox/outbox.js"
import { hashOf, parseRoute } from "./router.js"
import { SCREENS, screenOf } from "./screens.js"
import { loadTexts, t } from "./texts.js"
import { keepScreens } from "./kept-screens.js"
import { chosenTheme, nextTheme, startTheme } from "./theme.js"

/** Shown only when the table of texts can be neither fetched nor remembered. */
const WITHOUT_TEXTS = "The Evenpair service does not answer. Start it, then load this page again."

/** @type {import("./screens.js").Screen | null} */
let screen = null
let screenName = ""

startTheme()
loadTexts().then(askWho).then(start, () => document.body.append(el("p", { class: "without-texts", role: "alert" }, WITHOUT_TEXTS)))

function start() {
  const main = el("main", { id: "main", tabindex: -1 })
  const links = el("nav", { class: "screens", "aria-label": t("screen.nav.label") })
  document.body.append(
    el("a", { class: "skip", href: "#main", on: { click: (/** @type {Event} */ e) => { e.preventDefault(); main.focus() } } }, t("screen.nav.skip")),
    el("header", { class: "top" },
      el("a", { class: "product", href: "#/bench" }, el("img", { src: "/img/evenpair.svg", alt: "", width: 28, height: 28 }), "Evenpair"),
      links, el("div", { class: "tools" }, whoIsHere(signInHere), languageButton(), themeButton(),
        el("button", { type: "button", class: "button icon", "aria-label": t("screen.keys.title"), title: t("screen.keys.title"), on: { click: showKeys } }, "?"))),
    main)
  /** @param {boolean} asked for a sign-in, whoever is signed in now */
  const follow = (asked = false) => {
    const route = parseRoute(location.hash)
    drawLinks(links, route.screen)
    const entry = screenOf(route.screen)
    const open = mayOpen(entry.desk) && !asked
    if (open && screenName === route.screen && screen?.update?.(route)) return
    screen?.close()
    put(main)
    screenName = open ? route.screen : ""
    screen = open ? entry.start(main, route) : askToSignIn(main, entry.desk, () => follow())
    document.title = `${entry.title()} \u2013 Evenpair`
  }
  addEventListener("hashchange", () => follow())
  document.addEventListener("evenpair-sign-in", () => follow(true))
  document.addEventListener("evenpair-sign-in-needed", () => {
    sessionEnded()
    if (screenName) follow(true)
  })
  onWho(() => {
    drawLinks(links, parseRoute(location.hash).screen)
    outbox.wake()   // what waited for somebody to sign in
  })
  document.addEventListener("keydown", onKey)
  follow()
  outbox.start()
  keepScreens(() => screen?.isIdle?.() ?? true)
}

/** Somebody wants to sign in, or to sign in as somebody else. */
function signInHere() {
  document.dispatchEvent(new CustomEvent("evenpair-sign-in"))
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
  const marked = screenOf(current).of ?? current
  put(links, SCREENS.filter((entry) => !entry.hidden && !entry.of && mayOpen(entry.desk)).map((entry) => el("a", { href: hashOf(entry.name, entry.at?.() ?? null), "aria-current": entry.name === marked ? "page" : null }, entry.title())))
  links.querySelector("[aria-current]")?.scrollIntoView({ block: "nearest", inline: "nearest" })   // where not all find room
}

/** Names the other language in its own words; the screens start anew in it. */
function languageButton() {
  const other = otherLanguage()
  const name = { en: t("screen.language.en"), zh: t("screen.language.zh") }[other]
  return el("button", { type: "button", class: "button quiet language", lang: other, title: t("screen.language.title"), on: {
    click: () => {
      chooseLanguage(other)
      location.reload()
    },
  } }, name)
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

// The end of the top bar: who is signed in, the way to one's own password, and signing out.
import { el, put } from "../dom.js"
import { hashOf } from "../router.js"
import { t } from "../texts.js"
import { onWho, signOut, who } from "./session.js"

/** @param {() => void} ask opens the sign-in page @returns {HTMLElement} */
export function whoIsHere(ask) {
  const element = el("div", { class: "who" })
  const draw = () => {
    const { person, station } = who()
    const at = station ? el("span", { class: "who-station" }, t("screen.who.station", { station })) : null
    put(element, at, person
      ? [el("a", { class: "who-name", href: hashOf("password"), title: t("screen.who.password") }, person.name),
        el("button", { type: "button", class: "button quiet sign-out", on: { click: () => signOut().then(ask, ask) } }, t("screen.who.signOut"))]
      : el("button", { type: "button", class: "button quiet", on: { click: ask } }, t("screen.signIn.action")))
  }
  draw()
  onWho(draw)
  return element
}

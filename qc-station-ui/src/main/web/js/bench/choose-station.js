// Which bench is this? Asked once, then remembered by the browser.
import { get } from "../api.js"
import { el, put } from "../dom.js"
import { hashOf } from "../router.js"
import { busy, failed, stateOf } from "../states.js"
import { t } from "../texts.js"

/** @param {HTMLElement} host @param {string} [screen] that is opened with the station chosen @returns {import("../screens.js").Screen} */
export function chooseStation(host, screen = "bench") {
  const closed = new AbortController()
  const load = async () => {
    put(host, busy(t("screen.station.loading")))
    try {
      const stations = /** @type {Api.Page<Api.Station>} */ (await get("/api/stations", closed.signal))
      put(host, stations.items.length ? choices(stations.items, screen)
        : stateOf("WAITING", t("screen.station.empty.title"), t("screen.station.empty.mend"), el("code", {}, t("screen.station.empty.command", { origin: location.origin }))))
      host.querySelector("a")?.focus()
    } catch (failure) {
      if (!closed.signal.aborted) put(host, failed(failure, load))
    }
  }
  load()
  return {
    close: () => closed.abort(),
    key: (event) => walkLinks(host, event),
  }
}

/** @param {Api.Station[]} stations @param {string} screen */
function choices(stations, screen) {
  return el("section", { class: "choose" }, el("h1", {}, t("screen.station.title")), el("p", {}, t("screen.station.why")),
    el("ul", { class: "choices" }, stations.map((station) => el("li", {},
      el("a", { class: "choice", href: hashOf(screen, station.station ?? station.name) }, station.station ?? station.name,
        station.note ? el("span", { class: "more" }, station.note) : null)))))
}

/** @param {HTMLElement} host @param {KeyboardEvent} event @returns {boolean} */
export function walkLinks(host, event) {
  if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return false
  const links = /** @type {HTMLElement[]} */ ([...host.querySelectorAll("a.choice, a.row-link")])
  if (!links.length) return false
  const at = links.indexOf(/** @type {HTMLElement} */ (document.activeElement))
  const next = event.key === "ArrowDown" ? Math.min(links.length - 1, at + 1) : Math.max(0, at - 1)
  links[next].focus()
  return true
}

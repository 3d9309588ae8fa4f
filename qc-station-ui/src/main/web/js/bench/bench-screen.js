// Bench: scan, mount, measure, read one word. Starts the parts and hands them what the others say.
import { el, put } from "../dom.js"
import { recall, remember } from "../memory.js"
import { hashOf } from "../router.js"
import { Bench } from "./bench.js"
import { chooseStation } from "./choose-station.js"

/** @type {import("../screens.js").StartScreen} */
export function startBench(host, route) {
  const station = route.name ?? recall("station")
  if (!station) return chooseStation(host)
  remember("station", station)
  if (!route.name) history.replaceState(null, "", hashOf("bench", station))
  const page = el("div", { class: "bench" })
  put(host, page)
  return new Bench(page, station)
}
